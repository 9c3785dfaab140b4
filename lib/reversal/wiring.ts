// Which wires come off and go on with a part besides its own: those of what rides on it, and those of other parts that end at it.
// A wire belongs to the device that it starts from, but hands meet it at both ends. Pure.

import type { Operation } from "@/lib/reversal/plan";
import type { ReversalFacts } from "@/lib/reversal/queries";

type Fitting = ReversalFacts["fittings"][number];
export type Wire = Fitting["connections"][number];

/** A wire and the position whose part it belongs to. */
export type WireAt = { readonly wire: Wire; readonly mark: string; readonly name: string };

/** Green and yellow is the protective conductor and nothing else (IEC 60445; from memory, not read again). GNYE is its code of IEC 60757. */
const PROTECTIVE = /\bGNYE\b/;

export const isProtective = ({ colour, from, to }: Wire): boolean => PROTECTIVE.test(colour) || /\bPE\b/.test(`${from} ${to}`);

/**
 * Gives, for each operation in the plan's order, the wires of others that it undoes or makes. Of what the plan takes out before,
 * the wires are off already; what it puts in itself has its wires on its own line.
 */
export function otherWires(operations: readonly Operation[], facts: ReversalFacts): Map<string, WireAt[]> {
	const byMark = new Map(facts.positions.map((position) => [position.mark, position]));
	const partAt = new Map(facts.parts.flatMap(({ id, positionId }) => (positionId === null ? [] : [[positionId, id] as const])));
	const guestsOf = new Map<string, string[]>();
	for (const { id, hostId } of facts.positions) if (hostId !== null) guestsOf.set(hostId, [...(guestsOf.get(hostId) ?? []), id]);
	const wired = facts.fittings.flatMap(({ positionId, untilAt, connections }) => {
		const position = facts.positions.find(({ id }) => id === positionId);
		if (untilAt !== null || position === undefined) return [];
		return connections
			.filter(({ state }) => state === "connected")
			.map((wire) => ({ wire, positionId, mark: position.mark, name: position.name }));
	});
	const opened = new Set(operations.flatMap(({ kind, position }) => (kind === "take-out" && position !== undefined ? [position] : [])));
	const off = new Set<string>();
	const found = new Map<string, WireAt[]>();
	for (const { id, kind, position: mark } of operations) {
		const position = mark === undefined ? undefined : byMark.get(mark);
		if (position === undefined || (kind !== "take-out" && kind !== "put-in")) continue;
		const riders = ridersOn(partAt.get(position.id), guestsOf, partAt).filter((rider) => !opened.has(markOf(facts, rider)));
		const whole = new Set([position.id, ...(kind === "take-out" ? riders : [])]);
		const marks = [...whole].map((one) => markOf(facts, one));
		const wires = wired.filter((one) => {
			if (one.positionId === position.id || (kind === "put-in" ? opened.has(one.mark) : off.has(one.mark))) return false;
			const isRider = whole.has(one.positionId);
			const ends = [names(one.wire.from, marks), names(one.wire.to, marks)];
			// Within the assembly a wire stays on; across its edge it comes off.
			return isRider ? !(ends[0] && ends[1]) : ends[0] || ends[1];
		});
		if (wires.length > 0) found.set(id, wires);
		if (kind === "take-out") for (const one of marks) off.add(one);
	}
	return found;
}

const markOf = (facts: ReversalFacts, positionId: string): string => facts.positions.find(({ id }) => id === positionId)?.mark ?? "";

/** Positions with a part on the assembly, however deep. */
function ridersOn(
	part: string | undefined,
	guestsOf: ReadonlyMap<string, readonly string[]>,
	partAt: ReadonlyMap<string, string>,
): string[] {
	const riders: string[] = [];
	const pending = part === undefined ? [] : [part];
	for (let host = pending.pop(); host !== undefined; host = pending.pop())
		for (const guest of guestsOf.get(host) ?? []) {
			const held = partAt.get(guest);
			if (held === undefined || riders.includes(guest)) continue;
			riders.push(guest);
			pending.push(held);
		}
	return riders;
}

/** Whether an end is written with one of the marks: "k23-2", "earth stud on k23", never "k231". */
const names = (end: string, marks: readonly string[]): boolean =>
	marks.some((mark) => new RegExp(`(^|[^\\p{L}\\p{N}])${mark.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")}([^\\p{L}\\p{N}]|$)`, "u").test(end));
