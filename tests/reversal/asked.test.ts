// What is asked of a reversal, from a machine's book to a problem, and from the plan back to words for the bench.

import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { recordAlteration } from "@/lib/alterations/changes";
import { recordAlterationSchema } from "@/lib/alterations/schema";
import { makeBag, moveBag } from "@/lib/bags/changes";
import type { MoveBag } from "@/lib/bags/schema";
import { nameConversion } from "@/lib/conversions/changes";
import { nameConversionSchema } from "@/lib/conversions/schema";
import { type Instant, instant } from "@/lib/core/instants";
import { putIn, sayFixing, takeOut } from "@/lib/fittings/changes";
import { stampAsFound } from "@/lib/machines/changes";
import { addPart, scrapPart, sendOut } from "@/lib/parts/changes";
import { addPartSchema, leaveSchema, sendOutSchema } from "@/lib/parts/schema";
import { recordFinding, sayObstruction } from "@/lib/positions/changes";
import { recordFindingSchema, sayObstructionSchema } from "@/lib/positions/schema";
import { buildAsFound, heldAfter, problemOf } from "@/lib/reversal/asked";
import { checklistOf, pickList } from "@/lib/reversal/checklist";
import { mostEver } from "@/lib/reversal/mostEver";
import { planReversal } from "@/lib/reversal/plan";
import { MOST, reversalFacts } from "@/lib/reversal/queries";
import { readProblem } from "@/lib/reversal/readProblem";
import { type Asked, placeMark } from "@/lib/reversal/scope";
import { aMachine, aPosition, got } from "@/tests/machines/aMachine";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

const likely = (minutes: number) => ({ low: minutes, likely: minutes, high: minutes });

/** A small lamp machine: a panel before the lamp, a fuse, a place nobody could see, and one that was empty. */
async function lampMachine(shop: FreshShop) {
	const machine = await aMachine(shop, [
		aPosition("rear panel", { mark: "p01", out: likely(3), in: likely(4) }),
		aPosition("lamp", { mark: "p02", out: likely(2), in: likely(2) }),
		aPosition("fuse", { mark: "p03", out: likely(1), in: likely(1) }),
		aPosition("governor", { mark: "p04", finding: "unseen" }),
		aPosition("buzzer", { mark: "p05", finding: "missing" }),
	]);
	const obstruction = sayObstructionSchema.parse({ positionId: machine.position("p02"), partId: machine.part("p01") });
	got(await sayObstruction(obstruction, shop.env()));
	got(await sayFixing({ positionIds: [machine.position("p02")], count: 2, thread: "4BA", length: "1/2 in" }, shop.env()));
	const { asFoundAt } = got(await stampAsFound({ machineId: machine.id }, shop.env()));
	const conversion = async (name: string, purpose: "ordinary" | "safety") =>
		got(await nameConversion(nameConversionSchema.parse({ machineId: machine.id, name, purpose }), shop.env())).id;
	const place = (mark: string) => ({ machineId: machine.id, positionId: machine.position(mark) });
	const fresh = async (name: string) =>
		got(await addPart(addPartSchema.parse({ machineId: machine.id, name, origin: "modern" }), shop.env()));
	/** Takes out what is in a position, and fits another part, both for a conversion. */
	const replace = async (mark: string, conversionId: string | null, name: string) => {
		got(await takeOut({ ...place(mark), conversionId }, shop.env()));
		const part = await fresh(name);
		got(await putIn({ partId: part.id, positionId: machine.position(mark), conversionId }, shop.env()));
		return part;
	};
	const ask = async (asked: Omit<Asked, "asFoundAt"> = {}) => {
		const facts = await reversalFacts(shop.store.read, machine.id);
		const problem = readProblem(problemOf(facts, { asFoundAt: instant(asFoundAt), ...asked }));
		if (!problem.ok) throw new Error(JSON.stringify(problem.error));
		const plan = planReversal(problem.value);
		return { facts, problem: problem.value, plan, held: heldAfter(facts, plan) };
	};
	const tagOf = async (partId: string) => (await shop.store.read.tag.findUniqueOrThrow({ where: { partId } })).id;
	return { ...machine, asFoundAt: instant(asFoundAt), conversion, place, fresh, replace, ask, tagOf };
}

let shop: FreshShop;
let machine: Awaited<ReturnType<typeof lampMachine>>;
beforeEach(async () => {
	shop = await freshShop();
	machine = await lampMachine(shop);
});
afterEach(() => shop.close());

const outAndIn = async (mark: string, between: () => Promise<void>) => {
	got(await takeOut(machine.place(mark), shop.env()));
	await between();
	got(await putIn({ partId: machine.part(mark), positionId: machine.position(mark) }, shop.env()));
};

describe("what is taken back", () => {
	test("nothing, while nothing was changed", async () => {
		const { plan, held } = await machine.ask();
		expect(plan.operations).toEqual([]);
		expect(held.get(machine.position("p02"))).toBe(machine.part("p02"));
	});

	test("the whole machine, but what was done for safety stays until it is named with a reason", async () => {
		const [light, safety] = [await machine.conversion("New light", "ordinary"), await machine.conversion("Mains safety", "safety")];
		await machine.replace("p03", safety, "fuse link T1A");
		await outAndIn("p01", async () => void (await machine.replace("p02", light, "LED lamp")));
		const whole = await machine.ask();
		expect(whole.plan.opened).toEqual(["p01", "p02"]);
		expect(whole.plan.openedOnly).toEqual(["p01"]);
		expect(whole.plan.minutes.likely).toBe(3 + 2 + 2 + 4);
		expect(whole.plan.leftAlone.map(({ position }) => position)).toEqual(["p03"]);
		expect(whole.held.get(machine.position("p02"))).toBe(machine.part("p02"));

		const named = await machine.ask({ conversions: [safety] });
		expect(named.plan.staysDifferent.map(({ position, code }) => [position, code])).toEqual([["p03", "danger"]]);
		const meant = await machine.ask({ conversions: [safety], reason: "shown unplugged" });
		expect(meant.plan.opened).toEqual(["p03"]);
		expect(meant.held.get(machine.position("p03"))).toBe(machine.part("p03"));
		expect(meant.plan.leftAlone.map(({ position }) => position)).toEqual(["p02"]);
	});

	test("to what stood on a day, by what was fitted then", async () => {
		let between: Instant = machine.asFoundAt;
		const light = await machine.conversion("New light", "ordinary");
		await outAndIn("p01", async () => {
			const led = await machine.replace("p02", light, "LED lamp");
			between = shop.now();
			got(await takeOut(machine.place("p02"), shop.env()));
			await scrapped(led.id);
			const third = await machine.fresh("filament lamp");
			got(await putIn({ partId: third.id, positionId: machine.position("p02") }, shop.env()));
		});
		const then = await machine.ask({ at: between });
		// The panel was on the bench then, and the LED lamp that was fitted is gone.
		expect(then.problem.target.p01).toBeUndefined();
		expect(then.plan.staysDifferent.map(({ position, code }) => [position, code])).toEqual([["p02", "unavailable"]]);
		expect(then.held.has(machine.position("p01"))).toBe(false);
	});

	const scrapped = async (partId: string) => void got(await scrapPart(leaveSchema.parse({ partId, why: "broken" }), shop.env()));

	test("says why a part cannot be had, with the day on which it is due", async () => {
		await outAndIn("p01", async () => void (await machine.replace("p02", null, "LED lamp")));
		const out = sendOutSchema.parse({ partId: machine.part("p02"), partyName: "A plater", dueDay: "2026-05-20", why: "plating" });
		got(await sendOut(out, shop.env()));
		const { plan } = await machine.ask();
		expect(plan.staysDifferent.map(({ position, code }) => [position, code])).toEqual([["p02", "unavailable"]]);
		expect(plan.staysDifferent[0]?.why).toContain("due back 20 May 2026");
		expect(plan.staysDifferent[0]?.freedBy).toBe("having the lamp back, due 20 May 2026");
	});

	test("waits for a part that is out with its bag, or with any bag around it, until it is back", async () => {
		const bag = async (words: string) => got(await makeBag({ machineId: machine.id, role: "keeping", words }, shop.env())).bagId;
		const lay = async (bagId: string, to: MoveBag["to"]) => void got(await moveBag({ bagId, to }, shop.env()));
		const [inner, middle, outer] = [await bag("lamp"), await bag("lights"), await bag("all for the dealer")];
		let between: Instant = machine.asFoundAt;
		// An original does not go out in a bag; a lamp that the shop fitted may, and is wanted back as of that day.
		await outAndIn("p01", async () => {
			await machine.replace("p02", null, "LED lamp");
			between = shop.now();
			got(await takeOut({ ...machine.place("p02"), into: { kind: "bag", bagId: inner } }, shop.env()));
			const third = await machine.fresh("filament lamp");
			got(await putIn({ partId: third.id, positionId: machine.position("p02") }, shop.env()));
		});
		const stays = async () =>
			(await machine.ask({ at: between })).plan.staysDifferent.map(({ position, code, why }) => [position, code, why]);
		const [out, bench] = [{ kind: "out", why: "for an offer" } as const, { kind: "bench" } as const];
		await lay(inner, { kind: "bag", bagId: middle });
		await lay(middle, { kind: "bag", bagId: outer });
		expect(await stays()).toEqual([]);
		await lay(outer, out);
		expect(await stays()).toEqual([["p02", "unavailable", expect.stringContaining("out of the shop with the bag around it")]]);
		await lay(outer, bench);
		expect(await stays()).toEqual([]);
		await lay(inner, out);
		expect(await stays()).toEqual([["p02", "unavailable", expect.stringContaining("out of the shop: for an offer")]]);
	});
});

describe("a record that is too large to be read whole", () => {
	test("comes to no plan, and says of what there is too much, never to a plan of a part", async () => {
		await outAndIn("p01", async () => void (await machine.replace("p02", null, "LED lamp")));
		const { read } = shop.store;
		const asked = { asFoundAt: machine.asFoundAt };
		const whole = await reversalFacts(read, machine.id);
		for (const kind of ["positions", "parts", "fittings", "findings", "obstructions"] as const) {
			const count = whole[kind].length;
			const enough = await reversalFacts(read, machine.id, { ...MOST, [kind]: count });
			expect(problemOf(enough, asked)).toEqual(problemOf(whole, asked));
			const cut = readProblem(problemOf(await reversalFacts(read, machine.id, { ...MOST, [kind]: count - 1 }), asked));
			expect(cut.ok ? "a plan" : cut.error.code).toBe("problem-incomplete");
			expect(cut.ok ? "" : cut.error.say).toContain(`This machine has more than ${count - 1} ${kind} on record`);
		}
		const much = problemOf(
			{
				...whole,
				beyond: [
					{ kind: "fittings", most: 20_000 },
					{ kind: "parts", most: 10_000 },
				],
			},
			asked,
		);
		expect(much.incomplete).toContain("more than 20,000 fittings and more than 10,000 parts on record");
	});
});

describe("what was found", () => {
	test("a place that nobody has seen keeps what it holds, until later knowledge says what was there", async () => {
		const part = await machine.fresh("brake pad");
		got(await putIn({ partId: part.id, positionId: machine.position("p04") }, shop.env()));
		const unseen = await machine.ask();
		expect(unseen.plan.operations).toEqual([]);
		expect(unseen.problem.target.p04).toBe(part.tag);
		expect(buildAsFound(unseen.facts, machine.asFoundAt).seen.has(machine.position("p04"))).toBe(false);
		const seen = recordFindingSchema.parse({ positionId: machine.position("p04"), state: "missing", words: "empty studs under the pad" });
		got(await recordFinding(seen, shop.env()));
		const known = await machine.ask();
		expect(known.problem.target.p04).toBeUndefined();
		expect(known.plan.opened).toEqual(["p04"]);
	});

	test("an empty place is empty again: what the shop put there comes out", async () => {
		const part = await machine.fresh("buzzer, period");
		got(await putIn({ partId: part.id, positionId: machine.position("p05") }, shop.env()));
		const { plan, held } = await machine.ask();
		expect(plan.operations.filter(({ kind }) => kind === "take-out").map(({ part: tag }) => tag)).toEqual([part.tag]);
		expect(held.has(machine.position("p05"))).toBe(false);
	});
});

describe("alterations", () => {
	const alter = async (more: Record<string, unknown>) =>
		got(await recordAlteration(recordAlterationSchema.parse({ machineId: machine.id, what: "hole widened", ...more }), shop.env()));

	test("at a place that is no position are undone with the whole machine, and never with one conversion", async () => {
		const light = await machine.conversion("New light", "ordinary");
		await outAndIn("p01", async () => void (await machine.replace("p02", light, "LED lamp")));
		await alter({ place: "rear wall", undo: "never", reason: "wood is gone" });
		const mark = placeMark("rear wall");
		expect((await machine.ask()).plan.staysDifferent.map(({ position, code }) => [position, code])).toEqual([[mark, "cannot-be-undone"]]);
		expect((await machine.ask({ conversions: [light] })).plan.staysDifferent).toEqual([]);
	});

	test("of a part are undone wherever it lies, with their wait", async () => {
		await outAndIn("p01", async () => {
			await machine.replace("p02", null, "LED lamp");
			await alter({ partId: machine.part("p02"), undo: "trace", undoHow: "splice", undoMinutes: likely(15), undoWait: 60 });
		});
		const { plan } = await machine.ask();
		expect([plan.minutes.undo.likely, plan.waitMinutes]).toEqual([15, 60]);
		expect(plan.comesBack.map(({ position }) => position)).toContain("p02");
	});
});

describe("the list for the bench", () => {
	test("fetches a bag once, and holds a part by its old screws where an alteration of the hole is undone", async () => {
		await outAndIn("p01", async () => {
			const { bagId } = got(await makeBag({ machineId: machine.id, role: "keeping", words: "lamp and its screws" }, shop.env()));
			got(await takeOut({ ...machine.place("p02"), into: { kind: "bag", bagId } }, shop.env()));
			got(
				await recordAlteration(
					recordAlterationSchema.parse({
						machineId: machine.id,
						what: "holes tapped M4",
						positionId: machine.position("p02"),
						undo: "trace",
						undoHow: "sleeves",
						undoMinutes: likely(20),
					}),
					shop.env(),
				),
			);
			// The same lamp goes in again, by other screws; the old ones stay in their bag.
			got(
				await putIn(
					{ partId: machine.part("p02"), positionId: machine.position("p02"), fixings: [{ count: 2, thread: "M4" }] },
					shop.env(),
				),
			);
		});
		const { plan, facts } = await machine.ask();
		const lines = checklistOf(plan, facts);
		const back = lines.find(({ kind, mark }) => kind === "put-in" && mark === "p02");
		const out = lines.find(({ kind, mark }) => kind === "take-out" && mark === "p02");
		expect(out?.fixings).toEqual(["2 x M4"]);
		expect(back?.fixings).toEqual(["2 x 4BA x 1/2 in"]);
		expect(back?.from.map(({ words }) => words)).toEqual(["lamp and its screws"]);
		expect(lines.find(({ kind }) => kind === "undo")?.notes).toEqual(["sleeves"]);
		expect(lines.find(({ kind }) => kind === "undo")?.leavesTrace).toBe(true);
		expect(lines.map(({ kind }) => kind).slice(0, 1)).toEqual(["make-safe"]);
		expect(lines.at(-1)?.kind).toBe("check");
	});

	test("lists what to fetch once each, with what it is for", async () => {
		await outAndIn("p01", async () => {
			const { bagId } = got(await makeBag({ machineId: machine.id, role: "keeping", words: "lamp and its screws" }, shop.env()));
			got(await takeOut({ ...machine.place("p02"), into: { kind: "bag", bagId } }, shop.env()));
			const led = await machine.fresh("LED lamp");
			got(await putIn({ partId: led.id, positionId: machine.position("p02") }, shop.env()));
		});
		const { plan, facts } = await machine.ask();
		const picked = pickList(checklistOf(plan, facts));
		expect(picked.map(({ words, for: use }) => [words, use])).toEqual([["lamp and its screws", ["lamp"]]]);
		expect(picked[0]?.where).toBe("on the bench");
	});
});

describe("back to as made", () => {
	test("what was foreign when it came gives way to the original that was found since; nobody knows of the buzzer, and it stays", async () => {
		const light = await machine.conversion("New light", "ordinary");
		await outAndIn("p01", async () => void (await machine.replace("p02", light, "LED lamp")));
		const original = got(await addPart(addPartSchema.parse({ machineId: machine.id, name: "buzzer", origin: "period" }), shop.env()));
		got(await putIn({ partId: original.id, positionId: machine.position("p05") }, shop.env()));
		// As found it was empty; as made it had a buzzer of this make and type.
		expect((await machine.ask()).held.has(machine.position("p05"))).toBe(false);
		const made = await machine.ask({ asMade: true });
		expect(made.held.get(machine.position("p05"))).toBe(original.id);
		expect(made.held.get(machine.position("p02"))).toBe(machine.part("p02"));
		expect(made.plan.opened).toEqual(["p01", "p02"]);
	});

	test("an original that is gone stays different; the most that it can ever be again says so, and counts what is only out", async () => {
		got(await takeOut(machine.place("p03"), shop.env()));
		got(
			await sendOut(
				sendOutSchema.parse({ partId: machine.part("p03"), partyName: "Rewinder", dueDay: "2026-12-24", why: "to be tested" }),
				shop.env(),
			),
		);
		got(await takeOut(machine.place("p01"), shop.env()));
		got(await scrapPart(leaveSchema.parse({ partId: machine.part("p01"), why: "rotten" }), shop.env()));
		const { facts, held } = await machine.ask({ asMade: true });
		expect([held.has(machine.position("p01")), held.has(machine.position("p03"))]).toEqual([false, false]);
		const ever = mostEver(facts, machine.asFoundAt);
		expect(ever?.has(machine.position("p01"))).toBe(false);
		expect(ever?.get(machine.position("p03"))).toBe(machine.part("p03"));
	});
});

describe("an alteration that was there in the state to go back to", () => {
	test("stays, and one that came after it is undone", async () => {
		const alter = async (what: string) =>
			got(
				await recordAlteration(
					recordAlterationSchema.parse({
						machineId: machine.id,
						positionId: machine.position("p03"),
						what,
						undo: "clean",
						undoMinutes: { low: "1", likely: "2", high: "3" },
					}),
					shop.env(),
				),
			);
		await alter("hole widened");
		const between = shop.now();
		await alter("painted over");
		const undone = async (asked: Parameters<typeof machine.ask>[0]) =>
			(await machine.ask(asked)).plan.operations.flatMap(({ alteration }) => alteration ?? []).sort();
		expect(await undone({})).toEqual(["a1", "a2"]);
		expect(await undone({ at: between })).toEqual(["a2"]);
		expect(await undone({ positions: [machine.position("p03")] })).toEqual(["a1", "a2"]);
		expect(await undone({ positions: [machine.position("p02")] })).toEqual([]);
	});
});
