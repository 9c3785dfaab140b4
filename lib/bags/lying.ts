// A part or a lot of fixings that lies in a bag: what is read of it, and where it belongs.

const positionShown = {
	select: { id: true, mark: true, name: true, machine: { select: { number: true } }, part: { select: { id: true } } },
} as const;

export const lyingPart = {
	id: true,
	name: true,
	count: true,
	origin: true,
	works: true,
	condition: true,
	material: true,
	tag: { select: { id: true } },
	fittings: { orderBy: [{ fromAt: "desc" as const }, { id: "desc" as const }], take: 1, select: { position: positionShown } },
};

export const lyingFixing = {
	id: true,
	count: true,
	thread: true,
	length: true,
	head: true,
	drive: true,
	tightness: true,
	differs: true,
	note: true,
	holds: { orderBy: { id: "asc" }, take: 20, select: { fitting: { select: { position: positionShown } } } },
} as const;

/** A position where something was, and whether a part is there now. */
export type Home = { readonly mark: string; readonly name: string; readonly machineNumber: number; readonly filled: boolean };

type PositionShown = { id: string; mark: string; name: string; machine: { number: number }; part: { id: string } | null };
export const homeOf = (position: PositionShown): Home => ({
	mark: position.mark,
	name: position.name,
	machineNumber: position.machine.number,
	filled: position.part !== null,
});

/** The positions that a fixing held, each once. */
export function homesOf(holds: readonly { fitting: { position: PositionShown } }[]): Home[] {
	const homes = new Map(holds.map(({ fitting }) => [fitting.position.id, homeOf(fitting.position)]));
	return [...homes.values()];
}
