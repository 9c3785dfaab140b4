// What a bag may do. Pure: plain data in, a ruling out.

import { ok, type Refusal, type Result, refuse } from "@/lib/core/result";
import type { BagPlace, BagRole, PlaceKind } from "@/lib/generated/prisma/enums";
import { type LeavingPart, mayGoOut } from "@/lib/parts/rules";

/** A bag as the rules see it. */
export type BagFact = {
	readonly id: string;
	readonly tag: string;
	readonly machineId: string | null;
	/** Null for the shop's own. */
	readonly machineNumber: number | null;
	readonly place: BagPlace;
	readonly role: BagRole;
	/** The tag of the bag that is out of the shop, or missing, with it: its own, or that of a bag around it; null when it is here. */
	readonly outIn: string | null;
};

/** How the words of a bag that nobody can find begin, and what they are unless more is known. */
export const NOT_FOUND_BEGINS = "not found";
export const NOT_FOUND = `${NOT_FOUND_BEGINS} where it should be`;

/** Whether the reason for which a bag is not here says that it is missing: then nobody said that it left the shop. */
export const isNotFound = (why: string): boolean => why.toLowerCase().startsWith(NOT_FOUND_BEGINS);

const whose = (bag: BagFact): string => (bag.machineNumber === null ? "the shop" : `machine ${bag.machineNumber}`);

/** Whether something of a machine (null: of the shop) may go into the bag: it is there, and no other machine's. */
export function mayHold(bag: BagFact, ofMachineId: string | null): Result<true, Refusal> {
	if (bag.place === "void") {
		return refuse("bag-void", `${bag.tag} was taken out of use. Choose another bag, or make a new one.`, { facts: { bag: bag.tag } });
	}
	if (bag.outIn !== null) {
		const out = bag.outIn === bag.tag ? `${bag.tag} is not here.` : `${bag.tag} is in ${bag.outIn}, which is not here.`;
		return refuse("bag-out", `${out} Say where that bag lies now, or choose another.`, { facts: { bag: bag.tag, out: bag.outIn } });
	}
	if (bag.machineId !== null && bag.machineId !== ofMachineId) {
		return refuse(
			"bag-of-another-machine",
			`${bag.tag} belongs to ${whose(bag)}. Choose a bag of this machine or one of the shop's own, so that the things of one machine stay together.`,
			{ facts: { bag: bag.tag, machine: bag.machineNumber } },
		);
	}
	return ok(true);
}

/**
 * Whether the bag may go into `target`. `around` are the bags around the target, innermost first and without it.
 * Rule 1: a bag is never inside itself.
 */
export function mayGoInto(bag: BagFact, target: BagFact, around: readonly BagFact[]): Result<true, Refusal> {
	if (bag.id === target.id) {
		return refuse("bag-inside-itself", `${bag.tag} cannot go into itself. Choose another bag.`, { facts: { way: [bag.tag] } });
	}
	const depth = around.findIndex((outer) => outer.id === bag.id);
	if (depth >= 0) {
		const way = [target.tag, ...around.slice(0, depth + 1).map((outer) => outer.tag)];
		return refuse(
			"bag-inside-itself",
			`${bag.tag} would be inside itself: ${way.slice(0, -1).join(" is in ")} is in ${bag.tag}. Take ${way[depth] ?? target.tag} out of it first.`,
			{ facts: { way } },
		);
	}
	return mayHold(target, bag.machineId);
}

/**
 * Whether the bag may leave the shop: its parts go with it, and each must be free to go as if it went by itself. A bag
 * knows no day on which it is due back, so an original in it goes out by its own page, where that day is said.
 */
export function mayGoOutWith(bag: BagFact, parts: readonly LeavingPart[]): Result<true, Refusal> {
	if (bag.outIn !== null) return ok(true); // it was asked when it left
	const kept = parts.filter((part) => !mayGoOut(part, null).ok);
	if (kept.length === 0) return ok(true);
	const [it, is, goes] = kept.length === 1 ? ["it", "is original: it goes", "it is"] : ["each", "are original: they go", "they are"];
	const shown = kept.slice(0, MOST_NAMED).map((part) => [part.tag, lower(part.name)].filter(Boolean).join(" "));
	const more = kept.length > MOST_NAMED ? ` and ${kept.length - MOST_NAMED} more` : "";
	return refuse(
		"original-needs-due-day",
		`In ${bag.tag}, ${shown.join(", ")}${more} ${is} out only with a day on which ${goes} due back. Send ${it} out on its own page with that day, or take ${it} out of the bag, first.`,
		{ facts: { bag: bag.tag, parts: kept.map((part) => part.tag) } },
	);
}

/** A sentence names so many parts. */
const MOST_NAMED = 5;

/** Whether the bag may be taken out of use: only when nothing is in it. */
export function mayVoid(bag: BagFact, inIt: { parts: number; fixings: number; bags: number }): Result<true, Refusal> {
	if (bag.place === "void") return refuse("bag-void", `${bag.tag} is out of use already.`, { facts: { bag: bag.tag } });
	const left = [counted(inIt.parts, "part"), counted(inIt.fixings, "lot of fixings", "lots of fixings"), counted(inIt.bags, "bag")].filter(
		(words) => words !== null,
	);
	if (left.length === 0) return ok(true);
	return refuse("bag-not-empty", `${bag.tag} still holds ${left.join(" and ")}. Take everything out first.`, {
		facts: { bag: bag.tag, ...inIt },
	});
}

const counted = (count: number, one: string, many = `${one}s`): string | null =>
	count === 0 ? null : count === 1 ? `1 ${one}` : `${count} ${many}`;

/** Whether a part that lies in `place` may be put elsewhere in the shop; a lost one that turns up may. */
export function mayMove(part: { name: string; place: PlaceKind; fittedIn: string | null }): Result<true, Refusal> {
	switch (part.place) {
		case "bag":
		case "location":
		case "bench":
		case "lost":
			return ok(true);
		case "fitted":
			return refuse("part-fitted", `The ${lower(part.name)} is fitted in ${part.fittedIn ?? "the machine"}. Take it out first.`);
		case "out":
			return refuse("part-out", `The ${lower(part.name)} is out of the shop. Say that it came back first.`);
		case "sold":
			return refuse("part-sold", `The ${lower(part.name)} was sold. It cannot be put away here.`);
		case "scrapped":
			return refuse("part-scrapped", `The ${lower(part.name)} was scrapped. If that was a mistake, correct it on the part's page.`);
		case "void":
			return refuse("part-void", `The ${lower(part.name)} was entered in error. Choose the right part.`);
	}
}

/** A name inside a sentence: its first letter small, unless the second is a capital too ("AC gearmotor"). */
export const lower = (name: string): string => (/^[A-Z][a-z ]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name);
