// A small shop with a story for the tests of the ledger: machine 12 comes in with a door and a lamp behind it; the lamp is
// taken out into a bag; the owner's name and the price are withheld.

import { ok } from "@/lib/core/result";
import { record } from "@/lib/ledger/record";
import { add, change, type Draft, type EntryDraft } from "@/lib/ledger/rows";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

export type LampShop = FreshShop & {
	readonly machine: string;
	readonly owner: string;
	readonly doorSeat: string;
	readonly lampSeat: string;
	readonly door: string;
	readonly lamp: string;
	readonly doorFitting: string;
	readonly lampFitting: string;
	readonly bag: string;
	/** Takes the lamp out into the bag. */
	readonly takeOutLamp: (deed?: string) => Promise<void>;
	/** Writes one deed and requires that it went through. */
	readonly write: (entries: readonly EntryDraft[], deed?: string) => Promise<void>;
};

export const aMachine = (id: string, number: number): Draft<"Machine"> => ({
	id,
	number,
	name: `Machine ${number}`,
	kind: "fortune teller",
	maker: "",
	model: "",
	serial: "",
	made: null,
	ownership: "shop",
	state: "intake",
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

export const aPosition = (
	id: string,
	machineId: string,
	mark: string,
	name: string,
	more: Partial<Draft<"Position">> = {},
): Draft<"Position"> => ({
	id,
	machineId,
	mark,
	name,
	area: "front",
	kind: "seat",
	hostId: null,
	rank: 1,
	sides: "[]",
	asFound: "yes",
	mirrorId: null,
	outLow: null,
	outLikely: null,
	outHigh: null,
	inLow: null,
	inLikely: null,
	inHigh: null,
	note: "",
	...more,
});

export const aPart = (id: string, machineId: string, name: string, more: Partial<Draft<"Part">> = {}): Draft<"Part"> => ({
	id,
	machineId,
	name,
	count: 1,
	maker: "",
	type: "",
	material: "",
	made: null,
	origin: "original",
	works: "works",
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

export const aFitting = (id: string, machineId: string, partId: string, positionId: string): Draft<"Fitting"> => ({
	id,
	machineId,
	partId,
	positionId,
	fromAt: "2026-03-02T08:00:00.000Z",
	untilAt: null,
	fromStepId: null,
	untilStepId: null,
	conversionId: null,
	outConversionId: null,
	wayRound: "",
});

export const aBag = (id: string, machineId: string | null, words: string): Draft<"Bag"> => ({
	id,
	machineId,
	kind: "bag",
	role: "holding",
	words,
	caution: "",
	place: "bench",
	parentId: null,
	locationId: null,
	sinceAt: "2026-03-02T08:00:00.000Z",
	placeWhy: "",
});

const aTag = (id: string, number: number, of: { partId?: string; bagId?: string }): Draft<"Tag"> => ({
	id,
	machineNumber: 12,
	number,
	partId: of.partId ?? null,
	bagId: of.bagId ?? null,
});

/** Opens the shop, with the machine taken in and the bag made. */
export async function lampShop(): Promise<LampShop> {
	const shop = await freshShop();
	const { newId } = shop;
	const [machine, owner, doorSeat, lampSeat, door, lamp, doorFitting, lampFitting, bag] = [
		newId(),
		newId(),
		newId(),
		newId(),
		newId(),
		newId(),
		newId(),
		newId(),
		newId(),
	] as const;
	const write = async (entries: readonly EntryDraft[], deed?: string) => {
		const done = await record(shop.env(deed), async () => ok({ entries, result: null }));
		if (!done.ok) throw new Error(done.error.say);
	};
	await write([
		{
			machine: null,
			action: "party.added",
			subject: { table: "Party", id: owner },
			facts: { say: "Added an owner." },
			rows: [add("Party", { id: owner, kind: "owner", name: "A. Owner", contact: "owner@shop.example" })],
		},
		{
			machine,
			action: "machine.taken-in",
			subject: { table: "Machine", id: machine },
			facts: { say: "Took in machine 12." },
			rows: [
				add("Machine", { ...aMachine(machine, 12), ownerId: owner, priceMinor: 120000 }),
				add("Position", aPosition(doorSeat, machine, "k01", "Coin door")),
				add("Part", aPart(door, machine, "Door", { place: "fitted", positionId: doorSeat })),
				add("Position", aPosition(lampSeat, machine, "k02", "Coin door lamp", { hostId: door })),
				add("Part", aPart(lamp, machine, "Lens carriage", { place: "fitted", positionId: lampSeat })),
				add("Tag", aTag("12-0001-H", 1, { partId: door })),
				add("Tag", aTag("12-0147-K", 147, { partId: lamp })),
				add("Fitting", aFitting(doorFitting, machine, door, doorSeat)),
				add("Fitting", aFitting(lampFitting, machine, lamp, lampSeat)),
			],
		},
	]);
	await write([
		{
			machine,
			action: "bag.made",
			subject: { table: "Bag", id: bag },
			facts: { say: "Made a bag for the lamp." },
			rows: [add("Bag", aBag(bag, machine, "Lamp")), add("Tag", aTag("12-0201-J", 201, { bagId: bag }))],
		},
	]);
	const takeOutLamp = async (deed?: string) => {
		const part = await shop.store.read.part.findUniqueOrThrow({ where: { id: lamp } });
		const fitting = await shop.store.read.fitting.findUniqueOrThrow({ where: { id: lampFitting } });
		await write(
			[
				{
					machine,
					action: "part.taken-out",
					subject: { table: "Part", id: lamp },
					facts: { say: "Took out the lens carriage and put it in bag 12-0201-J." },
					rows: [
						change("Part", part, { place: "bag", positionId: null, bagId: bag, sinceAt: shop.now() }),
						change("Fitting", fitting, { untilAt: shop.now() }),
					],
				},
			],
			deed,
		);
	};
	return { ...shop, machine, owner, doorSeat, lampSeat, door, lamp, doorFitting, lampFitting, bag, takeOutLamp, write };
}
