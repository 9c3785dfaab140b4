// Which number a new bag gets. Pure.

import { ok, type Refusal, type Result, refuse } from "@/lib/core/result";
import { nextNumber } from "@/lib/tags/nextNumber";
import { SHOP_WIDE } from "@/lib/tags/tag";

/** Bags are numbered from here on, so that a low number is a part's. */
export const FIRST_BAG = 201;

/**
 * The lowest usable number from 201 on that no tag of the machine has and no ready-made label bears.
 *
 * The lowest and not the last plus one: a sheet of ready-made tags used out of order would leave holes for ever.
 * `taken` holds the running numbers in use on the machine, in any order.
 */
export function freeBagNumber(machineNumber: number, taken: ReadonlySet<number>): Result<number, Refusal> {
	for (let after = FIRST_BAG - 1; ; ) {
		const next = nextNumber(after, machineNumber);
		if (!next.ok || !taken.has(next.value)) return next;
		after = next.value;
	}
}

/** Whether a tag with this machine number may be tied to a bag of the machine: its own, or one of the shop's ready-made. */
export function mayWear(tagMachine: number, machineNumber: number, tag: string): Result<true, Refusal> {
	if (tagMachine === machineNumber || tagMachine === SHOP_WIDE) return ok(true);
	return refuse(
		"tag-of-another-machine",
		`${tag} is a tag of machine ${tagMachine}. Use one of machine ${machineNumber}, or leave it out to take the next free number.`,
		{ fields: { tag: `A tag of machine ${tagMachine}.` }, facts: { tag, tagMachine, machineNumber } },
	);
}
