// Using some of what a line bought. The machine is charged for what it got, the rest stays in stock.
// Pure. The rule: after every use, the charges so far should be the line's landed cost times the count used so far over
// the count bought, rounded half up; a use is charged the difference. So, while no use is struck out, the charges never
// drift by more than half a minor unit. Striking uses out can leave standing ones that were charged more than their
// share; a use is never charged less than nothing, so the next ones are free until the shares have caught up. In either
// case the charges never exceed the landed cost, and when the last piece is used they add up to it exactly.
import { dividedHalfUp } from "@/lib/core/decimals";
import { ok, type Result, refuse } from "@/lib/core/result";
import { type MinorUnits, minor, subtractMinor, sumMinor } from "@/lib/money/money";

/** A line as bought. `count` is whole: measure in a unit in which every use is whole too (mm, not m, where it matters). */
export type LineBought = { readonly landed: MinorUnits; readonly count: number };

/** A use that stands (not one entered in error): how many, and what was charged for them at the time. */
export type LineUse = { readonly count: number; readonly charged: MinorUnits };

/**
 * What the next `taking` of a line cost, never below zero. Counting on from what was charged before, and not from what
 * would be charged today, keeps the sum right also after a use was struck out as entered in error.
 * Requires a count above zero and whole numbers.
 */
export function costOfUse(line: LineBought, before: readonly LineUse[], taking: number): Result<MinorUnits> {
	requireCount(line.count);
	const used = before.reduce((sum, use) => sum + use.count, 0);
	if (!Number.isSafeInteger(taking) || taking <= 0)
		return refuse("use-not-whole", "Write how many were used as a whole number above zero.");
	const left = line.count - used;
	if (taking > left) {
		return refuse(
			"use-more-than-left",
			left === 0
				? "Nothing of this line is left: correct an earlier use, or buy more."
				: `Only ${left} of ${line.count} are left: use ${left} or fewer, or correct an earlier use.`,
			{
				facts: { left, taking },
			},
		);
	}
	const owed = subtractMinor(shareOf(line, used + taking), sumMinor(before.map((use) => use.charged)));
	return ok(owed > 0 ? owed : minor(0));
}

/** What is still in stock of a line: how many, and what they stand for. Uses and stock add up to the landed cost. */
export function leftOfLine(line: LineBought, uses: readonly LineUse[]): { readonly count: number; readonly value: MinorUnits } {
	requireCount(line.count);
	const used = uses.reduce((sum, use) => sum + use.count, 0);
	if (used > line.count) throw new Error(`${used} used of a line of ${line.count}`);
	return { count: line.count - used, value: subtractMinor(line.landed, sumMinor(uses.map((use) => use.charged))) };
}

/** The share of the landed cost that the first `used` of a line stand for, rounded half up. */
function shareOf(line: LineBought, used: number): MinorUnits {
	return minor(dividedHalfUp(BigInt(line.landed) * BigInt(used), BigInt(line.count)));
}

function requireCount(count: number): void {
	if (!Number.isSafeInteger(count) || count <= 0) throw new Error(`a line counts at least one, not ${count}`);
}
