// A plan as a restorer reads it: each operation with what to fetch, where from, what holds it, how it is wired, how it was
// set, what to mind. Pure.

import { formatFixing } from "@/lib/fixings/fixingWords";
import { dangerOf, partKey } from "@/lib/reversal/asked";
import type { Operation, Plan } from "@/lib/reversal/plan";
import type { ReversalFacts } from "@/lib/reversal/queries";
import { isProtective, otherWires, type Wire } from "@/lib/reversal/wiring";

type Fitting = ReversalFacts["fittings"][number];
type FixingBag = NonNullable<Fitting["holds"][number]["fixing"]["bag"]>;
type Part = ReversalFacts["parts"][number];
type Location = Part["location"];

export type Line = {
	readonly id: string;
	readonly kind: Operation["kind"];
	/** "Take out", "Put in", "Undo". */
	readonly deed: string;
	readonly what: string;
	readonly mark: string | null;
	readonly tag: string | null;
	readonly origin: Part["origin"] | null;
	/** On the bench, in the assembly that was taken out. */
	readonly onBench: string | null;
	readonly side: string | null;
	/** Bags or places to fetch it from, for a put-in and for what is undone on a loose part. */
	readonly from: readonly Fetch[];
	/** The number of the line at which it came out, for what goes in again. */
	readonly cameOutAt: number | null;
	readonly fixings: readonly string[];
	/** Those lots of the record, for the form that puts it in. */
	readonly fixingIds: readonly string[];
	readonly wires: readonly string[];
	readonly settings: readonly string[];
	/** Which way round, what hides behind. */
	readonly notes: readonly string[];
	readonly cautions: readonly string[];
	readonly leavesTrace: boolean;
	readonly minutes: Operation["minutes"];
	readonly wait: number;
};

/** Something to fetch: a bag with its way there, or a part that lies in no bag. `order` sorts as one walks through the store. */
export type Fetch = { readonly tag: string | null; readonly words: string; readonly where: string; readonly order: readonly number[] };

/** The usual cautions before anything mains powered is opened (common practice, no source; local codes come first). */
export const MAKE_SAFE = [
	"Unplug it, tag the plug, and prove dead with a tester that you proved before and prove again after. Switched off is not dead.",
	"Discharge capacitors through a resistor, then measure. Block springs, weights and raised arms.",
	"Old lamps, ballasts, paint and insulation may hold mercury, PCB, lead or asbestos: leave them whole and ask.",
	"Local codes and a licensed electrician come before this list.",
] as const;

/** Minutes that making safe and the checks by hand take (common practice, no source); they are not in a plan's sum. */
export const MAKE_SAFE_MINUTES = 15;
export const CHECK_MINUTES = 30;
export const MAKE_SAFE_AND_CHECK = MAKE_SAFE_MINUTES + CHECK_MINUTES;

/** What to do by hand when it is together again, before any power. */
export const CHECK = [
	"Turn it through a full cycle by hand. Measure protective earth and insulation and record the values with the instrument under Tests.",
	"Look into the holding bags: each should be empty.",
] as const;

/** The lines of a plan, or of whatever else has operations, in its order. `facts` must be those that its problem was made from. */
export function checklistOf(plan: Pick<Plan, "operations">, facts: ReversalFacts): Line[] {
	const partOf = new Map(facts.parts.map((part) => [partKey(part), part]));
	const positionOf = new Map(facts.positions.map((position) => [position.mark, position]));
	const alterationOf = new Map(facts.alterations.map((alteration) => [`a${alteration.number}`, alteration]));
	const others = otherWires(plan.operations, facts);
	const outAt = new Map(
		plan.operations.flatMap(({ kind, part }, at) => (kind === "take-out" && part !== undefined ? [[part, at + 1] as const] : [])),
	);
	const closing = closingFrom(plan.operations);
	const undone = plan.operations.flatMap(({ alteration }) => alterationOf.get(alteration ?? "") ?? []);
	return plan.operations.map((operation, at): Line => {
		const part = operation.part === undefined ? undefined : partOf.get(operation.part);
		const position = operation.position === undefined ? undefined : positionOf.get(operation.position);
		const alteration = operation.alteration === undefined ? undefined : alterationOf.get(operation.alteration);
		const before = undone
			.filter((each) => (position !== undefined && each.positionId === position.id) || (part !== undefined && each.partId === part.id))
			.map(({ doneAt }) => doneAt)
			.sort()[0];
		const fitting = fittingFor(facts.fittings, operation, position?.id, part?.id, before);
		const bench = operation.bench === undefined ? undefined : partOf.get(operation.bench);
		const puttingIn = operation.kind === "put-in";
		const wiresOfOthers = others.get(operation.id) ?? [];
		const wasOut = outAt.get(operation.part ?? "");
		// What was written down of a position is often said of the part that was found in it.
		const found = facts.findings.findLast(({ positionId, partId }) => positionId === position?.id && partId !== null);
		const isFound = found === undefined || part === undefined || found.partId === part.id;
		return {
			id: operation.id,
			kind: operation.kind,
			deed: DEEDS[operation.kind],
			what: whatOf(operation, part, position, alteration),
			mark: position?.mark ?? null,
			tag: part?.tag?.id ?? null,
			origin: operation.kind === "undo" ? null : (part?.origin ?? null),
			onBench: bench?.name ?? null,
			side: operation.side ?? null,
			// What is mended on the bench has to be fetched for it, too.
			from:
				part && puttingIn
					? eachOnce([...fetchesOf(part), ...fetchesOfFixings(fitting)])
					: part && operation.kind === "undo"
						? fetchesOf(part)
						: [],
			fixings: (fitting?.holds ?? []).map(({ fixing }) =>
				[
					formatFixing(fixing),
					fixing.differs,
					fixing.tightness,
					fixing.note,
					puttingIn && (fixing.place === "lost" || fixing.place === "scrapped") ? `${fixing.place}: say what holds it instead` : "",
					puttingIn && fixing.place === "left" ? "left where it was" : "",
				]
					.filter(Boolean)
					.join(", "),
			),
			fixingIds: (fitting?.holds ?? []).map(({ fixing }) => fixing.id),
			wires: [
				...(fitting?.connections ?? [])
					.filter(({ state }) => state !== "removed" || puttingIn)
					// How a wire lies today is no word on how it is to be: what goes in is connected.
					.map((wire) => wireInWords(wire, puttingIn || wire.state === "connected" ? "" : wire.state)),
				...wiresOfOthers.map(({ wire, mark, name }) => `${wireInWords(wire, "")}, of ${mark} ${name}`),
			],
			settings: (fitting?.settings ?? []).map(({ kind, value }) => `${kind}: ${value}`),
			notes: [
				fitting?.wayRound ?? "",
				operation.kind === "undo" ? (alteration?.undoHow ?? "") : isFound ? (position?.note ?? "") : "",
			].filter(Boolean),
			cameOutAt: puttingIn ? (wasOut ?? null) : null,
			cautions: [
				...(at === closing ? [CLOSING] : []),
				...earthCaution(operation, [...(fitting?.connections ?? []), ...wiresOfOthers.map(({ wire }) => wire)]),
				...(puttingIn && part
					? [dangerOf(part, facts)].flatMap((danger) => (danger === null ? [] : [`Puts a danger back: ${danger}.`]))
					: []),
				...cautionsOf(operation, part),
			],
			leavesTrace: alteration?.undo === "trace",
			minutes: operation.minutes,
			wait: operation.wait ?? 0,
		};
	});
}

const wireInWords = (wire: Wire, state: string): string =>
	[`${wire.from} to ${wire.to}`, wire.colour, wire.gauge, tagsOf(wire), state, wire.note].filter(Boolean).join(", ");

/** Before the first panel goes on that only had to come off to reach the rest: afterwards nobody sees inside. */
const CLOSING =
	"Before it closes: turn the machine by hand, look at every wire against the tags, measure protective earth and insulation, and record the values.";

/** The number of the first operation after which only what was opened to reach the rest goes back; -1 where there is none. */
function closingFrom(operations: readonly Operation[]): number {
	const out = new Map(operations.flatMap(({ kind, position, part }) => (kind === "take-out" ? [[position, part] as const] : [])));
	let first = -1;
	for (let at = operations.length - 1; at >= 0; at--) {
		const operation = operations[at];
		if (operation === undefined || operation.kind === "check") continue;
		// Loose on the bench it closes nothing, and what is new in its place is part of the work.
		if (operation.kind !== "put-in" || operation.bench !== undefined || out.get(operation.position) !== operation.part) break;
		first = at;
	}
	return first;
}

/** A protective earth that comes off or goes on is said by itself: it is the wire that nobody misses until it is needed. */
function earthCaution({ kind }: Operation, wires: readonly Wire[]): string[] {
	if (!wires.some((wire) => isProtective(wire) && wire.state !== "removed")) return [];
	if (kind === "take-out") return ["Protective earth is wired here: undo it last, tag both ends."];
	return kind === "put-in" ? ["Protective earth is wired here: put it on first, and measure it before the machine is closed."] : [];
}

const DEEDS: Readonly<Record<Operation["kind"], string>> = {
	"make-safe": "Make safe",
	"take-out": "Take out",
	undo: "Undo",
	"put-in": "Put in",
	check: "Check",
};

function whatOf(
	operation: Operation,
	part: Part | undefined,
	position: ReversalFacts["positions"][number] | undefined,
	alteration: ReversalFacts["alterations"][number] | undefined,
): string {
	if (operation.kind === "make-safe") return "isolate, prove dead, discharge";
	if (operation.kind === "check") return "by hand, then the tests";
	if (alteration) return `${alteration.what}, on ${part?.name ?? position?.name ?? alteration.place ?? "the machine"}`;
	const name = part?.name ?? "the part";
	return part && part.count > 1 ? `${name}, ${part.count} of them` : name;
}

/**
 * The fitting that tells how a part is held: what ends now for a take-out; for a put-in the last time this part sat there,
 * or, when it never did, the last one of any part at the position. Where an alteration is undone (`before` is when it was
 * done), the part is held as it was before that: by the old screws in the old holes.
 */
function fittingFor(
	fittings: readonly Fitting[],
	operation: Operation,
	positionId: string | undefined,
	partId: string | undefined,
	before: string | undefined,
): Fitting | undefined {
	if (positionId === undefined || operation.kind === "undo") return undefined;
	const here = fittings.filter((fitting) => fitting.positionId === positionId);
	if (operation.kind === "take-out") return here.find((fitting) => fitting.untilAt === null && fitting.partId === partId);
	const ever = here.filter((fitting) => fitting.partId === partId);
	const earlier = before === undefined ? [] : ever.filter(({ fromAt }) => fromAt < before);
	const own = earlier.length > 0 ? earlier : ever;
	// What was written down at the last take-out counts; a later, bare fitting of the same part adds nothing.
	return own.findLast(({ holds, connections }) => holds.length + connections.length > 0) ?? own.at(-1) ?? here.at(-1);
}

/** A bag that holds the part and its screws is fetched once. */
const keyOf = ({ tag, words, where }: Fetch): string => tag ?? `${words} ${where}`;
const eachOnce = (fetches: readonly Fetch[]): Fetch[] => [...new Map(fetches.map((fetch) => [keyOf(fetch), fetch])).values()];

const tagsOf = ({ tagFrom, tagTo }: { readonly tagFrom: string; readonly tagTo: string }): string =>
	tagFrom || tagTo ? `tags ${[tagFrom, tagTo].filter(Boolean).join(" and ")}` : "";

function fetchesOf(part: Part): Fetch[] {
	const place = placeOf(part.location);
	if (part.place === "bag" && part.bag) return [fetchBag(part.bag)];
	if (part.place === "location") return [{ tag: part.tag?.id ?? null, words: part.name, ...place }];
	if (part.place === "bench") return [{ tag: part.tag?.id ?? null, words: part.name, where: "on the bench", order: [] }];
	return [];
}

function fetchesOfFixings(fitting: Fitting | undefined): Fetch[] {
	const bags = new Map(
		(fitting?.holds ?? []).flatMap(({ fixing }) => (fixing.place === "bag" && fixing.bag ? [[fixing.bag.id, fixing.bag] as const] : [])),
	);
	return [...bags.values()].map(fetchBag);
}

function fetchBag(bag: FixingBag): Fetch {
	const own = placeOf(bag.location);
	const outer = bag.parent ? placeOf(bag.parent.location) : null;
	const inside = bag.parent ? `inside ${bag.parent.tag?.id ?? bag.parent.words}` : "";
	const where = [outer?.where, inside, own.where].filter(Boolean).join(", ");
	return {
		tag: bag.tag?.id ?? null,
		words: [bag.words, bag.caution].filter(Boolean).join(", "),
		where: where || (bag.place === "bench" ? "on the bench" : bag.place === "out" ? "out of the shop" : "not put away"),
		order: outer?.order.length ? outer.order : own.order,
	};
}

/** "Back room · rack B · shelf 2" and its order of walking. */
function placeOf(location: Location | NonNullable<FixingBag["location"]> | null): {
	readonly where: string;
	readonly order: readonly number[];
} {
	const names: string[] = [];
	const order: number[] = [];
	type Up = { readonly name: string; readonly rank: number; readonly parent?: Up | null };
	for (let at: Up | null | undefined = location; at; at = at.parent) {
		names.unshift(at.name);
		order.unshift(at.rank);
	}
	return { where: names.join(" · "), order };
}

function cautionsOf(operation: Operation, part: Part | undefined): string[] {
	if (operation.kind === "make-safe") return [...MAKE_SAFE];
	if (operation.kind === "check") return [...CHECK];
	if (operation.kind !== "put-in" || !part) return [];
	return [part.works === "faulty" ? "It does not work." : "", part.condition].filter(Boolean);
}

export type Picked = Fetch & { readonly for: readonly string[] };

/** Everything to fetch, once each, in the order in which one walks through the store. */
export function pickList(lines: readonly Line[]): Picked[] {
	const picked = new Map<string, { fetch: Fetch; for: string[] }>();
	for (const line of lines)
		for (const fetch of line.from) {
			const key = keyOf(fetch);
			const known = picked.get(key);
			if (known) known.for.push(line.what);
			else picked.set(key, { fetch, for: [line.what] });
		}
	return [...picked.values()]
		.map(({ fetch, for: use }) => ({ ...fetch, for: use }))
		.sort((a, b) => inOrder(a.order, b.order) || ((a.tag ?? a.words) < (b.tag ?? b.words) ? -1 : 1));
}

function inOrder(a: readonly number[], b: readonly number[]): number {
	for (let level = 0; level < Math.max(a.length, b.length); level++) {
		const difference = (a[level] ?? -1) - (b[level] ?? -1);
		if (difference !== 0) return difference;
	}
	return 0;
}
