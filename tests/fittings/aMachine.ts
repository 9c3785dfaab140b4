// A machine of a test's own, written through the one door: positions with a part in each, and what covers what.

import { ok } from "@/lib/core/result";
import { record } from "@/lib/ledger/record";
import { add, type Draft, deed, type RowChange } from "@/lib/ledger/rows";
import { nextNumber } from "@/lib/tags/nextNumber";
import { formatTag } from "@/lib/tags/tag";
import type { FreshShop } from "@/tests/support/freshShop";

export type SeatSpec = {
	readonly on?: string;
	readonly empty?: true;
	readonly place?: true;
	readonly sides?: readonly string[];
	/** Marks of positions whose parts cover this one; "front:p01" from one side. */
	readonly behind?: readonly string[];
	readonly origin?: Draft<"Part">["origin"];
	/** One lot of fixings. */
	readonly fixings?: number;
	/** One wire. */
	readonly wire?: string;
};

export type AMachine = {
	readonly id: string;
	readonly number: number;
	readonly position: (mark: string) => string;
	/** The part that was in the position when the machine was made. */
	readonly part: (mark: string) => string;
	readonly tag: (mark: string) => string;
	readonly fixing: (mark: string) => string;
	readonly wire: (mark: string) => string;
};

const got = (map: ReadonlyMap<string, string>, mark: string): string => {
	const found = map.get(mark);
	if (found === undefined) throw new Error(`the test's machine has nothing at ${mark}`);
	return found;
};

export async function aMachine(shop: FreshShop, specs: Readonly<Record<string, SeatSpec>>, number = 12): Promise<AMachine> {
	const id = shop.newId();
	const positions = new Map<string, string>();
	const parts = new Map<string, string>();
	const tags = new Map<string, string>();
	const fixings = new Map<string, string>();
	const wires = new Map<string, string>();
	for (const mark of Object.keys(specs)) positions.set(mark, shop.newId());
	for (const [mark, spec] of Object.entries(specs)) if (!spec.empty && !spec.place) parts.set(mark, shop.newId());
	const at = "2026-03-02T08:00:00.000Z";
	const rows: RowChange[] = [add("Machine", machineRow(id, number))];
	let last = 0;
	let rank = 0;
	const lots: RowChange[] = [];
	for (const [mark, spec] of Object.entries(specs)) {
		const positionId = got(positions, mark);
		const partId = parts.get(mark);
		rows.push(
			add("Position", {
				id: positionId,
				machineId: id,
				mark,
				name: `Place ${mark}`,
				area: "",
				kind: spec.place ? "place" : "seat",
				hostId: spec.on ? got(parts, spec.on) : null,
				rank: rank++,
				sides: JSON.stringify(spec.sides ?? []),
				asFound: "yes",
				mirrorId: null,
				outLow: null,
				outLikely: null,
				outHigh: null,
				inLow: null,
				inLikely: null,
				inHigh: null,
				note: "",
			}),
		);
		for (const behind of spec.behind ?? []) {
			const [side, other] = behind.includes(":") ? (behind.split(":") as [string, string]) : (["", behind] as const);
			lots.push(
				add("Obstruction", { id: shop.newId(), machineId: id, partId: got(parts, other), positionId, side, stands: "yes", note: "" }),
			);
		}
		if (!partId) continue;
		const next = nextNumber(last, number);
		if (!next.ok) throw new Error(next.error.say);
		last = next.value;
		tags.set(mark, formatTag(number, last));
		const fittingId = shop.newId();
		rows.push(
			add("Part", partRow(partId, id, `Part ${mark}`, { origin: spec.origin ?? "original", place: "fitted", positionId, sinceAt: at })),
			add("Tag", { id: formatTag(number, last), machineNumber: number, number: last, partId, bagId: null }),
			add("Fitting", {
				id: fittingId,
				machineId: id,
				partId,
				positionId,
				fromAt: at,
				untilAt: null,
				fromStepId: null,
				untilStepId: null,
				conversionId: null,
				outConversionId: null,
				wayRound: "",
			}),
		);
		if (spec.fixings) {
			const fixingId = shop.newId();
			fixings.set(mark, fixingId);
			lots.push(
				add("Fixing", {
					id: fixingId,
					machineId: id,
					count: spec.fixings,
					thread: "4BA",
					length: "1/2",
					head: "cheese",
					drive: "slotted",
					tightness: "",
					differs: "",
					note: "",
					place: "home",
					bagId: null,
				}),
				add("Hold", { id: shop.newId(), fixingId, fittingId }),
			);
		}
		if (spec.wire) {
			const wireId = shop.newId();
			wires.set(mark, wireId);
			lots.push(
				add("Connection", {
					id: wireId,
					machineId: id,
					fittingId,
					from: `${mark} 1`,
					to: "block 7",
					colour: spec.wire,
					base: "",
					tracer: "",
					gauge: "",
					tagFrom: "",
					tagTo: "",
					state: "connected",
					note: "",
					conversionId: null,
				}),
			);
		}
	}
	const made = await record(shop.env(), async () =>
		ok(deed(id, "machine.taken-in", { table: "Machine", id }, { say: "Took in the machine." }, [...rows, ...lots], id)),
	);
	if (!made.ok) throw new Error(made.error.say);
	return {
		id,
		number,
		position: (mark) => got(positions, mark),
		part: (mark) => got(parts, mark),
		tag: (mark) => got(tags, mark),
		fixing: (mark) => got(fixings, mark),
		wire: (mark) => got(wires, mark),
	};
}

/** A loose part on the bench, with its tag. */
export async function aLoosePart(
	shop: FreshShop,
	machine: { id: string; number: number },
	name: string,
	more: Partial<Draft<"Part">> = {},
): Promise<{ id: string; tag: string }> {
	const id = shop.newId();
	const used = await shop.store.read.tag.findMany({
		where: { machineNumber: machine.number, number: { lt: 201 } },
		select: { number: true },
	});
	const next = nextNumber(Math.max(0, ...used.map((tag) => tag.number)), machine.number);
	if (!next.ok) throw new Error(next.error.say);
	const tag = formatTag(machine.number, next.value);
	const made = await record(shop.env(), async () =>
		ok(
			deed(
				machine.id,
				"part.added",
				{ table: "Part", id },
				{ say: "Added a part." },
				[
					add("Part", partRow(id, machine.id, name, more)),
					add("Tag", { id: tag, machineNumber: machine.number, number: next.value, partId: id, bagId: null }),
				],
				id,
			),
		),
	);
	if (!made.ok) throw new Error(made.error.say);
	return { id, tag };
}

export const partRow = (id: string, machineId: string, name: string, more: Partial<Draft<"Part">> = {}): Draft<"Part"> => ({
	id,
	machineId,
	name,
	count: 1,
	maker: "",
	type: "",
	material: "",
	made: null,
	origin: "modern",
	works: "unknown",
	condition: "",
	place: "bench",
	positionId: null,
	bagId: null,
	locationId: null,
	partyId: null,
	sinceAt: "2026-03-02T08:00:00.000Z",
	dueDay: null,
	placeWhy: "",
	lineId: null,
	...more,
});

const machineRow = (id: string, number: number): Draft<"Machine"> => ({
	id,
	number,
	name: `Machine ${number}`,
	kind: "novelty",
	maker: "",
	model: "",
	serial: "",
	made: null,
	ownership: "shop",
	state: "work",
	sellerId: null,
	ownerId: null,
	priceMinor: null,
	carriageMinor: null,
	soldMinor: null,
	carried: "",
	condition: "",
	hazards: "",
	receivedDay: "2026-03-02",
	asFoundAt: null,
	promisedDay: null,
	leftDay: null,
	portraitSha: null,
});
