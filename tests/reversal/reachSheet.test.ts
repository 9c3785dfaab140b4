// What comes off to get at something, asked of a real record and said in sentences.

import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { sayFixing } from "@/lib/fittings/changes";
import { sayObstruction } from "@/lib/positions/changes";
import { sayObstructionSchema } from "@/lib/positions/schema";
import { reachOf } from "@/lib/reversal/reachQueries";
import { type ReachSheet, reachSheet } from "@/lib/reversal/reachSheet";
import { nextSentence, reachSentence } from "@/lib/reversal/reachWords";
import { aMachine, aPosition, got } from "@/tests/machines/aMachine";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

const likely = (minutes: number) => ({ low: minutes, likely: minutes, high: minutes });
const timed = (name: string, mark: string, out: number, into: number) => aPosition(name, { mark, out: likely(out), in: likely(into) });

describe("what comes off", () => {
	let shop: FreshShop;
	let machine: Awaited<ReturnType<typeof aMachine>>;
	beforeEach(async () => {
		shop = await freshShop();
		machine = await aMachine(shop, [
			timed("rear panel", "p01", 3, 4),
			aPosition("door", { mark: "p02", out: likely(10), in: likely(10) }),
			timed("cover", "p03", 3, 4),
			{ ...timed("motor", "p04", 5, 3), sides: ["rear", "front"], note: "spring under tension" },
			aPosition("fuse", { mark: "p05" }),
			aPosition("shell", { mark: "p06", kind: "place" }),
			aPosition("buzzer", { mark: "p07", finding: "missing" }),
		]);
		const behind = async (mark: string, part: string, sides: string[] = []) =>
			got(
				await sayObstruction(
					sayObstructionSchema.parse({ positionId: machine.position(mark), partId: machine.part(part), sides }),
					shop.env(),
				),
			);
		await behind("p03", "p01");
		await behind("p04", "p03", ["rear"]);
		await behind("p04", "p02", ["front"]);
		got(await sayFixing({ positionIds: [machine.position("p03")], count: 2, thread: "4BA", length: "1/2 in" }, shop.env()));
	});
	afterEach(() => shop.close());

	const sheet = async (...marks: string[]): Promise<ReachSheet> => got(await reachOf(shop.store.read, machine.id, marks, shop.now()));

	test("is said in one sentence, with the thing itself apart", async () => {
		expect(reachSentence(await sheet("p04"))).toBe(
			"Take off 2 things to get at the motor: 14 min out and in (likely). Then the motor itself: 8 min out and in (likely).",
		);
	});

	test("stands in the order in which it is done, out and in again, with its side, what holds it and what to mind", async () => {
		const { out, into } = await sheet("p04");
		expect(out.map(({ mark, side }) => [mark, side])).toEqual([
			["p01", null],
			["p03", null],
			["p04", "rear"],
		]);
		expect(into.map(({ mark }) => mark)).toEqual(["p04", "p03", "p01"]);
		expect(out[1]?.fixings).toEqual([expect.stringContaining("2 x 4BA")]);
		expect(out[2]?.notes).toEqual(["spring under tension"]);
	});

	test("is compared with the next best way", async () => {
		expect(nextSentence(await sheet("p04"))).toBe("If the rear panel (p01) is to stay, take off the door instead: 6 min more.");
		expect(nextSentence(await sheet("p03"))).toBe("There is no other way: all of these must come off.");
	});

	test("is nothing for what can be reached as it stands", async () => {
		const reached = await sheet("p01");
		expect(reachSentence(reached)).toBe("Nothing is in the way of the rear panel: 7 min out and in (likely).");
		expect(nextSentence(reached)).toBeNull();
		expect(reachSentence(await sheet("p06"))).toBe("Nothing is in the way of the shell: it can be reached as it stands.");
		expect(reachSentence(await sheet("p07"))).toBe("Nothing is in the way of the empty position buzzer: it can be reached as it stands.");
	});

	test("without an estimate is said, and not taken for nought", async () => {
		expect(reachSentence(await sheet("p05"))).toBe("Nothing is in the way of the fuse: nobody has estimated how long that takes.");
		expect(reachSentence(await sheet("p05", "p01"))).toBe(
			"Nothing is in the way of the fuse and the rear panel: 7 min out and in (likely), without one of them that has no estimate.",
		);
	});

	test("for several things at once is opened once", async () => {
		const both = await sheet("p03", "p04");
		expect(both.first.map(({ mark }) => mark)).toEqual(["p01"]);
		expect(reachSentence(both)).toBe(
			"Take off 1 thing to get at the cover and the motor: 7 min out and in (likely). Then the cover and the motor themselves: 15 min out and in (likely).",
		);
	});

	test("what shuts itself in is out of reach, and the loop is named", async () => {
		got(
			await sayObstruction(
				sayObstructionSchema.parse({ positionId: machine.position("p01"), partId: machine.part("p03"), sides: [] }),
				shop.env(),
			),
		);
		const { wanted, stuck } = await sheet("p03", "p05");
		expect(wanted.map(({ mark }) => mark)).toEqual(["p05"]);
		expect(stuck.map(({ mark }) => mark)).toEqual(["p03"]);
		expect(stuck[0]?.why).toBe("None of these can come out: p03 waits for p01 waits for p03. (p03 cover, p01 rear panel)");
		expect(reachSentence(await sheet("p03"))).toBe("No opening reaches it, as the record has it.");
	});

	test("marks of no position are named and left out; the same mark twice counts once", async () => {
		const { unknown, wanted } = await sheet("p01", "p99", "p01", "<b>");
		expect([unknown, wanted.map(({ mark }) => mark)]).toEqual([["p99", "<b>"], ["p01"]]);
	});

	test("a record too large to be read whole is refused in words", async () => {
		const { reversalFacts, MOST } = await import("@/lib/reversal/queries");
		const facts = await reversalFacts(shop.store.read, machine.id, { ...MOST, positions: 2 });
		const answer = reachSheet(facts, ["p01"], shop.now());
		expect(answer.ok ? "" : answer.error.say).toContain("more than 2 positions");
	});
});
