// Decimal numbers exactly as they were typed: rates of exchange, readings of a meter, limits. Never floating point.

/** `digits` divided by ten to the power of `places`. */
export type Decimal = { readonly digits: bigint; readonly places: number };

const SHAPE = /^([+-]?)(\d+)(?:[.,](\d+))?$/;
// More places than any meter or bank shows; a limit, so that no text can make the numbers huge.
const MOST_CHARACTERS = 40;

/** Reads decimal text with a point or a comma, `0.9240`; null for anything else (also exponents and thousands separators). */
export function decimalFrom(text: string): Decimal | null {
	const typed = text.trim().replace("\u2212", "-");
	if (typed.length > MOST_CHARACTERS) return null;
	const match = SHAPE.exec(typed);
	if (match === null) return null;
	const [, sign, whole, part = ""] = match;
	const size = BigInt(`${whole}${part}`);
	return { digits: sign === "-" ? -size : size, places: part.length };
}

/** Decimal text that the program itself wrote. Anything else is a bug and throws. */
export function decimal(text: string): Decimal {
	const value = decimalFrom(text);
	if (value === null) throw new Error(`not a decimal number: ${JSON.stringify(text)}`);
	return value;
}

/** The text of a decimal number with all its places: `0.9240`. */
export function decimalText({ digits, places }: Decimal): string {
	const size = (digits < 0n ? -digits : digits).toString().padStart(places + 1, "0");
	const sign = digits < 0n ? "-" : "";
	return places === 0 ? `${sign}${size}` : `${sign}${size.slice(0, -places)}.${size.slice(-places)}`;
}

/** The same number without zeros at its end: `2.50` becomes 2.5. */
export function shortest({ digits, places }: Decimal): Decimal {
	let short = digits;
	let left = places;
	while (left > 0 && short % 10n === 0n) {
		short /= 10n;
		left -= 1;
	}
	return { digits: short, places: left };
}

/** Below zero, zero or above zero, as a is less than, equal to or more than b. */
export function compareDecimals(a: Decimal, b: Decimal): number {
	const [left, right] = aligned(a, b);
	return left < right ? -1 : left > right ? 1 : 0;
}

export function addDecimals(a: Decimal, b: Decimal): Decimal {
	const [left, right] = aligned(a, b);
	return { digits: left + right, places: Math.max(a.places, b.places) };
}

export function subtractDecimals(a: Decimal, b: Decimal): Decimal {
	const [left, right] = aligned(a, b);
	return { digits: left - right, places: Math.max(a.places, b.places) };
}

export const multiplyDecimals = (a: Decimal, b: Decimal): Decimal => ({ digits: a.digits * b.digits, places: a.places + b.places });

/** The number times ten to the power of `power`, exactly. */
export function timesTenTo({ digits, places }: Decimal, power: number): Decimal {
	const left = places - power;
	return left >= 0 ? { digits, places: left } : { digits: digits * 10n ** BigInt(-left), places: 0 };
}

/** a / b to the nearest whole number, half away from zero (what trade calls "half up"). Requires b above zero. */
export function dividedHalfUp(a: bigint, b: bigint): bigint {
	if (b <= 0n) throw new Error(`cannot share by ${b}`);
	const size = a < 0n ? -a : a;
	const rounded = (2n * size + b) / (2n * b);
	return a < 0n ? -rounded : rounded;
}

/** a / b rounded up, away from zero being no matter: the smallest whole number that is not below it. Requires b above zero. */
export function dividedUp(a: bigint, b: bigint): bigint {
	if (b <= 0n) throw new Error(`cannot share by ${b}`);
	const cut = a / b;
	return a > 0n && cut * b !== a ? cut + 1n : cut;
}

function aligned(a: Decimal, b: Decimal): [bigint, bigint] {
	const places = Math.max(a.places, b.places);
	return [a.digits * 10n ** BigInt(places - a.places), b.digits * 10n ** BigInt(places - b.places)];
}
