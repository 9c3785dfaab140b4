// The check character at the end of every tag: ISO 7064, MOD 37-2 (a pure system).
// MOD 37-2 and not MOD 37,36, because the latter lets some swaps of two neighbours through: with two digits of machine
// and four of number, 12-0230-P and 12-0320-P would both be valid. The price is one more possible character, `*`.

/** The characters of MOD 37-2 in the order of their values: 0 to 9, A to Z, and `*` for 36 (only ever as the check character). */
export const CHECK_CHARACTERS = "0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ*";

const MODULUS = 37;
const RADIX = 2;

/**
 * The ISO 7064 MOD 37-2 check character over `body`, one of `CHECK_CHARACTERS`.
 *
 * Requires `body` in 0-9 and A-Z (upper case, no separators); anything else is a bug of the caller and throws.
 *
 * @example checkCharacterOf("120147") // "K"
 */
export function checkCharacterOf(body: string): string {
	let sum = 0;
	for (const character of body) {
		const value = CHECK_CHARACTERS.indexOf(character);
		if (value < 0 || character === "*") throw new RangeError(`no ISO 7064 character: ${JSON.stringify(character)}`);
		sum = ((sum + value) * RADIX) % MODULUS;
	}
	// The weighted sum of body and check character must leave 1.
	return CHECK_CHARACTERS.charAt((MODULUS + 1 - sum) % MODULUS);
}
