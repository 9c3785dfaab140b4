import { Badge } from "@/app/ui/badge";
import { Card } from "@/app/ui/card";
import { Facts } from "@/app/ui/facts";
import { TagChip } from "@/app/ui/tagChip";
import { edtfInWords } from "@/lib/core/edtf";
import type { Reader } from "@/lib/db/store";
import { heldWords } from "@/lib/originality/counts";
import { parties } from "@/lib/parties/queries";
import { whatIsLost, whatIsMissed } from "@/lib/parts/rules";
import { positionsLostWith } from "@/lib/reversal/beforehandQueries";
import { ComeBackForm, GoneForm, SendOutForm } from "./awayForms";
import { PartForm } from "./partForm";
import { type Part, type Said, whereOf } from "./said";

export async function PartCard({
	read,
	part,
	said,
	title,
}: {
	readonly read: Reader;
	readonly part: Part;
	readonly said: Said;
	readonly title: string;
}) {
	const loose = part.place === "bag" || part.place === "location" || part.place === "bench";
	const away = part.place === "out" || part.place === "sold" || part.place === "lost" || part.place === "scrapped";
	const [loses, known] = loose || part.place === "out" ? await Promise.all([positionsLostWith(read, part.id), parties(read)]) : [[], []];
	const tag = part.tag?.id ?? "a part without a tag";
	const leaving = {
		id: part.id,
		name: part.name,
		tag,
		original: part.origin === "original",
		loses: whatIsLost({ name: part.name, tag, origin: part.origin, place: part.place }, loses),
		misses: whatIsMissed(loses),
	};
	return (
		<Card title={title} aside={part.tag ? <TagChip size="small" tag={part.tag.id} href={`/t/${part.tag.id}`} /> : undefined}>
			<Facts
				facts={[
					{ label: "Name", value: part.count > 1 ? `${part.count} × ${part.name}` : part.name },
					{ label: "What it is", value: <Badge means={part.origin === "original" ? "original" : "plain"}>{heldWords(part.origin)}</Badge> },
					{ label: "Where", value: part.place === "fitted" ? "fitted here" : whereOf(part, said.timeZone) },
					{ label: "Maker", value: [part.maker, part.type].filter(Boolean).join(", ") },
					{ label: "Material", value: part.material },
					{ label: "Made", value: part.made === null ? null : edtfInWords(part.made) },
					{ label: "Works", value: part.works === "works" ? "yes" : part.works === "faulty" ? <Badge means="wait">faulty</Badge> : null },
					{ label: "Condition", value: part.condition },
				]}
			/>
			{part.place === "void" ? null : (
				<details className="af-details">
					<summary>Correct what is said of it</summary>
					<PartForm
						seen={part.entry}
						part={{
							partId: part.id,
							name: part.name,
							count: part.count,
							maker: part.maker,
							type: part.type,
							material: part.material,
							made: part.made ?? "",
							origin: part.origin,
							works: part.works,
							condition: part.condition,
						}}
					/>
				</details>
			)}
			{loose ? (
				<details className="af-details">
					<summary>Lend it, or send it to a specialist</summary>
					<SendOutForm part={leaving} parties={known.map(({ id, name }) => ({ id, name }))} />
				</details>
			) : null}
			{loose || part.place === "out" ? (
				<details className="af-details">
					<summary>It goes for good</summary>
					<GoneForm part={leaving} parties={known.map(({ id, name }) => ({ id, name }))} />
				</details>
			) : null}
			{away ? (
				<details className="af-details">
					<summary>It is back</summary>
					<ComeBackForm part={leaving} wasOut={part.place === "out"} />
				</details>
			) : null}
		</Card>
	);
}
