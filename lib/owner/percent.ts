// A percentage as a person types it: of tax, of handling, of contingency. Pure.
import { type Decimal, decimal, decimalFrom, decimalText, shortest } from "@/lib/core/decimals";
import { ok, type Result, refuse } from "@/lib/core/result";

const MOST_PLACES = 4;
const UNREADABLE = refuse("percent-unreadable", "Write the percentage in figures, like 21 or 7.7, or leave it empty.");

/**
 * Reads a percentage: `21`, `7.7`, `7,7`, `21 %`. Gives the shortest decimal text, so that 7.70 and 7.7 are one rate; ""
 * stays "", which is no percentage at all and not 0.
 */
export function parsePercent(text: string): Result<string> {
	const typed = text.trim().replace(/\s*%$/, "");
	if (typed === "") return text.trim() === "" ? ok("") : UNREADABLE;
	const read = decimalFrom(typed);
	if (read === null) return UNREADABLE;
	if (read.digits < 0n) return refuse("percent-negative", "A percentage is not below zero: write it without the minus.");
	const short = shortest(read);
	if (short.places > MOST_PLACES) return refuse("percent-too-fine", `Write the percentage with at most ${MOST_PLACES} decimals, like 7.7.`);
	if (short.digits > 100n * 10n ** BigInt(short.places))
		return refuse("percent-too-large", "The percentage is above 100: check for a decimal point that is missing.");
	return ok(decimalText(short));
}

/** The percentage as a number to compute with; "" counts as nothing. Requires text that `parsePercent` gave. */
export const percentOfText = (text: string): Decimal => (text === "" ? { digits: 0n, places: 0 } : shortest(decimal(text)));
