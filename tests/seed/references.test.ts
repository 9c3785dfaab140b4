// Whatever the data names, exists; whatever it tags, checks.

import { describe, expect, test } from "vitest";
import { docksideMagpie } from "@/seed/data/docksideMagpie";
import { hairpinRidge } from "@/seed/data/hairpinRidge";
import { meteorMinnow } from "@/seed/data/meteorMinnow";
import { instruments, locations, people, suppliers } from "@/seed/data/shop";
import { skerryLight } from "@/seed/data/skerryLight";
import type { AlterationAt, Destination, Machine } from "@/seed/data/types";

const machines = [skerryLight, meteorMinnow, docksideMagpie, hairpinRidge];
const keys = <T extends { readonly key: string }>(list: readonly T[]) => new Set(list.map((each) => each.key));
const locationKeys = keys(locations);
const supplierKeys = keys(suppliers);

/** ISO 7064 MOD 37-2 over the digits, written here apart from the program's own. */
function checkCharacter(digits: string): string {
	const alphabet = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";
	const carry = [...digits].reduce((sum, digit) => ((sum + Number(digit)) * 2) % 37, 0);
	return alphabet[(38 - carry) % 37] ?? "";
}

const repeated = (list: readonly (string | number)[]) => list.filter((each, index) => list.indexOf(each) !== index);

test("a place lies in a place that is listed before it", () => {
	for (const [index, { parent, key }] of locations.entries())
		if (parent !== null) expect(keys(locations.slice(0, index)).has(parent), key).toBe(true);
	expect(repeated(locations.map((each) => each.key))).toEqual([]);
	expect(repeated(suppliers.map((each) => each.key))).toEqual([]);
});

describe.each(machines)("$name", (machine: Machine) => {
	const positions = new Set(machine.positions.map((each) => each.id));
	const parts = new Set([
		...machine.positions.filter((each) => each.asFound !== undefined && each.asFound.state !== "missing").map((each) => each.id),
		...machine.newParts.map((each) => each.key),
	]);
	const steps = new Set(machine.steps.map((each) => each.id));
	const bags = new Set(machine.bags.map((each) => each.number));
	const places = new Set(machine.places.map((each) => each.id));
	const conversions = new Set(machine.conversions.map((each) => each.id));
	const alterations = new Set(machine.alterations.map((each) => each.id));
	const tests = new Set(machine.tests.map((each) => each.id));
	const lines = new Set(machine.purchases.flatMap((each) => each.lines.map((line) => line.id)));

	test("nothing is listed twice", () => {
		for (const list of [
			machine.positions,
			machine.steps,
			machine.alterations,
			machine.tests,
			machine.conversions,
			machine.places,
			machine.purchases,
		])
			expect(repeated(list.map((each) => each.id))).toEqual([]);
		expect(repeated(machine.bags.map((each) => each.number))).toEqual([]);
		expect(repeated([...machine.positions.map((each) => each.id), ...machine.newParts.map((each) => each.key)])).toEqual([]);
	});

	test("a host, a blocker, a twin and a shared fixing are positions of this machine, a twin of a twin is the first", () => {
		for (const position of machine.positions) {
			if (position.hostPosition !== null) expect(positions.has(position.hostPosition), position.id).toBe(true);
			if (position.hostPart !== undefined) expect(parts.has(position.hostPart), position.id).toBe(true);
			if (position.mirrorOf !== undefined)
				expect(machine.positions.find((each) => each.id === position.mirrorOf)?.mirrorOf).toBe(position.id);
			for (const fixing of position.fixings) if (fixing.sharedWith !== undefined) expect(positions.has(fixing.sharedWith)).toBe(true);
		}
		for (const { blocker, blocked, side } of machine.obstructions) {
			expect(positions.has(blocker) && positions.has(blocked), `${blocker} ${blocked}`).toBe(true);
			if (side !== undefined) expect(machine.positions.find((each) => each.id === blocked)?.sides).toContain(side);
		}
		for (const hazard of machine.hazards) for (const id of hazard.positions) expect(positions.has(id)).toBe(true);
	});

	test("steps, moves, bags and changes name what there is", () => {
		const arrives = (to: Destination) =>
			"bag" in to
				? bags.has(to.bag)
				: "location" in to
					? locationKeys.has(to.location)
					: "tray" in to
						? locationKeys.has(to.tray)
						: positions.has(to.onPosition);
		for (const step of machine.steps) {
			for (const id of step.after) expect(steps.has(id), step.id).toBe(true);
			if (step.conversion !== undefined) expect(conversions.has(step.conversion), step.id).toBe(true);
			for (const move of step.moves) {
				expect(positions.has(move.position) && parts.has(move.part), `${step.id} ${move.position}`).toBe(true);
				if (move.kind === "take-out") expect(arrives(move.to), `${step.id} ${move.position}`).toBe(true);
			}
		}
		const at = (where: AlterationAt) =>
			"position" in where ? positions.has(where.position) : "part" in where ? parts.has(where.part) : places.has(where.place);
		for (const alteration of machine.alterations) {
			expect(at(alteration.at) && steps.has(alteration.step), alteration.id).toBe(true);
			if (alteration.conversion !== undefined)
				expect(machine.conversions.find((each) => each.id === alteration.conversion)?.alterations).toContain(alteration.id);
		}
		for (const conversion of machine.conversions) {
			expect([...conversion.partsOut, ...conversion.partsIn].every((part) => parts.has(part))).toBe(true);
			expect(
				conversion.alterations.every((id) => alterations.has(id)) &&
					conversion.steps.every((id) => steps.has(id)) &&
					conversion.tests.every((id) => tests.has(id)),
			).toBe(true);
		}
		for (const change of machine.connectionChanges) expect(positions.has(change.at) && steps.has(change.step)).toBe(true);
		for (const decision of machine.decisions) {
			expect(steps.has(decision.step), decision.id).toBe(true);
			expect(decision.options.filter((option) => option.chosen).length, decision.id).toBe(decision.agreedBy === "not answered yet" ? 0 : 1);
			for (const { does } of decision.options) {
				if (typeof does === "object") expect(parts.has("alters" in does ? does.alters : does.partsWith), decision.id).toBe(true);
			}
		}
		for (const item of [...machine.loans, ...machine.disposals, ...machine.digitalItems]) expect(parts.has(item.part)).toBe(true);
	});

	test("every tag carries its true check character, and none that is read as another", () => {
		for (const bag of machine.bags) {
			const number = String(bag.number).padStart(4, "0");
			const check = checkCharacter(`${machine.number}${number}`);
			expect(bag.tag).toBe(`${machine.number}-${number}-${check}`);
			expect("IO*".includes(check)).toBe(false);
		}
	});

	test("a bag lies somewhere, was packed in a step, and holds each taken-out part once", () => {
		for (const bag of machine.bags) {
			expect(locationKeys.has(bag.location) && steps.has(bag.packedIn), bag.tag).toBe(true);
			if (bag.emptiedIn !== undefined) expect(steps.has(bag.emptiedIn)).toBe(true);
			if (bag.parent !== undefined) expect(bags.has(bag.parent)).toBe(true);
			for (const content of bag.contents) {
				if (content.part !== undefined) expect(parts.has(content.part), bag.tag).toBe(true);
				if (content.fixingOf !== undefined) expect(positions.has(content.fixingOf), bag.tag).toBe(true);
			}
		}
		const bagged = machine.bags.flatMap((bag) => bag.contents.flatMap((content) => (content.part === undefined ? [] : [content.part])));
		expect(repeated(bagged)).toEqual([]);
		for (const step of machine.steps)
			for (const move of step.moves)
				if (move.kind === "take-out" && "bag" in move.to) expect(bagged, `${step.id} ${move.part}`).toContain(move.part);
	});

	test("purchases say who, what and where each line went, never more than there was", () => {
		for (const purchase of machine.purchases) {
			expect(supplierKeys.has(purchase.supplier), purchase.id).toBe(true);
			const pots = purchase.pots.reduce((total, pot) => total + (pot.kind === "discount" ? -pot.minor : pot.minor), 0);
			expect(purchase.lines.reduce((total, line) => total + line.netMinor, 0) + pots, purchase.id).toBe(purchase.paidMinor);
			for (const line of purchase.lines) {
				expect(line.uses.reduce((total, use) => total + use.quantity, 0)).toBeLessThanOrEqual(line.quantity);
				for (const use of line.uses) {
					if ("part" in use.for) expect(parts.has(use.for.part), line.id).toBe(true);
					if ("position" in use.for) expect(positions.has(use.for.position), line.id).toBe(true);
					if ("fixingOf" in use.for) expect(positions.has(use.for.fixingOf), line.id).toBe(true);
					if ("alteration" in use.for) expect(alterations.has(use.for.alteration), line.id).toBe(true);
				}
			}
		}
		for (const part of machine.newParts) for (const line of part.from) expect(lines.has(line), part.key).toBe(true);
		for (const cost of machine.otherCosts) if (cost.supplier !== undefined) expect(supplierKeys.has(cost.supplier)).toBe(true);
		for (const loan of machine.loans) expect(supplierKeys.has(loan.to)).toBe(true);
		for (const disposal of machine.disposals) expect(supplierKeys.has(disposal.by)).toBe(true);
	});

	test("what is present has an origin with evidence; what was not seen claims nothing", () => {
		for (const { id, asFound } of machine.positions) {
			if (asFound === undefined) continue;
			const judged = asFound.state === "present" || asFound.state === "wrong";
			expect(asFound.origin !== undefined, id).toBe(judged);
			if (judged) expect(asFound.evidence.length, id).toBeGreaterThan(0);
			if (asFound.state === "not-seen") expect(asFound.evidence, id).toEqual([]);
		}
	});

	test("instruments and people are the shop's own, and a skilled person does the electrical tests", () => {
		const skilled = new Set(people.filter((each) => each.electricallySkilled).map((each) => each.key));
		for (const { id, what, runs } of machine.tests) {
			for (const run of runs) {
				if (run.instrument !== undefined) expect(keys(instruments).has(run.instrument), id).toBe(true);
				if (/earth|insulation|polarity|fuse|conductor/.test(what)) expect(skilled.has(run.by), id).toBe(true);
			}
		}
	});
});

test("the demo shows what each machine is there for", () => {
	expect(docksideMagpie.positions.filter((each) => each.asFound?.state === "not-seen")).toHaveLength(10);
	expect(docksideMagpie.stateWords).toContain("10 positions");
	expect(docksideMagpie.positions.filter((each) => each.sides !== undefined).map((each) => each.id)).toEqual(["b09", "b14"]);
	expect(meteorMinnow.positions.filter((each) => each.mirrorOf !== undefined).map((each) => each.id)).toEqual(["a01", "a02", "a14", "a15"]);
	expect(meteorMinnow.loans.map((each) => each.part)).toEqual(["a23"]);
	expect(hairpinRidge.positions.filter((each) => each.whole).map((each) => each.id)).toEqual(["c18"]);
	expect(
		hairpinRidge.positions.flatMap((each) =>
			each.fixings.flatMap((fixing) => (fixing.sharedWith === undefined ? [] : [[each.id, fixing.sharedWith]])),
		),
	).toEqual([["c28", "c31"]]);
	expect(hairpinRidge.positions.find((each) => each.id === "c03")?.sides).toEqual(["front", "rear"]);
});
