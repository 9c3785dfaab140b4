import type { Metadata } from "next";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { PageHead } from "@/app/ui/pageHead";
import { Pager } from "@/app/ui/pager";
import { type Choice, shownChoices } from "@/lib/captures/choices";
import { type LaterCapture, laterCounted, laterPage } from "@/lib/captures/laterQueries";
import { writeShows } from "@/lib/captures/shows";
import { dayOf, formatDay, formatWeekday, timeOf } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { isPicture } from "@/lib/files/mediaTypes";
import { machineByNumber, machineChoices } from "@/lib/machines/queries";
import { counted } from "@/lib/machines/rules";
import { requireShop } from "@/lib/shop/queries";
import type { Group, LaterDay, LaterRow } from "./kinds";
import { LaterList } from "./laterList";

export const metadata: Metadata = { title: "Say what they show" };

const A_PAGE = 20;

/** In the evening, at the desk: the captures of the day get their words. */
export default async function LaterPage({ searchParams }: { searchParams: Promise<Record<string, string | string[] | undefined>> }) {
	const asked = await searchParams;
	const after = [asked.after].flat()[0];
	const wanted = [asked.machine].flat()[0];
	const { read } = await shopStore();
	const shop = await requireShop(read);
	const machine = wanted && /^[1-9]\d{0,3}$/.test(wanted) ? await machineByNumber(read, Number(wanted)) : null;
	const of = machine ? { machineId: machine.id } : {};
	const [{ captures, more }, total] = await Promise.all([
		laterPage(read, of, { take: A_PAGE, ...(after ? { after } : {}) }),
		laterCounted(read, of),
	]);
	const days = daysOf(captures, shop.timeZone);
	const machineIds = [...new Set(captures.flatMap(({ machine: its }) => its?.id ?? []))];
	const [groups, machines] = await Promise.all([
		Promise.all(machineIds.map(async (id) => [id, asGroups(await shownChoices(read, id))] as const)),
		captures.some((capture) => capture.machine === null) ? machineChoices(read) : [],
	]);
	const query = (from?: string) => {
		const pairs = new URLSearchParams({ ...(machine ? { machine: String(machine.number) } : {}), ...(from ? { after: from } : {}) });
		return `/later${pairs.size > 0 ? `?${pairs}` : ""}`;
	};
	const last = captures.at(-1)?.id;
	return (
		<Stack>
			<PageHead
				title="Say what they show"
				lead={
					total === 0
						? "Photos and scans that were taken without words stand here, the oldest first."
						: `${counted(total, "photo or scan waits", "photos and scans wait")} for words, the oldest first. Enter keeps the words and goes on to the next; when it was taken stays, and when the words came is kept beside it.`
				}
				{...(machine
					? {
							above: (
								<>
									<Link href={`/machines/${machine.number}/papers`}>
										{machine.number} {machine.name}
									</Link>
									<Link href="/later">all machines</Link>
								</>
							),
						}
					: {})}
			/>
			{captures.length === 0 ? (
				<Card>
					<Empty
						title={after ? "No more wait here" : "Everything has its words"}
						action={after ? <Link href={query()}>From the first</Link> : undefined}
					>
						At the bench a photo or a scanned tag alone is enough. It waits here for the evening.
					</Empty>
				</Card>
			) : (
				<LaterList
					key={after ?? ""}
					days={days}
					groups={Object.fromEntries(groups)}
					machines={machines.map(({ id, number, name }) => ({ value: id, label: `${number} ${name}` }))}
				/>
			)}
			{captures.length > 0 && (after || more) ? (
				<Pager
					shown={`${captures.length} of ${total}`}
					before={after ? query() : undefined}
					after={more && last ? query(last) : undefined}
				/>
			) : null}
		</Stack>
	);
}

/** By day and machine, in the order in which the first of each was taken. */
function daysOf(captures: readonly LaterCapture[], timeZone: string): LaterDay[] {
	const days = new Map<string, LaterDay & { rows: LaterRow[] }>();
	for (const capture of captures) {
		const on = dayOf(instant(capture.takenAt), timeZone);
		const key = `${on} ${capture.machine?.id ?? ""}`;
		const machine = capture.machine && { id: capture.machine.id, number: capture.machine.number };
		const whose = capture.machine ? `${capture.machine.number} ${capture.machine.name}` : "Of no machine yet";
		const day = days.get(key) ?? { key, title: `${whose} · ${formatWeekday(on).slice(0, 3)} ${formatDay(on)}`, machine, rows: [] };
		day.rows.push(asRow(capture, timeZone));
		days.set(key, day);
	}
	return [...days.values()];
}

const asRow = (capture: LaterCapture, timeZone: string): LaterRow => ({
	id: capture.id,
	kind: capture.kind,
	src: capture.file && isPicture(capture.file.mediaType) ? `/files/${capture.file.id}/small` : null,
	fileName: capture.file?.name ?? null,
	href: capture.machine
		? `/machines/${capture.machine.number}/papers/photo/${capture.id}`
		: capture.file
			? `/files/${capture.file.id}`
			: null,
	taken: `${timeOf(instant(capture.takenAt), timeZone)}, by ${capture.by}`,
	known: knownWords(capture),
	tag: capture.tag,
	tagOf: capture.tag === null ? null : (capture.tagOf ?? "hangs on nothing yet"),
	offers: capture.offers,
	comesOut: capture.mayComeOut,
});

const knownWords = ({ part, position, bag, step }: LaterCapture): string =>
	[
		part && [part.name, part.tag].filter(Boolean).join(" "),
		position && `${position.name} (${position.mark})`,
		bag && `bag ${bag.tag ?? bag.words}`,
		step && `step ${step.number} ${step.title}`,
	]
		.filter(Boolean)
		.join(", ");

function asGroups({ positions, parts, bags, steps }: Awaited<ReturnType<typeof shownChoices>>): Group[] {
	const lists: { label: string; kind: "positionId" | "partId" | "bagId" | "stepId"; options: readonly Choice[] }[] = [
		{ label: "Positions", kind: "positionId", options: positions },
		{ label: "Parts", kind: "partId", options: parts },
		{ label: "Bags", kind: "bagId", options: bags },
		{ label: "Steps", kind: "stepId", options: steps },
	];
	return lists.flatMap(({ label, kind, options }) =>
		options.length === 0 ? [] : [{ label, options: options.map((option) => ({ ...option, value: writeShows({ [kind]: option.value }) })) }],
	);
}
