// ISO 7064 check characters against published examples and against an implementation that is not ours.
// Data: tests/outside/data/check-digits. published.json names its source example by example; reference.json was computed
// with cdigit 5.0.1 and python-stdnum, which agree on all of it; swap-limit.json is an exhaustive count.

import { mod37_2, mod37_36 } from "cdigit";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkCharacterOf } from "@/lib/tags/checkCharacter";
import { usableNumber } from "@/lib/tags/tag";
import published from "./data/check-digits/published.json";
import reference from "./data/check-digits/reference.json";
import swapLimit from "./data/check-digits/swap-limit.json";

const BODIES = 1_000_000;
const POWERS = [1, 10, 100, 1000, 10_000, 100_000];
const digitAt = (body: number, power: number): number => Math.floor(body / power) % 10;
const CHARACTERS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";

/** The value of the check character of every body 000000 to 999999 (two digits of machine, four of number). */
function checksOfAll(check: (body: string) => string): Uint8Array {
	return Uint8Array.from({ length: BODIES }, (_, body) => CHARACTERS.indexOf(check(String(body).padStart(6, "0"))));
}

/** Written apart from the product, after the standard's description of a hybrid system: MOD 37,36. */
function hybrid37_36(body: string): string {
	let product = 36;
	for (const character of body) {
		const sum = (product + CHARACTERS.indexOf(character)) % 36 || 36;
		product = (sum * 2) % 37;
	}
	return CHARACTERS.charAt((37 - product) % 36);
}

/** Swaps of two unlike neighbours, in body and check character, of tags that are printed: how many, and how many turn one into another. */
function neighbourSwaps(checks: Uint8Array, isPrinted: (check: number) => boolean): { tried: number; undetected: number } {
	let tried = 0;
	let undetected = 0;
	for (let body = 0; body < BODIES; body++) {
		const check = checks[body] ?? 0;
		if (!isPrinted(check)) continue;
		for (const power of POWERS.slice(0, 5)) {
			const low = digitAt(body, power);
			const high = digitAt(body, power * 10);
			if (low === high) continue;
			tried++;
			if (checks[body + (high - low) * power + (low - high) * power * 10] === check) undetected++;
		}
		const last = body % 10;
		if (check === last) continue;
		if (check < 10) {
			tried++;
			if (checks[body - last + check] === last) undetected++;
		}
	}
	return { tried, undetected };
}

describe("the check character of a tag", () => {
	const inMod37_2 = published.filter(({ scheme }) => scheme === "MOD 37-2");

	it.each(inMod37_2)("is the published one: $input gives $check ($source)", ({ input, check }) => {
		expect(checkCharacterOf(input)).toBe(check);
	});

	it("was compared with at least one published example", () => {
		expect(inMod37_2.length).toBeGreaterThan(0);
	});

	it.each(reference)("is the one that two other implementations compute: $input gives $mod37_2", ({ input, mod37_2 }) => {
		expect(checkCharacterOf(input)).toBe(mod37_2);
	});

	it("is the one that cdigit computes, for any text of digits and capitals", () => {
		fc.assert(
			fc.property(fc.stringMatching(/^[0-9A-Z]{1,24}$/), (body) => {
				expect(checkCharacterOf(body)).toBe(mod37_2.compute(body));
			}),
			{ seed: 7064, numRuns: 2000 },
		);
	});
});

describe("why tags use MOD 37-2", () => {
	const ours = checksOfAll(checkCharacterOf);

	it("MOD 37,36 lets some swaps of two neighbours through: both tags of each published pair are valid under it", () => {
		for (const [tag = "", other = ""] of swapLimit.examples) {
			expect(mod37_36.validate(tag) && mod37_36.validate(other)).toBe(true);
			expect(checkCharacterOf(tag.slice(0, 6))).not.toBe(checkCharacterOf(other.slice(0, 6)));
		}
	});

	it("MOD 37,36 lets 29,968 of 4,499,972 swaps through, counted over all bodies of six digits", () => {
		for (const input of reference.map((row) => row.input)) expect(hybrid37_36(input)).toBe(mod37_36.compute(input));
		const skipped = [CHARACTERS.indexOf("I"), CHARACTERS.indexOf("O")];
		const count = neighbourSwaps(checksOfAll(hybrid37_36), (check) => !skipped.includes(check));
		expect(count.undetected).toBe(swapLimit.undetected);
		expect(count.tried).toBe(swapLimit.neighbourSwapsTried);
	});

	it("MOD 37-2 lets no swap of two neighbours through, over all bodies of six digits", () => {
		expect(neighbourSwaps(ours, () => true)).toMatchObject({ undetected: 0 });
		expect(neighbourSwaps(ours, () => true).tried).toBeGreaterThan(4_500_000);
	});

	it("MOD 37-2 lets no single wrong digit through, over all bodies of six digits", () => {
		let undetected = 0;
		for (let body = 0; body < BODIES; body++) {
			for (const power of POWERS) {
				const digit = digitAt(body, power);
				for (let wrong = digit + 1; wrong < 10; wrong++) if (ours[body] === ours[body + (wrong - digit) * power]) undetected++;
			}
		}
		expect(undetected).toBe(0);
	});

	it("skipping I, O and * costs about one number in twelve", () => {
		let usable = 0;
		for (let number = 1; number <= 9999; number++) if (usableNumber(12, number)) usable++;
		expect(usable).toBeGreaterThan(9999 * 0.91);
		expect(usable).toBeLessThan(9999 * 0.93);
	});

	it("120-147 and 12-0147 have the same digits, so only the width of four tells them apart", () => {
		expect(checkCharacterOf(`120${"147"}`)).toBe(checkCharacterOf(`12${"0147"}`));
	});
});
