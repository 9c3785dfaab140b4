// A reversal carried out through the doors that a person uses, and what becomes of the plan when it goes otherwise.

import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { markUndone, recordAlteration, sayFast } from "@/lib/alterations/changes";
import { recordAlterationSchema } from "@/lib/alterations/schema";
import { addMinutes, instant } from "@/lib/core/instants";
import { putIn, takeOut } from "@/lib/fittings/changes";
import { putInSheet } from "@/lib/fittings/queries";
import { addPart, losePart } from "@/lib/parts/changes";
import { addPartSchema, leaveSchema } from "@/lib/parts/schema";
import { partKey } from "@/lib/reversal/asked";
import { finishReversal, leaveOut, sayMadeSafe, startReversal, stopReversal, takeUp } from "@/lib/reversal/carryingOut/changes";
import { planNow } from "@/lib/reversal/carryingOut/planNow";
import { doneFor, reversalNumbered, undoneSince } from "@/lib/reversal/carryingOut/queries";
import { askedOf, mustMakeSafe, readyIn, SAFE_MINUTES, waitsAt } from "@/lib/reversal/carryingOut/rules";
import { startBuildSchema, startReversalSchema } from "@/lib/reversal/carryingOut/schema";
import { reversalFacts } from "@/lib/reversal/queries";
import { startClock } from "@/lib/steps/changes";
import { startClockSchema } from "@/lib/steps/schema";
import { aMachine, aPosition, got } from "@/tests/machines/aMachine";
import { converted } from "@/tests/reversal/convertedLamp";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

let shop: FreshShop;
let machine: Awaited<ReturnType<typeof converted>>;
beforeEach(async () => {
	shop = await freshShop();
	machine = await converted(shop);
});
afterEach(() => shop.close());

const start = (more: object = {}) =>
	startReversal(startReversalSchema.parse({ machineId: machine.id, target: "asFound", ...more }), shop.env());

async function standing(number = 1) {
	const row = await reversalNumbered(shop.store.read, machine.id, number);
	if (row === null) throw new Error("no reversal");
	const facts = await reversalFacts(shop.store.read, machine.id);
	const plan = got(planNow(facts, askedOf(row, machine.asFoundAt), startBuildSchema.parse(JSON.parse(row.startBuild))));
	return { row, facts, plan };
}

/** Does the first operation that can be done, as the form would; gives its id, or null when nothing is left. */
async function doNext(number = 1): Promise<string | null> {
	const { facts, plan } = await standing(number);
	const [next] = readyIn(plan);
	if (next === undefined) return null;
	const positionId = facts.positions.find(({ mark }) => mark === next.position)?.id ?? "";
	const partId = facts.parts.find((part) => partKey(part) === next.part)?.id ?? "";
	if (next.kind === "take-out") got(await takeOut({ machineId: machine.id, positionId }, shop.env()));
	if (next.kind === "put-in") got(await putIn({ partId, positionId }, shop.env()));
	if (next.kind === "undo") got(await markUndone({ alterationId: machine.drilled, words: "" }, shop.env()));
	return next.id;
}

async function doAll(): Promise<string[]> {
	const done: string[] = [];
	for (let id = await doNext(); id !== null; id = await doNext()) {
		done.push(id);
		if (done.length > 30) throw new Error(`it never ends: ${done.join(", ")}`);
	}
	return done;
}

const heldNow = async () =>
	Object.fromEntries(
		(await shop.store.read.part.findMany({ where: { place: "fitted" }, select: { id: true, position: { select: { mark: true } } } })).map(
			({ id, position }) => [position?.mark ?? "", id],
		),
	);

describe("a reversal that goes as planned", () => {
	test("is begun with a step for its time, done operation by operation, and ends with nothing left", async () => {
		expect(got(await start()).number).toBe(1);
		const { row, plan } = await standing();
		expect(row.step).toMatchObject({ title: "Reversal 1: back to as found", state: "planned" });
		const step = await shop.store.read.step.findUniqueOrThrow({ where: { id: row.step?.id ?? "" } });
		// Out 3 + 2 + 5, undo 10, in 2 + 5 + 4, and 45 for making safe and the checks.
		expect([plan.minutes.likely, step.likelyMinutes]).toEqual([31, 31 + 45]);
		expect(mustMakeSafe(null, shop.now(), "UTC")).toBe(true);
		got(await sayMadeSafe({ reversalId: row.id, words: "two-pole tester" }, shop.env()));
		const { safeAt } = (await standing()).row;
		expect(safeAt).not.toBeNull();
		expect(mustMakeSafe(instant(safeAt ?? ""), addMinutes(instant(safeAt ?? ""), SAFE_MINUTES), "UTC")).toBe(false);
		expect(mustMakeSafe(instant(safeAt ?? ""), addMinutes(instant(safeAt ?? ""), SAFE_MINUTES + 1), "UTC")).toBe(true);

		const early = await finishReversal({ reversalId: row.id, words: "" }, shop.env());
		expect(early).toMatchObject({ ok: false, error: { code: "not-finished", facts: { left: plan.operations.length - 2 } } });

		const done = await doAll();
		expect([...done].sort()).toEqual(["in:p01", "in:p02", "in:p03", "out:p01", "out:p02", "out:p03", "undo:a1"]);
		// The lens that is lost was replaced by a plastic one: that came out only to open the way, and is in again.
		expect(await heldNow()).toMatchObject({ p01: machine.part("p01"), p02: machine.part("p02"), p03: machine.plastic });
		expect(await finishReversal({ reversalId: row.id, words: "" }, shop.env())).toMatchObject({
			ok: false,
			error: { code: "still-resting" },
		});
		shop.setClock(addMinutes(shop.now(), 60));
		got(await finishReversal({ reversalId: row.id, words: "0.2 ohm, 50 megohm" }, shop.env()));
		expect((await standing()).row).toMatchObject({ state: "done", words: "0.2 ohm, 50 megohm", step: { state: "done" } });

		const said = (await doneFor(shop.store.read, machine.id, row.id, false)).map(({ action }) => action);
		expect(said).toEqual([
			"reversal.started",
			"reversal.isolated",
			...done.map((id) => (id.startsWith("out") ? "part.taken-out" : id.startsWith("in") ? "part.put-in" : "alteration.undone")),
			"reversal.finished",
		]);
		expect(await start()).toMatchObject({ ok: false, error: { code: "nothing-to-do" } });
	});

	test("only where it was chosen: what was opened besides goes in again", async () => {
		const before = await heldNow();
		got(await start({ positionIds: [machine.position("p02")] }));
		await doAll();
		expect(await heldNow()).toEqual({ ...before, p02: machine.part("p02") });
	});

	test("what was undone rests before anything goes in there", async () => {
		got(await start());
		for (let id = await doNext(); id !== "undo:a1"; id = await doNext()) expect(id).not.toBeNull();
		const { row } = await standing();
		const undone = await undoneSince(shop.store.read, machine.id, row.startedAt);
		const at = instant(undone[0]?.undoneAt ?? "");
		expect(waitsAt(undone, addMinutes(at, 59)).map(({ what, until }) => [what, until])).toEqual([["seat drilled", addMinutes(at, 60)]]);
		expect(waitsAt(undone, addMinutes(at, 60))).toEqual([]);
	});
});

describe("a reversal that goes otherwise", () => {
	test("a bag is empty: the part is lost, the plan goes on without it, and what was there goes in again", async () => {
		got(await start());
		for (let id = await doNext(); id !== "out:p02"; id = await doNext()) expect(id).not.toBeNull();
		got(await losePart(leaveSchema.parse({ partId: machine.part("p02"), why: "the bag was empty" }), shop.env()));
		const { plan } = await standing();
		expect(plan.staysDifferent.filter(({ position }) => position === "p02").map(({ code }) => code)).toEqual(["unavailable"]);
		await doAll();
		const led = await shop.store.read.part.findFirstOrThrow({ where: { name: "LED lamp" } });
		expect(await heldNow()).toMatchObject({ p01: machine.part("p01"), p02: led.id, p03: machine.plastic });
	});

	test("something is stuck: what is behind it stays; taken up again, it goes on", async () => {
		got(await start());
		const { row } = await standing();
		const left = { reversalId: row.id, positionId: machine.position("p01"), stuck: "yes" as const, why: "screws seized" };
		got(await leaveOut(left, shop.env()));
		const { plan } = await standing();
		expect(plan.operations).toEqual([]);
		expect(plan.loops.map(({ say }) => say)).toEqual([expect.stringContaining("p01 cannot be opened at all")]);
		got(await takeUp({ reversalId: row.id, positionId: machine.position("p01") }, shop.env()));
		expect((await standing()).plan.opened).toEqual(["p01", "p02", "p03"]);
	});

	test("an alteration cannot be undone after all: it stays, and the rest goes on", async () => {
		got(await start());
		expect((await standing()).plan.operations.some(({ kind }) => kind === "undo")).toBe(true);
		got(await sayFast({ alterationId: machine.drilled, why: "the plug would not hold" }, shop.env()));
		const { plan } = await standing();
		expect(plan.operations.some(({ kind }) => kind === "undo")).toBe(false);
		expect(plan.staysDifferent.find(({ alteration }) => alteration === "a1")?.code).toBe("cannot-be-undone");
		expect(plan.opened).toContain("p02");
	});

	test("a position is left as it is by choice", async () => {
		got(await start());
		const { row } = await standing();
		got(await leaveOut({ reversalId: row.id, positionId: machine.position("p02"), stuck: "no", why: "the owner likes it" }, shop.env()));
		const { plan } = await standing();
		expect(plan.opened).toEqual([]);
		expect(plan.leftAlone.map(({ position }) => position)).toContain("p02");
	});

	test("it stops on the way: another one is begun from where the machine stands, and puts in what the first had opened", async () => {
		const begun = await heldNow();
		got(await start({ positionIds: [machine.position("p02")] }));
		await doNext();
		const { row } = await standing();
		expect(await start()).toMatchObject({ ok: false, error: { code: "reversal-open" } });
		got(await stopReversal({ reversalId: row.id, words: "the glue did not come" }, shop.env()));
		expect(await leaveOut({ reversalId: row.id, positionId: machine.position("p01"), stuck: "no", why: "late" }, shop.env())).toMatchObject(
			{
				ok: false,
				error: { code: "reversal-ended" },
			},
		);
		expect((await standing()).row.step?.state).toBe("dropped");
		expect(got(await start({ positionIds: [machine.position("p02")] })).number).toBe(2);
		while ((await doNext(2)) !== null);
		expect(await heldNow()).toEqual({ ...begun, p02: machine.part("p02") });
	});

	test("what somebody else does meanwhile is left alone, and a danger is never put back to tidy up", async () => {
		got(await start({ positionIds: [machine.position("p02")] }));
		const link = (await heldNow()).p04 ?? "";
		got(await takeOut({ ...machine.place("p04"), conversionId: machine.safety }, shop.env()));
		const half = await standing();
		expect(half.plan.operations.flatMap(({ position }) => position ?? [])).not.toContain("p04");
		expect(half.plan.attains.p04).toBeUndefined();
		const holder = got(await addPart(addPartSchema.parse({ machineId: machine.id, name: "fuse holder", origin: "modern" }), shop.env()));
		got(await putIn({ partId: holder.id, positionId: machine.position("p04"), conversionId: machine.safety }, shop.env()));
		await doAll();
		expect(await heldNow()).toMatchObject({ p01: machine.part("p01"), p02: machine.part("p02"), p04: holder.id });
		expect(link).not.toBe(holder.id);
	});

	test("the scope does not shrink as alterations are undone", async () => {
		const tin = got(await addPart(addPartSchema.parse({ machineId: machine.id, name: "tin panel", origin: "modern" }), shop.env()));
		got(await takeOut(machine.place("p01"), shop.env()));
		got(await putIn({ partId: tin.id, positionId: machine.position("p01") }, shop.env()));
		const cut = got(
			await recordAlteration(
				recordAlterationSchema.parse({
					machineId: machine.id,
					partId: machine.part("p01"),
					what: "corner cut",
					undo: "trace",
					undoMinutes: { low: "1", likely: "2", high: "3" },
					conversionId: machine.light,
				}),
				shop.env(),
			),
		);
		got(await start({ conversionIds: [machine.light] }));
		got(await markUndone({ alterationId: cut.id, words: "" }, shop.env()));
		await doAll();
		expect(await heldNow()).toMatchObject({ p01: machine.part("p01"), p02: machine.part("p02") });
	});

	test("what was taken out earlier than it was begun, by the clock field, goes in again all the same", async () => {
		const before = shop.now();
		got(await start({ positionIds: [machine.position("p02")] }));
		got(await takeOut({ ...machine.place("p01"), at: before }, shop.env()));
		expect((await standing()).plan.operations.map(({ id }) => id)).toContain("in:p01");
	});
});

describe("putting a danger back", () => {
	test("asks why, also where nothing but a new part comes out", async () => {
		expect(await start({ conversionIds: [machine.safety] })).toMatchObject({
			ok: false,
			error: { code: "danger-without-reason", fields: { reason: expect.stringContaining("Mains safety") } },
		});
		expect(await start({ positionIds: [machine.position("p04")] })).toMatchObject({ ok: false, error: { code: "danger-without-reason" } });
		// An earth stud is an alteration, and no part: undoing it takes a reason as well.
		got(
			await recordAlteration(
				recordAlterationSchema.parse({
					machineId: machine.id,
					positionId: machine.position("p01"),
					what: "earth stud set",
					undo: "clean",
					undoMinutes: { low: "1", likely: "2", high: "3" },
					conversionId: machine.safety,
				}),
				shop.env(),
			),
		);
		expect(await start({ positionIds: [machine.position("p01")] })).toMatchObject({ ok: false, error: { code: "danger-without-reason" } });
		// A bond that was renewed without a word of the conversion is still its work.
		const fresh = got(await addPart(addPartSchema.parse({ machineId: machine.id, name: "new fuse link", origin: "modern" }), shop.env()));
		got(await takeOut(machine.place("p04"), shop.env()));
		got(await putIn({ partId: fresh.id, positionId: machine.position("p04") }, shop.env()));
		expect(await start({ positionIds: [machine.position("p04")] })).toMatchObject({ ok: false, error: { code: "danger-without-reason" } });
		got(await start({ conversionIds: [machine.safety], reason: "shown unplugged, behind glass" }));
		expect((await standing()).plan.opened).toEqual(["p01", "p04"]);
	});
});

describe("a question that cannot be asked", () => {
	test("of a day before the book begins, of another machine's positions", async () => {
		expect(await start({ target: "moment", targetAt: "1990-01-01T00:00:00.000Z" })).toMatchObject({
			ok: false,
			error: { code: "before-the-record" },
		});
		expect(await start({ positionIds: ["nowhere"] })).toMatchObject({ ok: false, error: { code: "not-of-this-machine" } });
	});

	test("finishing waits for a clock that runs on its step", async () => {
		got(await start());
		const { row } = await standing();
		got(await startClock(startClockSchema.parse({ stepId: row.step?.id, personId: shop.person }), shop.env()));
		await doAll();
		shop.setClock(addMinutes(shop.now(), 60));
		expect(await finishReversal({ reversalId: row.id, words: "" }, shop.env())).toMatchObject({ ok: false, error: { code: "clock-runs" } });
	});
});

test("nothing is begun while as found is open", async () => {
	const other = await aMachine(shop, [aPosition("door", { mark: "d1" })]);
	expect(await startReversal(startReversalSchema.parse({ machineId: other.id, target: "asMade" }), shop.env())).toMatchObject({
		ok: false,
		error: { code: "as-found-open" },
	});
});

test("the form offers the fixings that held it last, and says which of them are gone", async () => {
	const seat = machine.position("p01");
	const screws = (count: number, thread: string) => ({
		count,
		thread,
		length: "",
		head: "",
		drive: "",
		tightness: "",
		differs: "",
		note: "",
	});
	const refit = async (thread: string, went: { readonly kind: "with-part" } | { readonly kind: "scrapped" }) => {
		const standing = await shop.store.read.fixing.findMany({
			where: { place: "home", holds: { some: { fitting: { positionId: seat, untilAt: null } } } },
		});
		got(
			await takeOut(
				{
					...machine.place("p01"),
					fixings: standing.map((lot) => ({ ...screws(lot.count, lot.thread), fixingId: lot.id, went: { kind: "with-part" } })),
				},
				shop.env(),
			),
		);
		got(await putIn({ partId: machine.part("p01"), positionId: seat, fixings: [screws(4, thread)] }, shop.env()));
		const [now] = await shop.store.read.fixing.findMany({ where: { thread, place: "home" } });
		got(await takeOut({ ...machine.place("p01"), fixings: [{ ...screws(4, thread), fixingId: now?.id ?? null, went }] }, shop.env()));
	};
	await refit("No.12", { kind: "with-part" });
	got(await putIn({ partId: machine.part("p01"), positionId: seat }, shop.env()));
	await refit("M6", { kind: "scrapped" });
	const sheet = await putInSheet(shop.store.read, machine.id, "p01", machine.part("p01"));
	expect(sheet?.fixings.filter(({ heldLast }) => heldLast).map(({ thread }) => thread)).toEqual([]);
	expect(sheet?.fixings.map(({ thread, heldLast }) => [thread, heldLast])).toContainEqual(["No.12", false]);
	expect(sheet?.gone).toEqual([{ partId: machine.part("p01"), words: "4 x M6: scrapped" }]);
});
