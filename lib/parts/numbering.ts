// Which running numbers the next parts of a machine get. Pure.

import { ok, type Result } from "@/lib/core/result";
import { nextNumber } from "@/lib/tags/nextNumber";

/** The tags that a machine has given out so far. */
export type GivenTag = { readonly number: number; readonly partId: string | null };

/**
 * The next `count` running numbers for parts of `machine`: upwards from its last part's, passing over numbers that a bag
 * already bears or that are never printed.
 */
export function nextPartNumbers(machine: number, given: readonly GivenTag[], count: number): Result<number[]> {
	const taken = new Set(given.map((tag) => tag.number));
	const numbers: number[] = [];
	let last = 0;
	for (const tag of given) if (tag.partId !== null && tag.number > last) last = tag.number;
	while (numbers.length < count) {
		const next = nextNumber(last, machine);
		if (!next.ok) return next;
		last = next.value;
		if (!taken.has(last)) numbers.push(last);
	}
	return ok(numbers);
}
