import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { buildAsOf } from "@/lib/ledger/asOf";
import { storyOfMachine, timeZoneInLedger } from "@/lib/ledger/asOfQueries";
import { add, change } from "@/lib/ledger/rows";
import { aFitting, aPart, aPosition, type LampShop, lampShop } from "@/tests/ledger/lampShop";

let shop: LampShop;
beforeEach(async () => {
	shop = await lampShop();
});
afterEach(() => shop.close());

const at = async (instant: string, knownAt: string | null = null) =>
	buildAsOf((await storyOfMachine(shop.store.read, shop.machine, knownAt)).story, shop.machine, instant);
const lampThen = async (instant: string, knownAt: string | null = null) => {
	const build = await at(instant, knownAt);
	return {
		fitted: build?.positions[0]?.hosts[0]?.part?.name ?? null,
		loose: build?.loose.map(({ part, where }) => `${part.name} ${where}`),
	};
};

describe("a machine's build at a past instant, from its entries alone", () => {
	it("is a tree: the lamp sits on the door", async () => {
		const build = await at("2026-03-02T09:00:00.000Z");
		expect(build).toMatchObject({
			number: 12,
			positions: [
				{ mark: "k01", part: { name: "Door", tag: "12-0001-H" }, hosts: [{ mark: "k02", part: { name: "Lens carriage" }, hosts: [] }] },
			],
			loose: [],
		});
	});

	it("shows a part in its position until the moment it was taken out, and in its bag from then on", async () => {
		shop.setClock("2026-03-20T10:00:00.000Z");
		await shop.takeOutLamp();
		expect(await lampThen("2026-03-20T09:59:59.999Z")).toEqual({ fitted: "Lens carriage", loose: [] });
		expect(await lampThen("2026-03-20T10:00:00.000Z")).toEqual({ fitted: null, loose: ["Lens carriage in bag 12-0201-J"] });
	});

	it("still comes out the same after more has been done", async () => {
		const before = await at("2026-03-10T00:00:00.000Z");
		shop.setClock("2026-03-20T10:00:00.000Z");
		await shop.takeOutLamp();
		expect(await at("2026-03-10T00:00:00.000Z")).toEqual(before);
	});

	it("asked for what the book said then, leaves out what was entered later about earlier days", async () => {
		shop.setClock("2026-03-20T10:00:00.000Z");
		const part = await shop.store.read.part.findUniqueOrThrow({ where: { id: shop.lamp } });
		const fitting = await shop.store.read.fitting.findUniqueOrThrow({ where: { id: shop.lampFitting } });
		await shop.write([
			{
				machine: shop.machine,
				action: "part.taken-out",
				subject: { table: "Part", id: shop.lamp },
				facts: { say: "Took out the lens carriage on 5 March, entered on the 20th." },
				rows: [
					change("Part", part, { place: "bench", positionId: null, sinceAt: "2026-03-05T10:00:00.000Z" }),
					change("Fitting", fitting, { untilAt: "2026-03-05T10:00:00.000Z" }),
				],
			},
		]);
		expect(await lampThen("2026-03-10T00:00:00.000Z")).toEqual({ fitted: null, loose: ["Lens carriage on the bench"] });
		expect(await lampThen("2026-03-10T00:00:00.000Z", "2026-03-10T00:00:00.000Z")).toEqual({ fitted: "Lens carriage", loose: [] });
	});

	it("does not show a position before the shop made it, and shows one that was there all along but noticed late", async () => {
		shop.setClock("2026-04-01T10:00:00.000Z");
		const [made, noticed, lamp, fitting] = [shop.newId(), shop.newId(), shop.newId(), shop.newId()] as const;
		await shop.write([
			{
				machine: shop.machine,
				action: "position.added",
				subject: { table: "Position", id: made },
				facts: { say: "Added two positions." },
				rows: [
					add("Position", aPosition(made, shop.machine, "k03", "Power supply", { asFound: "no", rank: 2 })),
					add("Position", aPosition(noticed, shop.machine, "k04", "Hidden lamp", { rank: 3 })),
					add("Part", aPart(lamp, shop.machine, "Hidden lamp", { place: "fitted", positionId: noticed })),
					add("Fitting", aFitting(fitting, shop.machine, lamp, noticed)),
				],
			},
		]);
		expect((await at("2026-03-10T00:00:00.000Z"))?.positions.map(({ mark }) => mark)).toEqual(["k01", "k04"]);
		expect((await at("2026-04-02T00:00:00.000Z"))?.positions.map(({ mark }) => mark)).toEqual(["k01", "k03", "k04"]);
	});

	it("keeps 'not seen yet' apart from 'missing' and from 'empty'", async () => {
		const marks = ["k11", "k12", "k13"] as const;
		const ids = marks.map(() => shop.newId());
		const finding = (positionId: string, state: "unseen" | "missing") =>
			add("Finding", {
				id: shop.newId(),
				machineId: shop.machine,
				positionId,
				at: "2026-03-02T08:30:00.000Z",
				state,
				partId: null,
				words: "",
			});
		await shop.write([
			{
				machine: shop.machine,
				action: "position.added",
				subject: { table: "Position", id: ids[0] ?? "" },
				facts: { say: "Added three positions." },
				rows: [
					...ids.map((id, place) =>
						add("Position", aPosition(id, shop.machine, marks[place] ?? "", `Seat ${place}`, { rank: 10 + place })),
					),
					finding(ids[0] ?? "", "unseen"),
					finding(ids[1] ?? "", "missing"),
				],
			},
		]);
		const build = await at("2026-03-03T00:00:00.000Z");
		expect(build?.positions.map(({ empty }) => empty)).toEqual([null, "unseen", "missing", "empty"]);
	});

	it("comes out as the tables have it, when now is asked for", async () => {
		await shop.takeOutLamp();
		const build = await at("2099-01-01T00:00:00.000Z");
		const fitted = await shop.store.read.part.findMany({ where: { machineId: shop.machine, place: "fitted" }, select: { name: true } });
		expect(build?.positions.flatMap(({ part }) => part?.name ?? [])).toEqual(fitted.map(({ name }) => name));
	});

	it("is nothing for a machine that the entries do not know", async () => {
		expect(await at("2026-03-10T00:00:00.000Z", "2026-03-01T00:00:00.000Z")).toBeNull();
	});

	it("goes by the shop's time zone as the ledger says it", async () => {
		expect(await timeZoneInLedger(shop.store.read)).toBe("Europe/Amsterdam");
	});
});
