// Time into money, at the rate that was in force on the day.

import { compareDays, type Day } from "@/lib/core/days";
import { dividedHalfUp } from "@/lib/core/decimals";
import { ok, type Result, refuse } from "@/lib/core/result";
import { type MinorUnits, minor } from "@/lib/money/money";

/** What a person costs and is charged at an hour, from a day on until a later rate takes over. */
export type Rate = { readonly from: Day; readonly costPerHour: MinorUnits; readonly chargePerHour: MinorUnits };

/** Whole minutes at a rate an hour, rounded half up. Each entry of work is rounded, then added, so that the lines add up. */
export function costOfMinutes(minutes: number, perHour: MinorUnits): MinorUnits {
	if (!Number.isSafeInteger(minutes)) throw new Error(`not whole minutes: ${minutes}`);
	return minor(dividedHalfUp(BigInt(minutes) * BigInt(perHour), 60n));
}

/** A person's rate in force on a day: the one with the latest start that is not after it. Requires one person's rates. */
export function rateOn(rates: readonly Rate[], on: Day): Result<Rate> {
	const begun = rates.filter((rate) => compareDays(rate.from, on) <= 0).sort((a, b) => compareDays(b.from, a.from));
	const [inForce] = begun;
	if (inForce !== undefined) return ok(inForce);
	return refuse("rate-missing", `No rate was in force on ${on}: enter one that starts on that day or before.`, { facts: { on } });
}
