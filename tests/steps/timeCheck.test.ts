import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { addMinutes, instant } from "@/lib/core/instants";
import { addTime, correctTime, planStep, startClock, stopClock, voidTime } from "@/lib/steps/changes";
import { correctTimeSchema, planStepSchema } from "@/lib/steps/schema";
import { overlapsOf, type PieceOfTime, ranOverNight, withoutShared } from "@/lib/steps/timeCheck";
import { timeDoubts } from "@/lib/steps/timeCheckQueries";
import { type AMachine, aMachine } from "@/tests/fittings/aMachine";
import { done, refused } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

const at = (time: string) => instant(`2026-03-${time}:00.000Z`);
const NOW = at("10T18:00");
const piece = (id: string, from: string, until: string | null, more: Partial<PieceOfTime> = {}): PieceOfTime => ({
	id,
	personId: "A",
	how: "timed",
	startedAt: at(from),
	endedAt: until === null ? null : at(until),
	...more,
});

describe("two pieces of one person's time", () => {
	it("that share minutes are named, with how many; one that begins as the other ends is not", () => {
		const pieces = [piece("a", "02T09:00", "02T10:00"), piece("b", "02T09:45", "02T10:30"), piece("c", "02T10:30", "02T11:00")];
		expect(overlapsOf(pieces, NOW)).toEqual([{ first: "a", second: "b", minutes: 15 }]);
	});

	it("are held against each other when one was added from memory, and when a clock still runs", () => {
		const pieces = [piece("clock", "10T16:00", null), piece("memory", "10T15:00", "10T16:20", { how: "added" })];
		expect(overlapsOf(pieces, NOW)).toEqual([{ first: "memory", second: "clock", minutes: 20 }]);
	});

	it("of two persons share nothing", () => {
		expect(overlapsOf([piece("a", "02T09:00", "02T10:00"), piece("b", "02T09:00", "02T10:00", { personId: "B" })], NOW)).toEqual([]);
	});

	it("are found as trying every pair finds them", () => {
		const start = Date.parse("2026-03-02T08:00:00.000Z");
		const some = fc.record({
			person: fc.constantFrom("A", "B"),
			from: fc.integer({ min: 0, max: 600 }),
			lasts: fc.option(fc.integer({ min: 0, max: 200 }), { nil: null, freq: 8 }),
		});
		fc.assert(
			fc.property(fc.array(some, { maxLength: 14 }), (all) => {
				const last = 700;
				const pieces = all.map(({ person, from, lasts }, index): PieceOfTime => {
					const startedAt = instant(new Date(start + from * 60_000).toISOString());
					return {
						id: `p${index}`,
						personId: person,
						how: "timed",
						startedAt,
						endedAt: lasts === null ? null : addMinutes(startedAt, lasts),
					};
				});
				const found = overlapsOf(pieces, instant(new Date(start + last * 60_000).toISOString()))
					.map(({ first, second, minutes }) => [...[first, second].sort(), minutes].join())
					.sort();
				const byHand: string[] = [];
				for (const [i, a] of all.entries())
					for (const [j, b] of all.entries()) {
						if (j <= i || a.person !== b.person) continue;
						const minutes =
							Math.min(a.lasts === null ? last : a.from + a.lasts, b.lasts === null ? last : b.from + b.lasts) - Math.max(a.from, b.from);
						if (minutes >= 1) byHand.push([...[`p${i}`, `p${j}`].sort(), minutes].join());
					}
				expect(found).toEqual(byHand.sort());
			}),
			{ seed: 81, numRuns: 400 },
		);
	});
});

describe("what is left of a piece without the minutes it shares", () => {
	it.each([
		["its end is shared", ["02T09:00", "02T10:00"], ["02T09:45", "02T10:30"], { startedAt: at("02T09:00"), minutes: 45 }],
		["its beginning is shared", ["02T09:45", "02T10:30"], ["02T09:00", "02T10:00"], { startedAt: at("02T10:00"), minutes: 30 }],
		["one lies inside the other: nobody can say", ["02T09:00", "02T11:00"], ["02T09:30", "02T10:00"], null],
		["all of it is shared: nothing is left to say", ["02T09:30", "02T10:00"], ["02T09:00", "02T11:00"], null],
		["both are the same: nobody can say", ["02T09:00", "02T10:00"], ["02T09:00", "02T10:00"], null],
	] as const)("%s", (_, [from, until], [otherFrom, otherUntil], left) => {
		expect(withoutShared(piece("a", from, until), piece("b", otherFrom, otherUntil))).toEqual(left);
	});
});

describe("a clock that ran over a night", () => {
	// The shop's midnight in winter is 23:00 UTC.
	it.each([
		["from nine to five did not", "02T08:00", "02T16:00", false],
		["past the shop's midnight did, be it ever so short", "02T22:50", "02T23:10", true],
		["stopped at the stroke of midnight did not", "02T22:50", "02T23:00", false],
		["for more than 12 hours of one day did", "02T01:00", "02T13:01", true],
		["that still runs since yesterday did", "09T16:00", null, true],
		["that still runs since this morning did not", "10T08:00", null, false],
	])("%s", (_, from, until, over) => {
		expect(ranOverNight(piece("a", from, until), NOW, "Europe/Amsterdam")).toBe(over);
	});

	it("is a clock: who adds a night from memory meant it", () => {
		expect(ranOverNight(piece("a", "02T20:00", "03T06:00", { how: "added" }), NOW, "Europe/Amsterdam")).toBe(false);
	});
});

describe("on a machine", () => {
	let shop: FreshShop;
	let machine: AMachine;
	let other: AMachine;
	const step = async (title: string, of: AMachine = machine) =>
		done(await planStep(planStepSchema.parse({ machineId: of.id, kind: "repair", title }), shop.env())).id;
	const clock = async (stepId: string, from: string, until: string) => {
		const { workId } = done(await startClock({ stepId, personId: shop.person, at: at(from) }, shop.env()));
		done(await stopClock({ workId, at: at(until), note: "" }, shop.env()));
		return workId;
	};
	const memory = async (stepId: string, from: string, minutes: number) =>
		done(await addTime({ stepId, personId: shop.person, minutes, startedAt: at(from), note: "" }, shop.env())).workId;
	const checked = (of: { machineId: string } | { stepId: string }, most?: number) =>
		timeDoubts(shop.store.read, of, NOW, "Europe/Amsterdam", most);
	const doubts = async (of: { machineId: string } | { stepId: string }) => (await checked(of)).doubts;

	beforeEach(async () => {
		shop = await freshShop();
		shop.setClock(NOW);
		[machine, other] = [await aMachine(shop, { k01: {} }), await aMachine(shop, { k01: {} }, 13)];
	});
	afterEach(() => shop.close());

	it("time that somebody also spent on another machine is said on both, and on the step itself", async () => {
		const [here, there] = [await step("sand"), await step("wire", other)];
		await clock(here, "02T09:00", "02T10:00");
		await memory(there, "02T09:40", 60);
		for (const of of [{ machineId: machine.id }, { machineId: other.id }, { stepId: here }])
			expect(await doubts(of)).toMatchObject([{ kind: "overlap", minutes: 20 }]);
		const [onOther] = await doubts({ machineId: other.id });
		expect(onOther).toMatchObject({
			piece: { machine: 13, how: "added" },
			other: { machine: 12, step: 1 },
			left: { startedAt: at("02T10:00"), minutes: 40 },
		});
	});

	it("time after which nothing is wrong is not mentioned, nor what was taken back", async () => {
		const here = await step("sand");
		await clock(here, "02T09:00", "02T10:00");
		const twice = await memory(here, "02T09:00", 30);
		expect(await doubts({ stepId: here })).toHaveLength(1);
		done(await voidTime({ workId: twice, why: "entered twice" }, shop.env()));
		expect(await doubts({ stepId: here })).toEqual([]);
	});

	it("nothing is changed silently: a forgotten clock counts whole until somebody puts it right, and then the old line stays readable", async () => {
		const here = await step("sand");
		const workId = await clock(here, "02T16:00", "03T08:00");
		expect(await doubts({ stepId: here })).toMatchObject([{ kind: "overnight", piece: { workId, minutes: 960 } }]);
		const { workId: right } = done(await correctTime(correctTimeSchema.parse({ workId, minutes: "45", why: "forgotten" }), shop.env()));
		expect(await doubts({ stepId: here })).toEqual([]);
		const rows = await shop.store.read.work.findMany({
			orderBy: { entry: "asc" },
			select: { id: true, how: true, minutes: true, note: true, startedAt: true },
		});
		expect(rows).toMatchObject([
			{ id: workId, how: "void", minutes: 960, note: "corrected: forgotten" },
			{ id: right, how: "added", minutes: 45, note: "corrected: forgotten", startedAt: at("02T16:00") },
		]);
		expect(new Set((await shop.store.read.work.findMany({ select: { entry: true } })).map(({ entry }) => entry)).size).toBe(1);
	});

	it("what was written when the clock stopped stays with the right time and with the wrong one", async () => {
		const here = await step("sand");
		const { workId } = done(await startClock({ stepId: here, personId: shop.person, at: at("02T16:00") }, shop.env()));
		done(await stopClock({ workId, at: at("03T08:00"), note: "left side, two coats" }, shop.env()));
		done(await correctTime(correctTimeSchema.parse({ workId, minutes: "45", why: "forgotten" }), shop.env()));
		const notes = await shop.store.read.work.findMany({ orderBy: { id: "asc" }, select: { note: true } });
		expect(notes.map(({ note }) => note)).toEqual(Array(2).fill("left side, two coats; corrected: forgotten"));
	});

	it("nothing is put right to end after now", async () => {
		const here = await step("sand");
		const workId = await memory(here, "10T17:00", 30);
		const correct = (minutes: string) => correctTime(correctTimeSchema.parse({ workId, minutes, why: "a slip" }), shop.env());
		expect(refused(await correct("120"))).toMatchObject({ code: "ends-ahead", fields: { minutes: expect.stringMatching(/after now/) } });
		done(await correct("45"));
	});

	it("of more time than is read the newest is looked at, and from when on is said", async () => {
		const here = await step("sand");
		await clock(here, "02T09:00", "02T10:00");
		await clock(here, "03T09:00", "03T10:00");
		const wrong = await memory(here, "03T09:30", 60);
		expect(await checked({ machineId: machine.id }, 2)).toMatchObject({
			doubts: [{ kind: "overlap", piece: { workId: wrong }, minutes: 30 }],
			since: at("03T09:00"),
		});
		expect((await checked({ machineId: machine.id }, 3)).since).toBeNull();
	});

	it("time that was taken back, and no time at all, cannot be put right", async () => {
		const here = await step("sand");
		const workId = await memory(here, "02T09:00", 30);
		const correct = (minutes: string) => correctTime(correctTimeSchema.parse({ workId, minutes, why: "a slip" }), shop.env());
		expect(Object.keys(refused(await correct("0")).fields ?? {})).toEqual(["minutes"]);
		done(await voidTime({ workId, why: "entered twice" }, shop.env()));
		expect(refused(await correct("20")).code).toBe("time-void");
	});

	it("a clock is a row from the moment it starts: a shop opened anew finds it running", async () => {
		const here = await step("sand");
		const { workId } = done(await startClock({ stepId: here, personId: shop.person, at: at("09T16:00") }, shop.env()));
		expect(
			await shop.store.read.work.findUnique({ where: { id: workId }, select: { startedAt: true, endedAt: true, minutes: true } }),
		).toEqual({
			startedAt: at("09T16:00"),
			endedAt: null,
			minutes: null,
		});
		expect(await doubts({ stepId: here })).toMatchObject([{ kind: "overnight", piece: { workId, endedAt: null } }]);
	});
});
