// Which positions can be reached now, and what covers those that cannot.
// Pure. Knows positions, what is fitted where, and what obstructs what; nothing of bags, people or time.

/** A position as reach sees it. `sides` empty means one, unnamed. */
export type ReachPosition = {
	readonly id: string;
	readonly machineId: string;
	/** The assembly that hosts it; null for the machine itself. */
	readonly hostId: string | null;
	readonly sides: readonly string[];
};

/** "While the part is fitted, the position cannot be reached from that side" ("" from every side). */
export type Cover = { readonly obstructionId: string; readonly partId: string; readonly positionId: string; readonly side: string };

export type ReachFacts = {
	readonly positions: ReadonlyMap<string, ReachPosition>;
	/** Fitted part to its position. */
	readonly seatOf: ReadonlyMap<string, string>;
	/** The obstructions that stand. */
	readonly covers: readonly Cover[];
};

/**
 * The whole that a position is in: the machine, or the loose assembly that hosts it, however deep.
 * An assembly in a bag still has its own small build, and is a whole of its own.
 */
export function wholeOf(facts: ReachFacts, positionId: string): string {
	const seen = new Set<string>();
	for (let at = positionId; ; ) {
		const position = facts.positions.get(at);
		// A position that is not among the facts belongs to no whole that they speak of.
		if (!position || seen.has(at)) return `nowhere:${at}`;
		seen.add(at);
		if (position.hostId === null) return `machine:${position.machineId}`;
		const seat = facts.seatOf.get(position.hostId);
		if (seat === undefined) return `part:${position.hostId}`;
		at = seat;
	}
}

/** The obstructions of a position whose part is fitted in the same whole, whether or not a side stays free. */
export function obstructedBy(facts: ReachFacts, positionId: string): Cover[] {
	const whole = wholeOf(facts, positionId);
	return facts.covers.filter((cover) => {
		if (cover.positionId !== positionId) return false;
		const seat = facts.seatOf.get(cover.partId);
		return seat !== undefined && seat !== positionId && wholeOf(facts, seat) === whole;
	});
}

/**
 * What covers a position: empty when it can be reached from at least one of its sides, else every obstruction
 * that would have to go for one of them to be free.
 */
export function whatCovers(facts: ReachFacts, positionId: string): Cover[] {
	const obstructions = obstructedBy(facts, positionId);
	const sides = facts.positions.get(positionId)?.sides ?? [];
	if (sides.length === 0) return obstructions;
	const onSide = (side: string) => obstructions.filter((cover) => cover.side === "" || cover.side === side);
	if (sides.some((side) => onSide(side).length === 0)) return [];
	return obstructions.filter((cover) => cover.side === "" || sides.includes(cover.side));
}

/** Whether a position can be reached now. */
export const isReachable = (facts: ReachFacts, positionId: string): boolean => whatCovers(facts, positionId).length === 0;

/** The same facts with a part out of its position. */
export function withoutPart(facts: ReachFacts, partId: string): ReachFacts {
	const seatOf = new Map(facts.seatOf);
	seatOf.delete(partId);
	return { ...facts, seatOf };
}

/** The parts that a position hangs on: its host, the host of its host's position, and so on. */
export function hostsOf(facts: ReachFacts, positionId: string): string[] {
	const hosts: string[] = [];
	for (let at: string | undefined = positionId; at !== undefined; ) {
		const host: string | null = facts.positions.get(at)?.hostId ?? null;
		if (host === null || hosts.includes(host)) break;
		hosts.push(host);
		at = facts.seatOf.get(host);
	}
	return hosts;
}
