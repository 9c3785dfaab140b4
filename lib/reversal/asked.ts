// What somebody asks of a reversal, made into a problem for the planner. Pure.
//
// Target "as found": what each position held when the machine came, by the as found record and, where a position was not
// seen then, by the first later knowledge of it. A position that is still not seen keeps what it holds.
// Target "as made": the best belief of what it held when the machine was made (asMade.ts).
// Target "day": what each position held at that instant, by its fittings.

import { isNotFound, lower } from "@/lib/bags/rules";
import { formatDay, isDay } from "@/lib/core/days";
import type { Instant } from "@/lib/core/instants";
import { buildAsMade } from "@/lib/reversal/asMade";
import type { Alteration, Obstruction, Part, Position, Problem, ThreePoint, Times } from "@/lib/reversal/problem";
import { PROBLEM_FORMAT } from "@/lib/reversal/problem";
import type { ReversalFacts } from "@/lib/reversal/queries";
import { type Asked, alterationAsked, type Frozen, placeMark, scopeOf } from "@/lib/reversal/scope";
import { isOn, type SoundBuild, soundBuild } from "@/lib/reversal/soundBuild";

type Fact<Key extends keyof ReversalFacts> = ReversalFacts[Key] extends readonly (infer Row)[] ? Row : never;

/**
 * Position id to part id, as found. Positions that nobody has seen are not in `seen`; nor are those whose part was, by another
 * finding, somewhere else.
 */
export function buildAsFound(
	facts: Pick<ReversalFacts, "positions" | "findings" | "fittings">,
	asFoundAt: Instant | null,
): { readonly build: Map<string, string>; readonly seen: Set<string> } {
	const told: Fact<"findings">[] = [];
	const seen = new Set<string>();
	const byPosition = new Map<string, Fact<"findings">[]>();
	for (const finding of facts.findings) byPosition.set(finding.positionId, [...(byPosition.get(finding.positionId) ?? []), finding]);
	for (const position of facts.positions) {
		if (position.asFound === "no") {
			seen.add(position.id);
			continue;
		}
		const findings = byPosition.get(position.id) ?? [];
		const first = findings.findLast(({ at, state }) => (asFoundAt === null || at <= asFoundAt) && state !== "unseen");
		const finding = first ?? findings.find(({ at, state }) => asFoundAt !== null && at > asFoundAt && state !== "unseen");
		if (!finding) continue;
		seen.add(position.id);
		if (finding.partId !== null && finding.state !== "missing") told.push(finding);
	}
	const order = new Map(facts.findings.map((finding, at) => [finding, at]));
	const found = (position: string): number => Math.max(...told.map((one) => (one.positionId === position ? (order.get(one) ?? 0) : -1)));
	const { build, unsure } = soundBuild(
		told.flatMap(({ positionId, partId }) => (partId === null ? [] : [{ position: positionId, part: partId }])),
		hostsIn(facts),
		(part, positions) => {
			const fitted = facts.fittings.filter(({ partId, positionId }) => partId === part && positions.includes(positionId));
			const last = fitted.find(({ untilAt }) => untilAt === null) ?? fitted.at(-1);
			return last?.positionId ?? positions.reduce((best, position) => (found(position) > found(best) ? position : best));
		},
	);
	for (const position of unsure) seen.delete(position);
	return { build, seen };
}

const hostsIn = (facts: Pick<ReversalFacts, "positions">): Map<string, string | null> =>
	new Map(facts.positions.map(({ id, hostId }) => [id, hostId]));

/** Position id to part id at an instant, by the fittings, the earliest first. Of two that overlap, the later one counts. */
export function buildAt(facts: Pick<ReversalFacts, "positions" | "fittings">, at: Instant): SoundBuild {
	const held = new Map(
		facts.fittings
			.filter((fitting) => fitting.fromAt <= at && (fitting.untilAt === null || fitting.untilAt > at))
			.map((fitting) => [fitting.positionId, fitting]),
	);
	const since = (position: string): string => held.get(position)?.fromAt ?? "";
	return soundBuild(
		[...held].map(([position, { partId }]) => ({ position, part: partId })),
		hostsIn(facts),
		(_, positions) => positions.reduce((best, position) => (since(position) > since(best) ? position : best)),
	);
}

/** What a plan calls a part: its tag, as it hangs on the thing, or its id where it has none. */
export const partKey = (part: { readonly id: string; readonly tag: { readonly id: string } | null }): string => part.tag?.id ?? part.id;

/** Position id to part id when a plan is carried out: what its marks and tags stand for. */
export function heldAfter(
	facts: Pick<ReversalFacts, "positions" | "parts">,
	plan: { readonly attains: Readonly<Record<string, string>> },
): Map<string, string> {
	const positions = new Map(facts.positions.map(({ mark, id }) => [mark, id]));
	const parts = new Map(facts.parts.map((part) => [partKey(part), part.id]));
	return new Map(
		Object.entries(plan.attains).flatMap(([mark, key]) => {
			const [position, part] = [positions.get(mark), parts.get(key)];
			return position === undefined || part === undefined ? [] : [[position, part] as const];
		}),
	);
}

/**
 * The problem that a question comes to, positions named by their marks and parts by their tags. A record that was too large to
 * be read whole comes to a problem that `readProblem` refuses, in words for the screen.
 */
export function problemOf(facts: ReversalFacts, asked: Asked): Problem {
	const incomplete = incompleteWhy(facts.beyond);
	if (incomplete !== null) return { format: PROBLEM_FORMAT, positions: [], parts: [], now: {}, target: {}, obstructions: [], incomplete };
	const markOf = new Map(facts.positions.map(({ id, mark }) => [id, mark]));
	const keyOf = new Map(facts.parts.map((part) => [part.id, partKey(part)]));
	const key = (id: string): string => keyOf.get(id) ?? id;
	const { known, mine, now, target, excluded, alterations, scope } = meantBy(facts, asked);
	const places = [...new Set(alterations.flatMap(({ place }) => (place ? [place] : [])))];
	const sidesOf = new Map(facts.positions.map(({ id, sides }) => [id, sidesIn(sides)]));
	const stuck = new Map((asked.leftOut ?? []).flatMap(({ position, why, stuck }) => (stuck === "yes" ? [[position, why] as const] : [])));
	return {
		format: PROBLEM_FORMAT,
		positions: [
			...facts.positions.map(
				(position): Position => ({
					id: position.mark,
					name: position.name,
					...(position.hostId !== null && known.has(position.hostId) ? { host: key(position.hostId) } : {}),
					...((sidesOf.get(position.id) ?? []).length > 0 ? { sides: sidesOf.get(position.id) ?? [] } : {}),
					...(position.area ? { area: position.area } : {}),
					...(stuck.has(position.id) ? { stuck: stuck.get(position.id) || "it is stuck" } : {}),
				}),
			),
			...places.map((place): Position => ({ id: placeMark(place), name: place })),
		],
		parts: facts.parts.map((part) => partOf(part, mine, facts, excluded, key)),
		now: named(now, markOf, key),
		target: named(target, markOf, key),
		...(scope === null ? {} : { scope: [...scope].map((id) => markOf.get(id) ?? id).sort() }),
		obstructions: obstructionsOf(facts, markOf, known, sidesOf, key),
		alterations: alterations.map(
			(alteration): Alteration => ({
				id: `a${alteration.number}`,
				name: alteration.what,
				...(alteration.partId !== null
					? { part: key(alteration.partId) }
					: { position: alteration.positionId === null ? placeMark(alteration.place ?? "") : (markOf.get(alteration.positionId) ?? "") }),
				undo: undoOf(alteration),
				...(alteration.undo === "trace" ? { leavesTrace: true } : {}),
			}),
		),
		times: Object.fromEntries(facts.positions.map((position) => [position.mark, timesOf(position)])),
		...(asked.reason ? { dangerReason: asked.reason } : {}),
	};
}

/** What a question means on this record, by ids: the build now and then, what excludes what, what is undone, where. */
export function meantBy(facts: ReversalFacts, asked: Asked) {
	const known = new Set(facts.parts.map(({ id }) => id));
	const mine = new Set(facts.positions.map(({ id }) => id));
	const now = new Map(
		facts.parts.flatMap(({ id, positionId }) => (positionId !== null && mine.has(positionId) ? [[positionId, id] as const] : [])),
	);
	const { target, excluded } = targetOf(facts, asked, now, known);
	const alterations = facts.alterations.filter(
		(alteration) => isHere(alteration, mine, known) && alterationAsked(facts, alteration, asked, target),
	);
	return { known, mine, now, target, excluded, alterations, scope: scopeOf(facts, asked, alterations, mine) };
}

/** What a question comes to now, to be kept while it is carried out. */
export function frozenOf(facts: ReversalFacts, asked: Asked): Frozen {
	const { alterations, scope } = meantBy(facts, asked);
	return { scope: scope === null ? null : [...scope].sort(), alterations: alterations.map(({ id }) => id) };
}

function incompleteWhy(beyond: ReversalFacts["beyond"]): string | null {
	if (beyond.length === 0) return null;
	const much = beyond.map(({ kind, most }) => `${String(most).replace(/\B(?=(\d{3})+$)/g, ",")} ${kind}`).join(" and more than ");
	return `This machine has more than ${much} on record, more than are read for a plan. No plan is made, since one of a part of the record would be wrong. Ask whoever keeps the program to raise the limit.`;
}

type Key = (partId: string) => string;
type Pair = Fact<"exclusions">;

/**
 * What to go back to, and which parts exclude each other. The planner refuses a target that holds two parts which exclude each
 * other, and the book may well tell of one, since nobody can strike an exclusion out: what was seen fitted together can be.
 */
function targetOf(
	facts: ReversalFacts,
	asked: Asked,
	now: ReadonlyMap<string, string>,
	known: ReadonlySet<string>,
): { readonly target: ReadonlyMap<string, string>; readonly excluded: readonly Pair[] } {
	const { build, unsure } = asked.asMade
		? buildAsMade(facts)
		: asked.at === undefined
			? unseenOf(facts, asked)
			: standingAt(facts, asked.at);
	// A part that was entered in error was never there.
	const target = new Map([...build].filter(([, part]) => known.has(part)));
	const placeOf = new Map([...target].map(([position, part]) => [part, position]));
	const excluded = facts.exclusions.filter(
		({ partId, otherId }) =>
			partId !== otherId && known.has(partId) && known.has(otherId) && !(placeOf.has(partId) && placeOf.has(otherId)),
	);
	const hosts = hostsIn(facts);
	// Nobody knows what such a position held: it stays as it is, unless something that was seen cannot be fitted beside it.
	for (const { id } of facts.positions) {
		const held = now.get(id);
		if (!unsure.has(id) || target.has(id) || held === undefined || placeOf.has(held) || isOn(id, held, hosts, placeOf)) continue;
		const isExcluded = excluded.some(
			({ partId, otherId }) => (partId === held && placeOf.has(otherId)) || (otherId === held && placeOf.has(partId)),
		);
		if (isExcluded) continue;
		target.set(id, held);
		placeOf.set(held, id);
	}
	return { target, excluded };
}

/** The build at an instant; nobody is sure of what was there when it came and was only recorded later. */
function standingAt(facts: ReversalFacts, at: Instant): SoundBuild {
	const { build, unsure } = buildAt(facts, at);
	const recorded = new Set(facts.fittings.filter(({ fromAt }) => fromAt <= at).map(({ positionId }) => positionId));
	const found = new Set(facts.findings.flatMap(({ positionId, partId }) => (partId === null ? [] : [`${positionId} ${partId}`])));
	const later = facts.fittings.filter(({ positionId, partId }) => !recorded.has(positionId) && found.has(`${positionId} ${partId}`));
	return { build, unsure: new Set([...unsure, ...later.map(({ positionId }) => positionId)]) };
}

/** The build as found; nobody is sure of what was not seen. */
function unseenOf(facts: ReversalFacts, asked: Asked): SoundBuild {
	const { build, seen } = buildAsFound(facts, asked.asFoundAt);
	return { build, unsure: new Set(facts.positions.map(({ id }) => id).filter((id) => !seen.has(id))) };
}

/** Whether an alteration is of this machine as the book has it: not of a part entered in error, or one that is another machine's. */
const isHere = ({ partId, positionId, place }: Fact<"alterations">, mine: ReadonlySet<string>, known: ReadonlySet<string>): boolean =>
	partId !== null ? known.has(partId) : positionId !== null ? mine.has(positionId) : Boolean(place);

const named = (build: ReadonlyMap<string, string>, markOf: ReadonlyMap<string, string>, key: Key): Record<string, string> =>
	Object.fromEntries([...build].flatMap(([position, part]) => (markOf.has(position) ? [[markOf.get(position), key(part)]] : [])));

/** Sides as stored: a JSON list of names. */
function sidesIn(json: string): string[] {
	const list: unknown = JSON.parse(json);
	return Array.isArray(list) ? [...new Set(list.filter((side): side is string => typeof side === "string" && side !== ""))] : [];
}

function partOf(part: Fact<"parts">, mine: ReadonlySet<string>, facts: ReversalFacts, excluded: readonly Pair[], key: Key): Part {
	const excludes = excluded.flatMap(({ partId, otherId }) =>
		partId === part.id ? [key(otherId)] : otherId === part.id ? [key(partId)] : [],
	);
	const unavailable = unavailableWhy(part, mine, facts.bagsOutside);
	const danger = dangerOf(part, facts);
	const condition = [part.works === "faulty" ? "does not work" : "", part.condition].filter(Boolean).join(": ");
	return {
		id: key(part.id),
		name: part.name,
		...(unavailable ? { unavailable, freedBy: freedBy(part) } : {}),
		...(excludes.length > 0 ? { excludes } : {}),
		...(condition ? { condition } : {}),
		...(danger ? { danger } : {}),
	};
}

/** What was taken out for safety would put a danger back. */
export function dangerOf(part: Fact<"parts">, facts: ReversalFacts): string | null {
	const safety = new Map(facts.conversions.filter(({ purpose }) => purpose === "safety").map(({ id, name }) => [id, name]));
	const ended = facts.fittings.find(({ partId, outConversionId }) => partId === part.id && safety.has(outConversionId ?? ""));
	return ended === undefined ? null : `it was taken out for safety (${safety.get(ended.outConversionId ?? "")})`;
}

function outWith(bag: NonNullable<Fact<"parts">["bag"]>): string {
	const itsBag = bag.tag?.id ?? bag.words;
	if (bag.place === "out" && isNotFound(bag.placeWhy)) return `in ${itsBag}, which was ${lower(bag.placeWhy)}`;
	const named = `in ${itsBag}, which is out of the shop`;
	return bag.place === "out" ? `${named}${bag.placeWhy ? `: ${bag.placeWhy}` : ""}` : `${named} with the bag around it`;
}

/** What would bring a part back that cannot be had. */
function freedBy(part: Fact<"parts">): string {
	const another = `a ${part.name} of the same make and type from its time`;
	switch (part.place) {
		case "lost":
			return `finding the ${part.name}, or ${another}`;
		case "sold":
			return `buying the ${part.name} back, or ${another}`;
		case "out":
		case "bag":
			return `having the ${part.name} back${part.dueDay && isDay(part.dueDay) ? `, due ${formatDay(part.dueDay)}` : ""}`;
		case "fitted":
			return `taking the ${part.name} out of the other machine`;
		default:
			return another;
	}
}

/** Why a part cannot be had; null when it can. */
function unavailableWhy(part: Fact<"parts">, mine: ReadonlySet<string>, bagsOutside: readonly string[]): string | null {
	const because = part.placeWhy ? `: ${part.placeWhy}` : "";
	switch (part.place) {
		case "lost":
			return `lost${because}`;
		case "scrapped":
			return `scrapped${because}`;
		case "sold":
			return `sold${because}`;
		case "out":
			return `out of the shop${part.dueDay && isDay(part.dueDay) ? `, due back ${formatDay(part.dueDay)}` : ""}${because}`;
		case "bag":
			// It is where its bag is, and that is where the bags around it are.
			return part.bag !== null && bagsOutside.includes(part.bag.id) ? outWith(part.bag) : null;
		case "fitted":
			return part.positionId !== null && !mine.has(part.positionId) ? "fitted in another machine" : null;
		default:
			return null;
	}
}

/**
 * What stands in the way of what. A side that the position no longer has is no way in, and what stood there blocks nothing;
 * but where the position has no named sides at all any more, the one way in that is left is taken for the one that was named,
 * so that no plan reaches through a part that may well stand there (`lib/fittings/reach.ts` says the same at the bench).
 */
function obstructionsOf(
	facts: ReversalFacts,
	markOf: ReadonlyMap<string, string>,
	known: ReadonlySet<string>,
	sidesOf: ReadonlyMap<string, readonly string[]>,
	key: Key,
): Obstruction[] {
	return facts.obstructions.flatMap(({ partId, positionId, side }): Obstruction[] => {
		const mark = markOf.get(positionId);
		const sides = sidesOf.get(positionId) ?? [];
		if (mark === undefined || !known.has(partId)) return [];
		if (side === "" || sides.length === 0) return [{ part: key(partId), position: mark }];
		return sides.includes(side) ? [{ part: key(partId), position: mark, sides: [side] }] : [];
	});
}

const undoOf = (alteration: Fact<"alterations">): Alteration["undo"] =>
	alteration.undo === "never" || alteration.undoLow === null || alteration.undoLikely === null || alteration.undoHigh === null
		? null
		: {
				low: alteration.undoLow,
				likely: alteration.undoLikely,
				high: alteration.undoHigh,
				...(alteration.undoWait ? { wait: alteration.undoWait } : {}),
			};

function timesOf(position: Fact<"positions">): Times {
	const three = (low: number | null, likely: number | null, high: number | null): ThreePoint | undefined =>
		low === null || likely === null || high === null ? undefined : { low, likely, high };
	const out = three(position.outLow, position.outLikely, position.outHigh);
	const into = three(position.inLow, position.inLikely, position.inHigh);
	return { ...(out ? { out } : {}), ...(into ? { in: into } : {}) };
}
