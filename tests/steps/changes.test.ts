import fc from "fast-check";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { instant } from "@/lib/core/instants";
import {
	addTime,
	changeStep,
	dropStep,
	finishStep,
	planStep,
	planSteps,
	reopenStep,
	startClock,
	stopClock,
	voidTime,
} from "@/lib/steps/changes";
import { hindranceWords, minutesOn } from "@/lib/steps/progress";
import { runningClock, stepOfMachine, workOfMachine } from "@/lib/steps/queries";
import { loopOfNeeds } from "@/lib/steps/rules";
import { changeStepSchema, planStepFormSchema, planStepSchema, planStepsSchema } from "@/lib/steps/schema";
import { type AMachine, aMachine } from "@/tests/fittings/aMachine";
import { done, refused } from "@/tests/steps/aCrew";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

describe("steps", () => {
	let shop: FreshShop;
	let machine: AMachine;
	const step = async (title: string, more: object = {}) =>
		done(await planStep(planStepSchema.parse({ machineId: machine.id, kind: "repair", title, ...more }), shop.env()));
	const start = (stepId: string, at?: string) =>
		startClock({ stepId, personId: shop.person, at: at === undefined ? undefined : instant(at) }, shop.env());
	const work = async (at: string) => workOfMachine(shop.store.read, machine.id, instant(at));
	const rowOf = async (number: number, at: string = shop.now()) => {
		const found = (await work(at)).find((row) => row.number === number);
		if (!found) throw new Error("no such step");
		return found;
	};
	const clockTime = (at: string) => at.slice(11, 16);

	beforeEach(async () => {
		shop = await freshShop();
		machine = await aMachine(shop, { k01: {} });
	});
	afterEach(() => shop.close());

	it("a step that needs another can be done when that is done and its wait is over, and says what it waits for", async () => {
		const fill = await step("fill the holes", { wait: "24 h", waitWhy: "filler sets", minutes: { likely: 40 } });
		await step("drill", { needs: [fill.id] });
		expect(hindranceWords((await rowOf(2)).hindered, clockTime)).toEqual(["needs step 1"]);
		done(await finishStep({ stepId: fill.id, words: "", at: instant("2026-03-02T09:00:00.000Z") }, shop.env()));
		const waiting = await rowOf(2, "2026-03-03T08:59:59.000Z");
		expect([waiting.standing, hindranceWords(waiting.hindered, clockTime)]).toEqual(["waits", ["filler sets until 09:00"]]);
		expect((await rowOf(2, "2026-03-03T09:00:00.000Z")).standing).toBe("ready");
	});

	it("what can be done now comes first, then what waits, then what needs others, then what is done", async () => {
		const first = await step("first");
		const second = await step("second", { needs: [first.id] });
		await step("third");
		const fourth = await step("fourth", { wait: "3 days" });
		await step("fifth", { needs: [fourth.id] });
		done(await finishStep({ stepId: fourth.id, words: "" }, shop.env()));
		done(await start(second.id));
		expect((await work(shop.now())).map(({ number, standing }) => [number, standing])).toEqual([
			[2, "running"],
			[1, "ready"],
			[3, "ready"],
			[5, "waits"],
			[4, "done"],
		]);
	});

	it("nobody has two clocks, and the one that runs is named", async () => {
		const [one, two] = [await step("sand"), await step("paint")];
		done(await start(one.id));
		expect(refused(await start(two.id))).toMatchObject({ code: "clock-runs", say: expect.stringContaining("sand") });
		expect(await runningClock(shop.store.read, shop.person)).toMatchObject({ step: { number: 1 } });
	});

	it("a clock goes on although nobody looks at it, and begun minutes count", async () => {
		const { id } = await step("sand");
		const { workId } = done(await start(id, "2026-03-02T09:00:00.000Z"));
		expect((await rowOf(1)).clocks.map(({ startedAt }) => startedAt)).toEqual(["2026-03-02T09:00:00.000Z"]);
		shop.setClock("2026-03-02T12:00:00.000Z");
		expect(done(await stopClock({ workId, at: instant("2026-03-02T09:35:00.001Z"), note: "" }, shop.env()))).toEqual({ minutes: 36 });
		expect((await rowOf(1)).time).toEqual([{ personId: shop.person, minutes: 36 }]);
	});

	it("a clock pressed twice by one press is started once", async () => {
		const { id } = await step("sand");
		const deed = shop.newId();
		const first = done(await startClock({ stepId: id, personId: shop.person }, shop.env(deed)));
		expect(done(await startClock({ stepId: id, personId: shop.person }, shop.env(deed)))).toEqual(first);
		expect(await shop.store.read.work.count()).toBe(1);
	});

	it("a step is not finished while a clock runs on it", async () => {
		const { id } = await step("sand");
		const { workId } = done(await start(id));
		expect(refused(await finishStep({ stepId: id, words: "" }, shop.env())).code).toBe("clock-runs");
		expect(refused(await dropStep({ stepId: id, why: "not wanted" }, shop.env())).code).toBe("clock-runs");
		done(await stopClock({ workId, note: "" }, shop.env()));
		done(await finishStep({ stepId: id, words: "two coats" }, shop.env()));
		expect(refused(await start(id)).code).toBe("step-done");
	});

	it("time taken back stays readable and counts for nothing", async () => {
		const { id } = await step("sand");
		const { workId } = done(await addTime({ stepId: id, personId: shop.person, minutes: 90, note: "" }, shop.env()));
		expect(minutesOn(await rowOf(1))).toBe(90);
		done(await voidTime({ workId, why: "it was the other machine" }, shop.env()));
		expect(minutesOn(await rowOf(1))).toBe(0);
		const page = await stepOfMachine(shop.store.read, machine.id, 1, shop.now());
		expect(page?.allTime.map(({ how, minutes, note }) => [how, minutes, note])).toEqual([["void", 90, "it was the other machine"]]);
		expect(refused(await voidTime({ workId, why: "again" }, shop.env())).code).toBe("time-void");
	});

	it("time from memory is marked as such, also on a step that is done", async () => {
		const { id } = await step("sand");
		done(await finishStep({ stepId: id, words: "" }, shop.env()));
		done(await addTime({ stepId: id, personId: shop.person, minutes: 20, note: "forgotten" }, shop.env()));
		expect(await shop.store.read.work.findMany({ select: { how: true, minutes: true } })).toEqual([{ how: "added", minutes: 20 }]);
	});

	it("a step can be opened again, and what waits for it waits again", async () => {
		const { id } = await step("sand");
		await step("paint", { needs: [id] });
		done(await finishStep({ stepId: id, words: "" }, shop.env()));
		expect((await rowOf(2)).standing).toBe("ready");
		done(await reopenStep({ stepId: id, why: "scratched" }, shop.env()));
		expect([(await rowOf(1)).standing, (await rowOf(2)).standing]).toEqual(["begun", "needs"]);
	});

	it("nothing waits for a step that was dropped, and it stays on the list", async () => {
		const { id } = await step("sand");
		await step("paint", { needs: [id] });
		done(await dropStep({ stepId: id, why: "the paint holds" }, shop.env()));
		expect((await work(shop.now())).map(({ number, standing }) => [number, standing])).toEqual([
			[2, "ready"],
			[1, "dropped"],
		]);
	});

	it("needs that lead back to their own step are refused at the field, and nothing is changed", async () => {
		const one = await step("sand");
		const two = await step("paint", { needs: [one.id] });
		const plan = changeStepSchema.parse({ stepId: one.id, kind: "repair", title: "sand", needs: [two.id] });
		expect(refused(await changeStep(plan, shop.env()))).toMatchObject({ code: "needs-loop", fields: { needs: expect.any(String) } });
		expect((await rowOf(1)).needs).toEqual([]);
	});

	it("a need or a person taken off a step and put back stands once", async () => {
		const one = await step("sand");
		const two = await step("paint", { needs: [one.id], crew: [shop.person] });
		const plan = (more: object) => changeStepSchema.parse({ stepId: two.id, kind: "repair", title: "paint", ...more });
		done(await changeStep(plan({}), shop.env()));
		expect([(await rowOf(2)).needs, (await rowOf(2)).crew]).toEqual([[], []]);
		done(await changeStep(plan({ needs: [one.id], crew: [shop.person] }), shop.env()));
		expect([(await rowOf(2)).needs, (await rowOf(2)).crew.length]).toEqual([[1], 1]);
		expect(await shop.store.read.need.count()).toBe(1);
	});

	it("steps planned together may need each other by their keys, but not in a circle", async () => {
		const circle = planStepsSchema.parse({
			machineId: machine.id,
			steps: [
				{ key: "a", kind: "repair", title: "a", needs: ["b"] },
				{ key: "b", kind: "repair", title: "b", needs: ["a"] },
			],
		});
		expect(refused(await planSteps(circle, shop.env())).code).toBe("needs-loop");
		expect(await shop.store.read.step.count()).toBe(0);
	});

	it("a form's plan wants at least a likely time, and says so at that field", () => {
		const read = planStepFormSchema.safeParse({
			machineId: "m",
			kind: "repair",
			title: "sand",
			minutes: { low: "", likely: "", high: "" },
		});
		expect(read.error?.issues.map(({ path }) => path.join("."))).toEqual(["minutes.likely"]);
		expect(planStepFormSchema.parse({ machineId: "m", kind: "repair", title: "sand", minutes: { likely: "1 h" } }).minutes).toEqual({
			low: 42,
			likely: 60,
			high: 120,
		});
	});
});

describe("the loop of needs", () => {
	it("is found whenever following needs can lead back, and every loop named is one", () => {
		const graph = fc.array(fc.array(fc.nat(7), { maxLength: 4 }), { minLength: 8, maxLength: 8 });
		fc.assert(
			fc.property(graph, (needs) => {
				const of = (id: string) => (needs[Number(id)] ?? []).map(String);
				const ids = needs.map((_, id) => String(id));
				const loop = loopOfNeeds(ids, of);
				// By definition: some step is reached from its own needs.
				const reaches = (from: string): Set<string> => {
					const seen = new Set<string>();
					const open = [...of(from)];
					for (let next = open.pop(); next !== undefined; next = open.pop()) {
						if (seen.has(next)) continue;
						seen.add(next);
						open.push(...of(next));
					}
					return seen;
				};
				expect(loop !== null).toBe(ids.some((id) => reaches(id).has(id)));
				for (const [at, id] of (loop ?? []).slice(0, -1).entries()) expect(of(id)).toContain(loop?.[at + 1]);
				if (loop) expect(loop.at(-1)).toBe(loop[0]);
			}),
			{ seed: 20260302, numRuns: 400 },
		);
	});
});
