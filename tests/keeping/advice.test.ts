import { describe, expect, it } from "vitest";
import { adviceFor, adviceForBag, kindsOf } from "@/lib/keeping/advice";

// What must be kept apart is the trade's own list: conservation guides on plastics, rubber and bags where a guide was seen, else
// common practice, no source. Each rule stands beside its opposite: the same two things, one of them of another material.
const said = (thing: string, material: string, ...inBag: [string, string][]) =>
	adviceFor(
		{ name: thing, material },
		inBag.map(([name, its]) => ({ name, material: its })),
	).map((hint) => hint.say);

describe("what must not share a bag", () => {
	it.each([
		["Grommet", "rubber", "Bush", "brass", "Bush", "steel"],
		["Bush", "copper", "Tyre", "", "Wheel", "nylon"],
		["Pad", "felt", "Contact", "silver", "Contact", "aluminium"],
		["Lens", "celluloid", "Bracket", "steel", "Bracket", "nylon"],
		["Sleeve", "PVC", "Screw", "steel", "Knob", "bakelite"],
		["Ticket", "paper", "Gearbox", "", "Lever", "bakelite"],
		["Block", "oak", "Figure", "zinc alloy", "Figure", "plaster"],
		["Figure", "lead", "Panel", "hardboard", "Panel", "glass"],
	])("%s of %s with %s of %s is said, with %s of %s it is not", (name, material, bad, its, good, fine) => {
		expect(said(name, material, [bad, its])[0]).toMatch(/^Not in one bag with/);
		expect(said(name, material, [good, fine]).filter((say) => say.startsWith("Not in one bag"))).toEqual([]);
	});

	it("is said whichever of the two is in the bag first", () => {
		expect(said("Bush", "brass", ["Grommet", "rubber"])[0]).toMatch(/grommet.*sulphur/);
		expect(said("Grommet", "rubber", ["Bush", "brass"])[0]).toMatch(/bush.*sulphur/);
	});

	it("is said of a bag as it is, once for each two things", () => {
		const bag = [
			{ name: "Bush", material: "brass" },
			{ name: "Grommet", material: "rubber" },
		];
		expect(adviceForBag(bag).filter(({ say }) => say.includes("not in one bag"))).toHaveLength(1);
		expect(adviceForBag([{ name: "Knob", material: "bakelite" }])).toEqual([]);
	});
});

describe("what a thing asks for by itself", () => {
	it.each([
		["Spring", "steel", /dry/],
		["Instruction card", "", /Pin-hole/],
		["Door", "plywood", /Pin-hole/],
		["Battery", "", /leaks/],
		["Lens", "cellulose nitrate", /aired and alone/],
		["Flex", "PVC", /Soft PVC/],
		["O-ring", "", /Rubber by itself/],
	])("%s of %s", (name, material, words) => {
		expect(said(name, material).join(" ")).toMatch(words);
	});

	it("is nothing for what keeps anyhow", () => {
		expect(said("Knob", "bakelite")).toEqual([]);
	});

	it("always names its source", () => {
		const hints = adviceFor({ name: "Grommet", material: "rubber" }, [{ name: "Bush", material: "brass" }]);
		expect(hints.length).toBeGreaterThan(1);
		for (const { source } of hints) expect(source).toMatch(/guides|common practice, no source/);
	});
});

describe("a material is known by its words", () => {
	it.each([
		["wood screw", "", []],
		["lead wire", "", []],
		["mains lead", "", []],
		["lead to coil", "", []],
		["mains lead", "PVC", ["soft plastic"]],
		["lead weight", "", ["lead or zinc"]],
		["weight", "lead", ["lead or zinc"]],
		["drive belt", "", ["rubber"]],
		["drive belt", "leather", []],
		["drive belt, leather", "", []],
		["drive belt, steel", "", ["steel", "metal"]],
		["tyre", "rubber", ["rubber"]],
		["circuit card", "", []],
		["Figure", "die-cast zinc alloy", ["lead or zinc", "metal"]],
		["Spring", "phosphor bronze", ["metal"]],
	])("%s %s", (name, material, kinds) => {
		expect(kindsOf({ name, material })).toEqual(kinds);
	});
});
