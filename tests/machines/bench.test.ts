import { describe, expect, it } from "vitest";
import { instant } from "@/lib/core/instants";
import { nextSteps, type StepAhead, soon, stateWords, waitsOn } from "@/lib/machines/bench";
import { wanted } from "@/lib/machines/find";

const now = instant("2026-04-02T08:00:00.000Z");
const zone = "Europe/Amsterdam";
const step = (number: number, more: Partial<StepAhead> = {}): StepAhead => ({
	number,
	title: `step ${number}`,
	state: "planned",
	likelyMinutes: 30,
	caution: "",
	who: [],
	clockRuns: false,
	needs: [],
	...more,
});
const needs = (number: number, more: object = {}) => ({
	number,
	title: "filler",
	state: "done" as const,
	doneAt: instant("2026-04-02T07:00:00.000Z"),
	waitMinutes: 0,
	...more,
});

describe("what is next on the bench", () => {
	it("is what runs, then what was begun, then what can begin, then what only waits, then the rest, each by number", () => {
		const steps = [
			step(1, { needs: [needs(9, { state: "planned", doneAt: null })] }),
			step(2, { needs: [needs(8, { waitMinutes: 1440 })] }),
			step(3),
			step(4, { state: "doing" }),
			step(5, { state: "doing", clockRuns: true }),
			step(6),
		];
		expect(nextSteps(steps, now).map(({ number }) => number)).toEqual([5, 4, 3, 6, 2, 1]);
	});

	it("can begin in the very minute in which the wait is over", () => {
		const [only] = nextSteps([step(1, { needs: [needs(8, { waitMinutes: 60 })] })], now);
		expect(only?.hindered).toEqual([]);
	});
});

describe("a wait", () => {
	const done = { number: 7, title: "fill", waitWhy: "filler", doneAt: instant("2026-04-02T07:00:00.000Z") };

	it("is shown until it is over", () => {
		expect(waitsOn([{ ...done, waitMinutes: 61 }], now)).toEqual([
			{ number: 7, title: "fill", why: "filler", until: "2026-04-02T08:01:00.000Z" },
		]);
		expect(waitsOn([{ ...done, waitMinutes: 60 }], now)).toEqual([]);
	});

	it("is told as one tells it in the shop", () => {
		expect(soon(instant("2026-04-02T13:40:00.000Z"), now, zone)).toBe("15:40");
		expect(soon(instant("2026-04-03T07:30:00.000Z"), now, zone)).toBe("tomorrow 09:30");
		expect(soon(instant("2026-04-09T07:30:00.000Z"), now, zone)).toBe("9 Apr 2026, 09:30");
	});

	it("stands for the machine's state only while nothing else can be done", () => {
		const [firstWait] = waitsOn([{ ...done, waitMinutes: 461 }], now);
		const machine = { state: "work" as const, leftDay: null };
		const bench = { clockRuns: false, anyReady: false, firstWait: firstWait ?? null, begun: false };
		expect(stateWords(machine, bench, now, zone).words).toBe("filler, until 16:41");
		expect(stateWords(machine, { ...bench, anyReady: true }, now, zone).words).toBe("in work");
		expect(stateWords(machine, { ...bench, clockRuns: true }, now, zone).words).toBe("on the bench");
		const waiting = { ...machine, state: "waiting" as const };
		expect(stateWords(waiting, bench, now, zone).words).toBe("as found, not started");
		expect(stateWords(waiting, { ...bench, begun: true }, now, zone).words).toBe("begun, nothing in work now");
	});
});

describe("what is typed into the field at the top", () => {
	it("leads straight to a tag, however it is typed or scanned", () => {
		for (const typed of ["12-0147-K", "12 0147 k", "120147K", "HTTP://SHOP.LOCAL/T/12-0147-K"]) {
			expect(wanted(typed)).toEqual({ to: "tag", tag: "12-0147-K" });
		}
	});

	it("leads to a machine by its bare number", () => {
		expect(wanted(" 12 ")).toEqual({ to: "machine", number: 12 });
	});

	it("is looked for word by word otherwise; a mistyped tag is no word too many", () => {
		expect(wanted("coin door  lamp")).toEqual({ to: "words", words: ["coin", "door", "lamp"] });
		expect(wanted("12-0147-X")).toEqual({ to: "words", words: ["12-0147-X"] });
		expect(wanted("")).toEqual({ to: "nothing" });
	});
});
