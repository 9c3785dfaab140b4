// Which running number comes next on a machine.

import { ok, type Refusal, type Result, refuse } from "@/lib/core/result";
import { LAST_NUMBER, usableNumber } from "@/lib/tags/tag";

/**
 * The first usable running number above `after` on `machine`; `after` is 0 for a machine without tags.
 * Numbers whose check character would be I, O or `*` are passed over. Refused once 9999 is used up.
 *
 * @example nextNumber(202, 12) // 204, since 12-0203 would end in *
 */
export function nextNumber(after: number, machine: number): Result<number, Refusal> {
	for (let number = Math.max(1, after + 1); number <= LAST_NUMBER; number++) {
		if (usableNumber(machine, number)) return ok(number);
	}
	return refuse(
		"tags-used-up",
		`Machine ${machine} has used every tag up to ${LAST_NUMBER}. Use the shop's own bags (machine 0) for what is left.`,
		{
			facts: { machine, after },
		},
	);
}
