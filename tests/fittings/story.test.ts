// Long stories of the bench against a small model: parts are fitted, taken out, bagged, moved and put back in any order.
// After each deed the shop's rules 1 and 4 hold in the tables, and at the end the ledger verifies.

import fc from "fast-check";
import { expect, it } from "vitest";
import { makeBag, moveBag, movePart, voidBag } from "@/lib/bags/changes";
import type { Destination } from "@/lib/bags/schema";
import type { Result } from "@/lib/core/result";
import { putBack, putIn, takeOut } from "@/lib/fittings/changes";
import { verifyLedger } from "@/lib/ledger/verify";
import { addLocation } from "@/lib/store/changes";
import { type AMachine, aLoosePart, aMachine } from "@/tests/fittings/aMachine";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

/** Positions a to f: c and d sit on the part of b, e on that of d; f is empty. Two spares. */
const MARKS = ["a", "b", "c", "d", "e", "f"] as const;
const HOST: Readonly<Record<string, string | null>> = { a: null, b: null, c: "b", d: "b", e: "d", f: null };

/** What the model knows: where each part is, by its letter, and where each bag is. */
type Model = {
	readonly fitted: Map<string, string>;
	readonly last: Map<string, string>;
	readonly inBag: Map<string, number>;
	readonly bags: { within: number | null; isVoid: boolean }[];
};
type Bench = {
	readonly shop: FreshShop;
	readonly machine: AMachine;
	readonly parts: Map<string, string>;
	readonly bags: string[];
	readonly location: string;
	refusals: number;
	deeds: number;
};

const seatOf = (model: Model, part: string) => model.fitted.get(part);
const partAt = (model: Model, mark: string) => [...model.fitted].find(([, at]) => at === mark)?.[0];
/** Parts that a position hangs on. */
function hosts(model: Model, mark: string): string[] {
	const host = HOST[mark] ?? null;
	if (host === null) return [];
	const seat = seatOf(model, host);
	return [host, ...(seat === undefined ? [] : hosts(model, seat))];
}
const isAround = (model: Model, outer: number, bag: number | null): boolean =>
	bag !== null && (bag === outer || isAround(model, outer, model.bags[bag]?.within ?? null));
const usable = (model: Model, bag: number) => model.bags[bag] !== undefined && !model.bags[bag].isVoid;
const isEmptyBag = (model: Model, bag: number) =>
	![...model.inBag.values()].includes(bag) && !model.bags.some((other) => other.within === bag);

/** Carries out a deed and holds its outcome against what the model foresaw. */
async function holds<T>(bench: Bench, foreseen: boolean, deed: () => Promise<Result<T>>): Promise<Result<T>> {
	const read = bench.shop.store.read;
	const before = await read.entry.count();
	const result = await deed();
	const after = await read.entry.count();
	expect(result.ok, result.ok ? "done" : result.error.say).toBe(foreseen);
	expect(after - before).toBe(result.ok ? 1 : 0);
	if (result.ok) bench.deeds += 1;
	else bench.refusals += 1;
	return result;
}

async function rulesHold(bench: Bench, model: Model): Promise<void> {
	const read = bench.shop.store.read;
	const [parts, open, bags] = await Promise.all([
		read.part.findMany({ select: { id: true, place: true, positionId: true, bagId: true, locationId: true, partyId: true } }),
		read.fitting.findMany({ where: { untilAt: null }, select: { partId: true, positionId: true } }),
		read.bag.findMany({ select: { id: true, place: true, parentId: true, locationId: true } }),
	]);
	// A part is always in exactly one place.
	for (const part of parts) {
		const where = { fitted: part.positionId, bag: part.bagId, location: part.locationId };
		for (const [place, id] of Object.entries(where)) expect(id !== null).toBe(part.place === place);
	}
	// A position holds at most one part, and the tables agree with the open fittings.
	const fitted = parts.flatMap((part) => (part.positionId ? [`${part.id} ${part.positionId}`] : []));
	expect(open.map((fitting) => `${fitting.partId} ${fitting.positionId}`).sort()).toEqual(fitted.sort());
	expect(new Set(open.map((fitting) => fitting.positionId)).size).toBe(open.length);
	// A bag is in one place and never inside itself.
	const parent = new Map(bags.map((bag) => [bag.id, bag.parentId]));
	for (const bag of bags) {
		expect(bag.parentId !== null).toBe(bag.place === "bag");
		expect(bag.locationId !== null).toBe(bag.place === "location");
		for (let at = bag.parentId, depth = 0; at; at = parent.get(at) ?? null) {
			expect(at).not.toBe(bag.id);
			expect(++depth).toBeLessThan(bags.length + 1);
		}
	}
	// What the model says is so.
	for (const [letter, id] of bench.parts) {
		const part = parts.find((row) => row.id === id);
		const seat = model.fitted.get(letter);
		expect(part?.positionId ?? null).toBe(seat === undefined ? null : bench.machine.position(seat));
		const bag = model.inBag.get(letter);
		expect(part?.bagId ?? null).toBe(bag === undefined ? null : bench.bags[bag]);
	}
}

const loosened = (model: Model, part: string, to: Destination, bench: Bench): void => {
	model.inBag.delete(part);
	if (to.kind === "bag") model.inBag.set(part, bench.bags.indexOf(to.bagId));
};

type Step = fc.AsyncCommand<Model, Bench>;
const command = (name: string, run: (model: Model, bench: Bench) => Promise<void>): Step => ({
	check: () => true,
	run: async (model, bench) => {
		await run(model, bench);
		await rulesHold(bench, model);
	},
	toString: () => name,
});

const mark = fc.constantFrom(...MARKS);
const letter = fc.constantFrom("a", "b", "c", "d", "e", "x", "y");
const bagAt = fc.nat(3);
const place = fc.oneof(
	bagAt.map((bag) => ({ kind: "bag" as const, bag })),
	fc.constantFrom({ kind: "bench" as const }, { kind: "location" as const }),
);
type PlaceAt = { kind: "bag"; bag: number } | { kind: "bench" } | { kind: "location" };
const destination = (bench: Bench, to: PlaceAt): Destination =>
	to.kind === "bag"
		? { kind: "bag", bagId: bench.bags[to.bag] ?? "no such bag" }
		: to.kind === "location"
			? { kind: "location", locationId: bench.location }
			: { kind: "bench" };
const canHold = (model: Model, to: PlaceAt) => to.kind !== "bag" || usable(model, to.bag);

const commands: fc.Arbitrary<Step>[] = [
	fc.tuple(mark, place).map(([at, to]) =>
		command(`take out ${at} to ${JSON.stringify(to)}`, async (model, bench) => {
			const part = partAt(model, at);
			const into = destination(bench, to);
			const out = await holds(bench, part !== undefined && canHold(model, to), () =>
				takeOut({ machineId: bench.machine.id, positionId: bench.machine.position(at), into }, bench.shop.env()),
			);
			if (!out.ok || part === undefined) return;
			model.fitted.delete(part);
			model.last.set(part, at);
			loosened(model, part, into, bench);
		}),
	),
	fc.tuple(letter, mark).map(([part, at]) =>
		command(`put ${part} into ${at}`, async (model, bench) => {
			const may = seatOf(model, part) === undefined && partAt(model, at) === undefined && !hosts(model, at).includes(part);
			const put = await holds(bench, may, () =>
				putIn({ partId: bench.parts.get(part) ?? "", positionId: bench.machine.position(at) }, bench.shop.env()),
			);
			if (!put.ok) return;
			model.inBag.delete(part);
			model.fitted.set(part, at);
		}),
	),
	letter.map((part) =>
		command(`put ${part} back`, async (model, bench) => {
			const at = model.last.get(part);
			const may =
				at !== undefined && seatOf(model, part) === undefined && partAt(model, at) === undefined && !hosts(model, at).includes(part);
			const put = await holds(bench, may, () => putBack({ partId: bench.parts.get(part) ?? "" }, bench.shop.env()));
			if (!put.ok || at === undefined) return;
			model.inBag.delete(part);
			model.fitted.set(part, at);
		}),
	),
	fc.tuple(letter, place).map(([part, to]) =>
		command(`move ${part} to ${JSON.stringify(to)}`, async (model, bench) => {
			const where = destination(bench, to);
			const moved = await holds(bench, seatOf(model, part) === undefined && canHold(model, to), () =>
				movePart({ partId: bench.parts.get(part) ?? "", to: where }, bench.shop.env()),
			);
			if (moved.ok) loosened(model, part, where, bench);
		}),
	),
	fc.constant(
		command("make a bag", async (model, bench) => {
			if (bench.bags.length > 3) return;
			const made = await holds(bench, true, () => makeBag({ machineId: bench.machine.id, words: "bag" }, bench.shop.env()));
			if (!made.ok) return;
			bench.bags.push(made.value.bagId);
			model.bags.push({ within: null, isVoid: false });
		}),
	),
	fc.tuple(bagAt, place).map(([bag, to]) =>
		command(`move bag ${bag} to ${JSON.stringify(to)}`, async (model, bench) => {
			const where = destination(bench, to);
			if (where.kind === "new-bag") return;
			const may = usable(model, bag) && canHold(model, to) && !(to.kind === "bag" && isAround(model, bag, to.bag));
			const moved = await holds(bench, may, () => moveBag({ bagId: bench.bags[bag] ?? "no such bag", to: where }, bench.shop.env()));
			const row = model.bags[bag];
			if (moved.ok && row) row.within = to.kind === "bag" ? to.bag : null;
		}),
	),
	bagAt.map((bag) =>
		command(`take bag ${bag} out of use`, async (model, bench) => {
			const may = usable(model, bag) && isEmptyBag(model, bag);
			const gone = await holds(bench, may, () => voidBag({ bagId: bench.bags[bag] ?? "no such bag", why: "torn" }, bench.shop.env()));
			const row = model.bags[bag];
			if (gone.ok && row) {
				row.isVoid = true;
				row.within = null;
			}
		}),
	),
];

async function atTheBench(): Promise<{ model: Model; real: Bench }> {
	const shop = await freshShop();
	const machine = await aMachine(shop, { a: {}, b: {}, c: { on: "b" }, d: { on: "b" }, e: { on: "d" }, f: { empty: true } });
	const [x, y] = [await aLoosePart(shop, machine, "Spare x"), await aLoosePart(shop, machine, "Spare y")];
	const shelf = await addLocation({ parentId: null, kind: "room", name: "Room" }, shop.env());
	if (!shelf.ok) throw new Error(shelf.error.say);
	const letters = ["a", "b", "c", "d", "e"];
	return {
		model: { fitted: new Map(letters.map((part) => [part, part])), last: new Map(), inBag: new Map(), bags: [] },
		real: {
			shop,
			machine,
			parts: new Map([...letters.map((part) => [part, machine.part(part)] as const), ["x", x.id], ["y", y.id]]),
			bags: [],
			location: shelf.value.locationId,
			refusals: 0,
			deeds: 0,
		},
	};
}

const SEED = 20260302;

it("however parts and bags are moved about, each is in one place, and the book tells the same as the tables", async () => {
	let deeds = 0;
	let refusals = 0;
	await fc.assert(
		fc.asyncProperty(fc.commands(commands, { maxCommands: 40, size: "max" }), async (story) => {
			const bench = await atTheBench();
			try {
				await fc.asyncModelRun(() => bench, story);
				const report = await verifyLedger(bench.real.shop.folder);
				expect(report).toMatchObject({ flawCount: 0, flaws: [] });
				deeds += bench.real.deeds;
				refusals += bench.real.refusals;
			} finally {
				await bench.real.shop.close();
			}
		}),
		{ seed: SEED, numRuns: 25 },
	);
	// A story in which nothing happens, or nothing is refused, would prove nothing.
	expect(deeds).toBeGreaterThan(100);
	expect(refusals).toBeGreaterThan(100);
}, 120_000);
