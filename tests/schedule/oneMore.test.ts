import { describe, expect, it } from "vitest";
import { seededRandom } from "@/lib/core/random";
import { oneMore, withSecond } from "@/lib/schedule/oneMore";
import { shopPlanOf } from "@/lib/schedule/shopPlan";
import { PLANNED } from "@/tests/money/machine12";
import { wrongsOfShopPlan } from "@/tests/schedule/checkShopPlan";
import { makeShop } from "@/tests/schedule/makeShop";
import { ALWAYS_IN, skerryShop, WHO } from "@/tests/schedule/skerryPlan";

describe("one more helper in the acceptance scenario, round the clock", () => {
	const problem = skerryShop(PLANNED, ALWAYS_IN);
	const plan = shopPlanOf(problem, 1);
	const gains = new Map(oneMore(problem, plan, 1, 400).map(({ person, inAll }) => [WHO[person], inAll]));

	it("a second finisher brings it from 16,975 to 16,940 minutes, because S37 and S38 both need C", () => {
		expect(plan.makespan).toBe(16_975);
		expect(gains.get("C")).toBe(35);
		const [s37, s38] = ["S37", "S38"].map((id) => plan.tasks.find((task) => task.id === id));
		const later = (s37?.start ?? 0) > (s38?.start ?? 0) ? s37 : s38;
		expect(later?.waitedFor).toMatchObject({ why: "person", person: WHO.indexOf("C") });
	});

	it("a second mechanic or electrician brings nothing: a cure is on the chain", () => {
		expect([gains.get("A"), gains.get("B")]).toEqual([0, 0]);
	});

	it("in random shops where nothing is promised a helper never costs time, and helps in many", () => {
		let helped = 0;
		for (let seed = 1; seed <= 40; seed++) {
			const { problem } = makeShop(seededRandom(9000 + seed), 14);
			const free = { ...problem, machines: problem.machines.map(({ id }) => ({ id, promised: null })) };
			const few = 30;
			const plan = shopPlanOf(free, 1, few);
			for (const { inAll } of oneMore(free, plan, 1, few)) {
				expect({ seed, isNoLoss: inAll >= 0 }).toEqual({ seed, isNoLoss: true });
				if (inAll > 0) helped += 1;
			}
		}
		expect(helped).toBeGreaterThan(10);
	});

	it("with a second one the plan can be worked, and the same step is not done twice", () => {
		const second = withSecond(problem, 2);
		const plan = shopPlanOf(second, 1, 200);
		expect(wrongsOfShopPlan(second, plan)).toEqual([]);
		expect(plan.tasks.length).toBe(PLANNED.length);
	});
});
