import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { Suspense } from "react";
import { Badge } from "@/app/ui/badge";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Facts } from "@/app/ui/facts";
import { Buttons, Columns, Stack } from "@/app/ui/layouts";
import { Notice } from "@/app/ui/notice";
import { OriginalityMark } from "@/app/ui/originalityMark";
import { Table } from "@/app/ui/table";
import { TagChip } from "@/app/ui/tagChip";
import { dayOf, formatDayShort, formatInstant } from "@/lib/core/days";
import { edtfInWords } from "@/lib/core/edtf";
import { instant } from "@/lib/core/instants";
import { formatMinutes } from "@/lib/core/minutes";
import { shopStore } from "@/lib/db/shopStore";
import type { Reader } from "@/lib/db/store";
import { formatFixing, formatFixings } from "@/lib/fixings/fixingWords";
import type { MachineHead } from "@/lib/machines/queries";
import { heldWords, strongestOf } from "@/lib/originality/counts";
import { type OriginFacts, type OriginPosition, originalOf, partsOf } from "@/lib/originality/facts";
import { originFacts } from "@/lib/originality/queries";
import { markAsFound, markIn } from "@/lib/originality/strip";
import { parties } from "@/lib/parties/queries";
import { positionsThatLose } from "@/lib/parts/queries";
import { whatIsLost } from "@/lib/parts/rules";
import { whereItIs } from "@/lib/parts/whereItIs";
import { evidenceWords, type PositionPage, positionByMark, positionChoices } from "@/lib/positions/positionQueries";
import { sidesOf } from "@/lib/positions/sides";
import { requireShop } from "@/lib/shop/queries";
import { afterReversal } from "../../afterReversal";
import { thisMachine } from "../../thisMachine";
import { ComeBackForm, GoneForm, SendOutForm } from "./awayForms";
import { EvidenceForm, WithdrawEvidence } from "./evidenceForm";
import { FindingForm } from "./findingForm";
import { ObstructionForm, WithdrawObstruction } from "./obstructionForm";
import { PartForm } from "./partForm";
import { PositionForm } from "./positionForm";
import { Shown } from "./shown";

type Props = { readonly params: Promise<{ machine: string; mark: string }> };
type Part = PositionPage["fittings"][number]["part"];
type Said = { readonly page: PositionPage; readonly base: string; readonly timeZone: string };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
	return { title: decodeURIComponent((await params).mark) };
}

const STATE_WORDS = { there: "there", missing: "missing", wrong: "there, but wrong", unseen: "not seen yet" } as const;
const UNDO_WORDS = { clean: "undone clean", trace: "leaves a trace", never: "cannot be undone" } as const;

export default async function PositionPageOfMachine({ params }: Props) {
	const asked = await params;
	const machine = await thisMachine(asked.machine);
	const { read } = await shopStore();
	const page = await positionByMark(read, machine.id, decodeURIComponent(asked.mark));
	if (!page) notFound();
	const [{ timeZone }, origins, choices, used] = await Promise.all([
		requireShop(read),
		originFacts(read, [machine.id]),
		positionChoices(read, machine.id),
		evidenceWords(read),
	]);
	const facts = origins.get(machine.id) ?? { positions: [], parts: [] };
	const origin = partsOf(facts);
	const facet = facts.positions.find((position) => position.id === page.id);
	const base = `/machines/${machine.number}`;
	const said: Said = { page, base, timeZone };
	const mark = facet && page.kind === "seat" ? markIn(facet, origin, "now") : null;
	const found = facet ? markAsFound(facet, origin) : null;
	const originalId = facet ? (originalOf(facet, origin)?.id ?? null) : null;
	const known = new Map(
		[...page.fittings.map((fitting) => fitting.part), ...(page.part ? [page.part] : [])].map((part) => [part.id, part]),
	);
	const original = originalId === null || originalId === page.part?.id ? null : (known.get(originalId) ?? null);
	const here = `${base}/take-out/${encodeURIComponent(page.mark)}`;
	const into = `${base}/put-in/${encodeURIComponent(page.mark)}`;
	return (
		<Stack>
			<div className="af-pagehead">
				<div className="af-pagehead-words">
					<div className="af-pagehead-above">
						<Link href={`${base}/build`}>Build</Link>
						{page.host?.position ? (
							<>
								<span aria-hidden="true">›</span>
								<Link href={`${base}/build/${encodeURIComponent(page.host.position.mark)}`}>{page.host.position.name}</Link>
							</>
						) : null}
						<span aria-hidden="true">›</span>
						<code>{page.mark}</code>
					</div>
					<h2 className="flex items-center gap-3 text-[1.5rem]">
						{mark ? <OriginalityMark state={mark.state} says={mark.says} /> : null}
						{page.name}
					</h2>
					<p className="af-lead">
						{[
							page.area,
							page.kind === "place" ? "a place with no part of its own" : mark?.says,
							page.asFound === "no" ? "made by the shop's work" : "",
						]
							.filter(Boolean)
							.join(" · ")}
					</p>
				</div>
				<div className="af-pagehead-actions">
					{page.part ? (
						<ButtonLink kind="main" href={here}>
							Take out
						</ButtonLink>
					) : page.kind === "seat" ? (
						<ButtonLink kind="main" href={into}>
							Put a part in
						</ButtonLink>
					) : null}
				</div>
			</div>
			{page.note === "" ? null : (
				<Notice means="wait" live="off" title="Know before you touch it">
					<p className="whitespace-pre-line">{page.note}</p>
				</Notice>
			)}
			<Columns>
				<Stack>
					<Card title="As found · now · after reversal">
						<Facts
							facts={[
								{
									label: "As found",
									value:
										found === null ? page.kind === "place" ? "a place" : "no such place" : <FoundWords said={said} words={found.says} />,
								},
								{ label: "Now", value: page.kind === "place" ? null : page.part ? <PartWords part={page.part} said={said} /> : "empty" },
								{ label: "Its original", value: original === null ? null : <PartWords part={original} said={said} /> },
								{
									label: "After reversal",
									value:
										facet === undefined || page.kind === "place" || machine.asFoundAt === null ? null : (
											<Suspense fallback="planning the way back …">
												<AfterReversal machine={machine} facts={facts} facet={facet} names={known} />
											</Suspense>
										),
								},
								{ label: "To take out", value: minutes(page.outLow, page.outLikely, page.outHigh) },
								{ label: "To put in", value: minutes(page.inLow, page.inLikely, page.inHigh) },
							]}
						/>
					</Card>
					<InTheWay said={said} choices={choices} />
					<Fixings said={said} />
					<Wires said={said} />
					<Settings said={said} />
					<History said={said} />
					<Shown captures={page.captures} name={page.name} base={base} />
				</Stack>
				<Stack>
					{page.kind === "place" ? null : (
						<Card title="What was found">
							<Findings said={said} asFoundAt={machine.asFoundAt} />
							<details className="af-details" open={page.asFound === "yes" && (page.findings.at(-1)?.state ?? "unseen") === "unseen"}>
								<summary>{machine.asFoundAt === null ? "Record what was found" : "Add what is known now"}</summary>
								<FindingForm
									key={page.findings.length}
									positionId={page.id}
									positionName={page.name}
									stamped={machine.asFoundAt !== null}
									known={spokenOf(page, machine.asFoundAt)}
									last={page.findings.at(-1)?.state ?? null}
								/>
							</details>
						</Card>
					)}
					{page.part ? <PartCard read={read} part={page.part} said={said} title="The part" /> : null}
					{original ? <PartCard read={read} part={original} said={said} title="Its original" /> : null}
					<Card title="How we know">
						<EvidenceList said={said} />
						<details className="af-details">
							<summary>Add evidence</summary>
							<EvidenceForm partId={original?.id ?? page.part?.id ?? null} positionId={page.id} used={used} />
						</details>
					</Card>
					<Marks said={said} />
					<Card title="This position">
						<Facts
							facts={[
								{ label: "Sides", value: sidesOf(page.sides).join(", ") },
								{
									label: "Sits on",
									value: page.host ? (
										<>
											{page.host.name}{" "}
											{page.host.tag ? <TagChip size="small" tag={page.host.tag.id} href={`/t/${page.host.tag.id}`} /> : null}
										</>
									) : (
										"the machine itself"
									),
								},
								{
									label: "Mirror image of",
									value: page.mirror ? (
										<Link href={`${base}/build/${encodeURIComponent(page.mirror.mark)}`}>
											{page.mirror.mark} {page.mirror.name}
										</Link>
									) : null,
								},
								{
									label: "Carries",
									value:
										page.guests.length === 0
											? null
											: page.guests.map((guest, index) => (
													<span key={guest.id}>
														{index > 0 ? ", " : ""}
														<Link href={`${base}/build/${encodeURIComponent(guest.mark)}`}>{guest.name}</Link>
													</span>
												)),
								},
							]}
						/>
						<details className="af-details">
							<summary>Correct what is said of it</summary>
							<PositionForm
								seen={page.entry}
								position={{
									positionId: page.id,
									name: page.name,
									area: page.area,
									kind: page.kind,
									sides: sidesOf(page.sides),
									note: page.note,
									hostMark: page.host?.position?.mark ?? "",
									mirrorMark: page.mirror?.mark ?? "",
									out: { low: typed(page.outLow), likely: typed(page.outLikely), high: typed(page.outHigh) },
									in: { low: typed(page.inLow), likely: typed(page.inLikely), high: typed(page.inHigh) },
								}}
								others={choices
									.filter((choice) => choice.id !== page.id)
									.map((choice) => ({ mark: choice.mark, name: choice.name, carries: choice.part !== null }))}
								areas={[...new Set(facts.positions.map((position) => position.area).filter(Boolean))]}
							/>
						</details>
					</Card>
				</Stack>
			</Columns>
		</Stack>
	);
}

const typed = (minutesOf: number | null): string => (minutesOf === null ? "" : String(minutesOf));

const minutes = (low: number | null, likely: number | null, high: number | null): string | null =>
	low === null || likely === null || high === null ? null : `${formatMinutes(likely)} (${formatMinutes(low)} to ${formatMinutes(high)})`;

/** The part that a finding of now would speak of, in words; null when it would bring a new one into the book. */
function spokenOf(page: PositionPage, asFoundAt: string | null): string | null {
	const open = page.fittings.find((fitting) => fitting.untilAt === null);
	const own = open && (asFoundAt === null || open.fromAt <= asFoundAt) ? open.part : (page.findings.at(-1)?.part ?? null);
	if (!own || own.place === "void") return null;
	return own.tag ? `${own.tag.id}, ${own.name}` : own.name;
}

async function AfterReversal({
	machine,
	facts,
	facet,
	names,
}: {
	readonly machine: MachineHead;
	readonly facts: OriginFacts;
	readonly facet: OriginPosition;
	readonly names: ReadonlyMap<string, Part>;
}) {
	const after = await afterReversal((await shopStore()).read, machine.id, machine.asFoundAt);
	if (after === null) return "no plan can be made of this record";
	const partId = after.get(facet.id);
	const part = partId === undefined ? undefined : names.get(partId);
	const { says } = markIn(facet, partsOf(facts), after);
	return part === undefined ? says : `${part.name}: ${says}`;
}

function FoundWords({ said: { page }, words }: { readonly said: Said; readonly words: string }) {
	const last = page.findings.at(-1);
	const partId = last?.part?.id ?? null;
	// Two claims that are never mixed: only evidence of "when it was made" backs an original.
	const claim = words === "original" ? "made" : "came";
	const known = page.evidence.filter((piece) => piece.stands === "yes" && (partId === null || piece.partId === partId));
	const backing = known.some((piece) => piece.claim === claim)
		? known.filter((piece) => piece.claim === claim)
		: words === "original"
			? []
			: known;
	const strongest = strongestOf(backing.map((piece) => piece.kind));
	const by = backing.find((piece) => piece.kind === strongest)?.how ?? "";
	return (
		<>
			<Badge means={words === "original" ? "original" : "plain"}>{words}</Badge>{" "}
			{strongest === null ? "without evidence yet" : `${strongest === "seen" ? "seen by us" : strongest}${by === "" ? "" : `, ${by}`}`}
		</>
	);
}

function PartWords({ part, said: { timeZone } }: { readonly part: Part; readonly said: Said }) {
	return (
		<>
			{part.tag ? <TagChip size="small" tag={part.tag.id} href={`/t/${part.tag.id}`} isVoid={part.place === "void"} /> : null}{" "}
			{part.count > 1 ? `${part.count} × ` : ""}
			{part.name}, {heldWords(part.origin)}
			{part.place === "fitted" ? null : (
				<span className="af-sub">
					{part.place === "bag" && part.bag?.tag ? (
						<>
							in bag <TagChip size="small" tag={part.bag.tag.id} href={`/t/${part.bag.tag.id}`} />
						</>
					) : (
						whereOf(part, timeZone)
					)}
				</span>
			)}
		</>
	);
}

const whereOf = (part: Part, timeZone: string): string =>
	whereItIs({
		place: part.place,
		placeWhy: part.placeWhy,
		sinceDay: dayOf(instant(part.sinceAt), timeZone),
		dueDay: part.dueDay,
		bagTag: part.bag?.tag?.id ?? null,
		location: part.location?.name ?? null,
		party: part.party?.name ?? null,
		position: null,
	});

function InTheWay({
	said: { page, base },
	choices,
}: {
	readonly said: Said;
	readonly choices: Awaited<ReturnType<typeof positionChoices>>;
}) {
	const parts = choices.flatMap(({ id, mark, part }) =>
		part === null || id === page.id || part.id === page.hostId ? [] : [{ id: part.id, label: `${mark} ${part.name}` }],
	);
	return (
		<Card title="What must come off first">
			<Table
				caption="Parts that stand in the way"
				rows={page.behind}
				rowKey={(row) => row.id}
				empty={<p className="af-lead">Nothing is known to stand in the way.</p>}
				columns={[
					{
						key: "part",
						head: "Part",
						main: true,
						cell: (row) =>
							row.part.position ? (
								<Link href={`${base}/build/${encodeURIComponent(row.part.position.mark)}`}>{row.part.name}</Link>
							) : (
								row.part.name
							),
						sub: (row) => row.note,
					},
					{ key: "side", head: "From", cell: (row) => (row.side === "" ? "every side" : row.side) },
					{
						key: "now",
						head: "Now",
						cell: (row) => (row.part.place === "fitted" ? <Badge means="wait">in the way</Badge> : "out already"),
					},
					{ key: "deed", head: "Correct", hideHead: true, align: "right", cell: (row) => <WithdrawObstruction obstructionId={row.id} /> },
				]}
			/>
			{page.inTheWayOf.length === 0 ? null : (
				<p className="af-sub">
					It stands in the way of{" "}
					{page.inTheWayOf.map((row, index) => (
						<span key={row.id}>
							{index > 0 ? ", " : ""}
							<Link href={`${base}/build/${encodeURIComponent(row.position.mark)}`}>{row.position.name}</Link>
							{row.side === "" ? "" : ` (from the ${row.side})`}
						</span>
					))}
					.
				</p>
			)}
			<details className="af-details">
				<summary>Something else comes off first</summary>
				<ObstructionForm positionId={page.id} sides={sidesOf(page.sides)} parts={parts} />
			</details>
		</Card>
	);
}

const WENT = {
	home: "in place",
	bag: "in a bag",
	bench: "on the bench",
	left: "left in its hole",
	lost: "lost",
	scrapped: "scrapped",
} as const;

/** Of the part that is in it, or was last. */
const shownFitting = (page: PositionPage) => page.fittings.find((fitting) => fitting.untilAt === null) ?? page.fittings[0];

function Fixings({ said: { page } }: { readonly said: Said }) {
	const fitting = shownFitting(page);
	if (!fitting || fitting.holds.length === 0) return null;
	return (
		<Card title={fitting.untilAt === null ? "Held by" : "Was held by"} aside={fitting.part.name}>
			<Table
				caption="Fixings"
				rows={fitting.holds}
				rowKey={({ fixing }) => fixing.id}
				columns={[
					{
						key: "what",
						head: "Fixing",
						main: true,
						cell: ({ fixing }) => formatFixing(fixing),
						sub: ({ fixing }) => [fixing.differs, fixing.note].filter(Boolean).join(". "),
					},
					{ key: "tight", head: "Tightness", cell: ({ fixing }) => fixing.tightness },
					{
						key: "place",
						head: "Where",
						cell: ({ fixing }) =>
							fixing.bag?.tag ? <TagChip size="small" tag={fixing.bag.tag.id} href={`/t/${fixing.bag.tag.id}`} /> : WENT[fixing.place],
					},
				]}
			/>
		</Card>
	);
}

function Wires({ said: { page } }: { readonly said: Said }) {
	const fitting = shownFitting(page);
	if (!fitting || fitting.connections.length === 0) return null;
	return (
		<Card title="Wires and hoses" aside={fitting.part.name}>
			<Table
				caption="Wires and hoses"
				rows={fitting.connections}
				rowKey={(wire) => wire.id}
				columns={[
					{ key: "from", head: "From", main: true, cell: (wire) => wire.from },
					{ key: "to", head: "To", cell: (wire) => wire.to },
					{
						key: "colour",
						head: "Colour",
						cell: (wire) => <code>{wire.colour}</code>,
						sub: (wire) =>
							[wire.base, wire.tracer]
								.filter(Boolean)
								.join(" with ")
								.concat(wire.gauge === "" ? "" : `, ${wire.gauge}`)
								.replace(/^, /, ""),
					},
					{ key: "tags", head: "Tags", cell: (wire) => [wire.tagFrom, wire.tagTo].filter(Boolean).join(" · ") },
					{
						key: "state",
						head: "State",
						cell: (wire) => <Badge means={wire.state === "parked" ? "wait" : "plain"}>{wire.state}</Badge>,
						sub: (wire) => wire.note,
					},
				]}
			/>
		</Card>
	);
}

function Settings({ said: { page } }: { readonly said: Said }) {
	const fitting = shownFitting(page);
	const round = fitting?.wayRound ?? "";
	if (!fitting || (fitting.settings.length === 0 && round === "")) return null;
	return (
		<Card title="How it was set" aside={fitting.part.name}>
			<Facts
				facts={[
					{ label: "Way round", value: round },
					...fitting.settings.map((setting) => ({
						label: setting.kind,
						value: setting.capture?.fileSha ? <Link href={`/files/${setting.capture.fileSha}`}>{setting.value}</Link> : setting.value,
					})),
				]}
			/>
		</Card>
	);
}

function History({ said: { page, base, timeZone } }: { readonly said: Said }) {
	if (page.fittings.length === 0) return null;
	const day = (at: string) => formatDayShort(dayOf(instant(at), timeZone));
	return (
		<Card title="What it has held" aside="newest first">
			<Table
				caption="Every part that was fitted here"
				rows={page.fittings}
				rowKey={(fitting) => fitting.id}
				columns={[
					{ key: "part", head: "Part", main: true, cell: (fitting) => <PartWords part={fitting.part} said={{ page, base, timeZone }} /> },
					{
						key: "from",
						head: "From",
						cell: (fitting) => day(fitting.fromAt),
						sub: (fitting) =>
							fitting.fromStep ? (
								<Link href={`${base}/work/${fitting.fromStep.number}`}>{fitting.fromStep.title}</Link>
							) : (
								fitting.conversion?.name
							),
					},
					{
						key: "until",
						head: "Until",
						cell: (fitting) => (fitting.untilAt === null ? "now" : day(fitting.untilAt)),
						sub: (fitting) =>
							fitting.untilStep ? (
								<Link href={`${base}/work/${fitting.untilStep.number}`}>{fitting.untilStep.title}</Link>
							) : (
								fitting.outConversion?.name
							),
					},
					{ key: "held", head: "Held by", cell: (fitting) => formatFixings(fitting.holds.map(({ fixing }) => fixing)) },
				]}
			/>
		</Card>
	);
}

function Findings({ said: { page, timeZone }, asFoundAt }: { readonly said: Said; readonly asFoundAt: string | null }) {
	if (page.asFound === "no" && page.findings.length === 0)
		return <p className="af-lead">There was no such place as found: the shop's work made it.</p>;
	return (
		<Facts
			facts={page.findings.map((finding) => ({
				label: formatInstant(instant(finding.at), timeZone),
				value: (
					<>
						{STATE_WORDS[finding.state]}
						{finding.part ? `: ${finding.part.name}` : ""}{" "}
						{asFoundAt !== null && finding.at > asFoundAt ? <Badge means="wait">later knowledge</Badge> : null}
						{finding.words === "" ? null : <span className="af-sub">{finding.words}</span>}
					</>
				),
			}))}
		/>
	);
}

async function PartCard({
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
	const [loses, known] = loose || part.place === "out" ? await Promise.all([positionsThatLose(read, part.id), parties(read)]) : [[], []];
	const tag = part.tag?.id ?? "a part without a tag";
	const leaving = {
		id: part.id,
		name: part.name,
		tag,
		original: part.origin === "original",
		loses: whatIsLost({ name: part.name, tag, origin: part.origin, place: part.place }, loses),
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

const CLAIM_WORDS = { came: "when it came", made: "when it was made" } as const;
const KIND_WORDS = { seen: "seen by us", documented: "documented", told: "told", assumed: "assumed" } as const;

function EvidenceList({ said: { page } }: { readonly said: Said }) {
	const names = new Map(page.fittings.map(({ part }) => [part.id, part.name]));
	return (
		<Table
			caption="Evidence"
			rows={page.evidence}
			rowKey={(piece) => piece.id}
			empty={<p className="af-lead">Nothing yet. Without evidence an origin is only a word.</p>}
			columns={[
				{
					key: "kind",
					head: "How",
					main: true,
					cell: (piece) => (
						<>
							{piece.stands === "no" ? <s>{KIND_WORDS[piece.kind]}</s> : KIND_WORDS[piece.kind]}
							{piece.how === "" ? "" : `, ${piece.how}`}
						</>
					),
					sub: (piece) => [piece.words, piece.whoSaid === null ? "" : `said by ${piece.whoSaid}`].filter(Boolean).join(" · "),
				},
				{
					key: "claim",
					head: "It was there",
					cell: (piece) => CLAIM_WORDS[piece.claim],
					sub: (piece) => (piece.partId === null ? "of the position" : names.get(piece.partId)),
				},
				{
					key: "paper",
					head: "Paper",
					cell: (piece) => (piece.capture?.fileSha ? <Link href={`/files/${piece.capture.fileSha}`}>see it</Link> : null),
				},
				{
					key: "deed",
					head: "Correct",
					hideHead: true,
					align: "right",
					cell: (piece) => (piece.stands === "yes" ? <WithdrawEvidence evidenceId={piece.id} /> : "withdrawn"),
				},
			]}
		/>
	);
}

/** Alterations of the place and of its parts, and faults. */
function Marks({ said: { page, base } }: { readonly said: Said }) {
	const alterations = [...page.alterations, ...page.partAlterations];
	if (alterations.length === 0 && page.faults.length === 0) return null;
	return (
		<Card title="Altered, faulty">
			{alterations.length === 0 ? null : (
				<Table
					caption="Alterations here"
					rows={alterations}
					rowKey={(alteration) => String(alteration.number)}
					columns={[
						{
							key: "what",
							head: "What",
							main: true,
							cell: (alteration) => <Link href={`${base}/changes/${alteration.number}`}>{alteration.what}</Link>,
						},
						{
							key: "undo",
							head: "Undoing",
							cell: (alteration) => (
								<Badge means={alteration.undo === "never" ? "stop" : "plain"}>
									{alteration.state === "undone" ? "undone" : UNDO_WORDS[alteration.undo]}
								</Badge>
							),
						},
					]}
				/>
			)}
			{page.faults.length === 0 ? null : (
				<Facts
					facts={page.faults.map((fault) => ({
						label: fault.state === "open" ? "Fault" : fault.state === "mended" ? "Mended" : "Left so",
						value: fault.words,
					}))}
				/>
			)}
			<Buttons>
				<Link href={base}>All faults</Link>
			</Buttons>
		</Card>
	);
}
