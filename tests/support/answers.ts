import type { Refusal, Result } from "@/lib/core/result";

/** The value of a deed that must succeed. */
export function done<T>(result: Result<T>): T {
	if (!result.ok) throw new Error(`${result.error.code}: ${result.error.say}`);
	return result.value;
}

/** Why a deed that must be refused was. */
export function refused<T>(result: Result<T>): Refusal {
	if (result.ok) throw new Error("it was not refused");
	return result.error;
}
