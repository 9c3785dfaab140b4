// What hinders a plan is said, one thing at a time, and nothing is left out of it silently.

import { describe, expect, it } from "vitest";
import { type FactPerson, type FactStep, type ShopFacts, shopAskedOf } from "@/lib/schedule/shopFacts";
import { shopPlanOf } from "@/lib/schedule/shopPlan";

const IN = [{ from: 0, until: 100_000 }];
const three = (likely: number) => ({ low: likely, likely, high: likely });
const person = (id: string, more: Partial<FactPerson> = {}): FactPerson => ({
	id,
	name: id,
	skills: "",
	isHere: true,
	windows: IN,
	costAMinute: 60,
	...more,
});
const step = (id: string, more: Partial<FactStep> = {}): FactStep => ({
	id,
	machineId: "m12",
	number: 1,
	title: id,
	estimate: three(60),
	spent: 0,
	wait: three(0),
	needs: [],
	rests: 0,
	crew: ["Ada"],
	skill: null,
	equipment: [],
	parcels: [],
	notBought: [],
	...more,
});
const facts = (steps: readonly FactStep[], more: Partial<ShopFacts> = {}): ShopFacts => ({
	people: [person("Ada"), person("Bo", { skills: "Finisher, electrically skilled" })],
	equipment: [{ id: "booth", name: "spray booth", count: 1 }],
	purchases: [],
	machines: [{ id: "m12", promised: null }],
	outside: [],
	steps,
	...more,
});
/** Doubts, steps without a date, and steps that are planned. */
const said = (asked: ShopFacts) => {
	const { doubts, undated, problem } = shopAskedOf(asked);
	return { doubts, undated, planned: problem.tasks.map(({ id }) => id) };
};

it("a plan without doubts plans every step", () => {
	expect(said(facts([step("a"), step("b", { needs: ["a"] })]))).toEqual({ doubts: [], undated: [], planned: ["a", "b"] });
});

describe("a step has no date, and what needs it neither, when", () => {
	const after = step("after", { needs: ["a"] });
	const without = {
		undated: [
			{ step: "a", after: null },
			{ step: "after", after: "a" },
		],
		planned: [],
	};

	it("its person has no hours", () => {
		expect(said(facts([step("a"), after], { people: [person("Ada", { windows: [] }), person("Bo")] }))).toEqual({
			...without,
			undated: [
				{ step: "a", after: null },
				{ step: "after", after: null },
			],
			doubts: [{ what: "no-hours", person: "Ada", name: "Ada" }],
		});
	});
	it("its person has left", () => {
		const asked = facts([step("a"), { ...after, crew: ["Bo"] }], { people: [person("Ada", { isHere: false }), person("Bo")] });
		expect(said(asked)).toEqual({ ...without, doubts: [{ what: "left", person: "Ada", name: "Ada", step: "a" }] });
	});
	it("nobody was named and nobody is able", () => {
		expect(said(facts([step("a", { crew: [], skill: "welder" }), after]))).toEqual({
			...without,
			doubts: [{ what: "nobody", step: "a", skill: "welder" }],
		});
	});
	it("those who do it together are never in together", () => {
		const people = [person("Ada", { windows: [{ from: 0, until: 100 }] }), person("Bo", { windows: [{ from: 100, until: 200 }] })];
		expect(said(facts([step("a", { crew: ["Ada", "Bo"] }), after], { people }))).toEqual({
			...without,
			doubts: [{ what: "never-together", step: "a", names: ["Ada", "Bo"] }],
		});
	});
	it("it holds more than there is, or what is gone", () => {
		const holds = (id: string, count: number) => [{ id, count, throughWait: false }];
		expect(said(facts([step("a", { equipment: holds("booth", 2) }), after]))).toEqual({
			...without,
			doubts: [{ what: "too-much-equipment", step: "a", name: "spray booth", wants: 2, has: 1 }],
		});
		expect(said(facts([step("a", { equipment: holds("crane", 1) }), after])).doubts).toEqual([
			{ what: "too-much-equipment", step: "a", name: "", wants: 1, has: 0 },
		]);
	});
	it("it waits for a purchase of which nobody said how long it takes", () => {
		const purchases = [{ id: "p7", number: 7, ordered: -10, lead: null }];
		expect(said(facts([step("a", { parcels: ["p7"] }), after], { purchases }))).toEqual({
			...without,
			doubts: [{ what: "no-lead", purchase: 7 }],
		});
	});
	it("it waits for itself: the loop is named step by step, each loop by itself", () => {
		const loops = [
			step("a", { needs: ["c"] }),
			step("b", { needs: ["a"] }),
			step("c", { needs: ["b"] }),
			step("x", { needs: ["y"] }),
			step("y", { needs: ["x"] }),
		];
		const { doubts, planned } = said(facts([...loops, step("free"), step("last", { needs: ["b"] })]));
		const rings = doubts.map((doubt) => (doubt.what === "loop" ? doubt.steps : []));
		for (const ring of rings) {
			expect(ring[0]).toBe(ring.at(-1));
			for (const [at, id] of ring.slice(0, -1).entries()) expect(loops.find((one) => one.id === id)?.needs).toContain(ring[at + 1]);
		}
		expect(rings.map((ring) => [...new Set(ring)].sort().join(""))).toEqual(["abc", "xy"]);
		expect(planned).toEqual(["free"]);
	});
});

describe("a date is doubtful, and that is said, when", () => {
	it("a parcel is later than the most that was thought: it is planned for a day from now", () => {
		const purchases = [{ id: "p7", number: 7, ordered: -5000, lead: { low: 100, likely: 1000, high: 2000 } }];
		const asked = facts([step("a", { parcels: ["p7"] })], { purchases });
		expect(said(asked).doubts).toEqual([{ what: "overdue", purchase: 7, minutes: 3000 }]);
		expect(shopPlanOf(shopAskedOf(asked).problem, 1).tasks[0]).toMatchObject({ start: 1440, waitedFor: { why: "parcel", parcel: 0 } });
	});
	it("nobody of its crew can do what it takes", () => {
		expect(said(facts([step("a", { skill: "electrically skilled" })]))).toMatchObject({
			planned: ["a"],
			doubts: [{ what: "unskilled", step: "a", skill: "electrically skilled" }],
		});
		expect(said(facts([step("a", { skill: "Electrically skilled", crew: ["Ada", "Bo"] })])).doubts).toEqual([]);
	});
	it("something for it is not bought, or a part of its machine is outside", () => {
		const outside = { machineId: "m12", tag: "12-0022-J", name: "motor", late: true };
		expect(said(facts([step("a", { notBought: ["gear oil"] })], { outside: [outside, { ...outside, machineId: "m13" }] }))).toEqual({
			planned: ["a"],
			undated: [],
			doubts: [
				{ what: "not-bought", step: "a", things: ["gear oil"] },
				{ what: "outside", ...outside },
			],
		});
	});
	it("it has taken longer than was likely", () => {
		const estimate = { low: 60, likely: 120, high: 480 };
		const { doubts } = said(facts([step("a", { estimate, spent: 150 }), step("b", { estimate, spent: 120 })]));
		expect(doubts).toEqual([{ what: "longer-than-thought", step: "a", spent: 150, left: expect.any(Number) }]);
	});
	it("it has no estimate, or its person no rate", () => {
		expect(said(facts([step("a", { estimate: three(0) })], { people: [person("Ada", { costAMinute: null })] })).doubts).toEqual([
			{ what: "no-estimate", step: "a" },
			{ what: "no-rate", person: "Ada", name: "Ada" },
		]);
	});
});

it("a step for nobody in particular is for whoever can do it and has hours", () => {
	const people = [
		person("Ada"),
		person("Bo", { skills: "welder" }),
		person("Cy", { skills: "welder", windows: [] }),
		person("Di", { skills: "welder", isHere: false }),
	];
	expect(
		shopAskedOf(facts([step("a", { crew: [] }), step("b", { crew: [], skill: "welder" })], { people })).problem.tasks.map(
			({ crews }) => crews,
		),
	).toEqual([[[0], [1]], [[1]]]);
});
