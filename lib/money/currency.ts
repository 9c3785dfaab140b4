// Which currencies there are, and how many digits their smallest unit lies behind the point.
import { ok, type Result, refuse } from "@/lib/core/result";
import { ISO_4217 } from "@/lib/money/iso4217";

/** A currency's three-letter code of ISO 4217. */
export type CurrencyCode = keyof typeof ISO_4217;

/** Whether the text is a code of ISO 4217 that money can be kept in (not a metal, a fund unit without digits, or a test code). */
export function isCurrency(code: string): code is CurrencyCode {
	return Object.hasOwn(ISO_4217, code) && ISO_4217[code as CurrencyCode].digits !== null;
}

/** Reads a code that a person typed: `eur` is EUR. */
export function parseCurrency(text: string): Result<CurrencyCode> {
	const code = text.trim().toUpperCase();
	if (isCurrency(code)) return ok(code);
	return refuse("currency-unknown", "Write the three letters of the currency as banks do, like EUR, GBP or USD.");
}

/** Digits after the decimal point: EUR 2, JPY 0, KWD 3. Requires a currency that money can be kept in. */
export function minorDigits(code: CurrencyCode): number {
	const { digits } = ISO_4217[code];
	if (digits === null) throw new Error(`${code} has no smallest unit`);
	return digits;
}

/** The currency's name in English, for lists to choose from. */
export const currencyName = (code: CurrencyCode): string => ISO_4217[code].name;

/** All currencies that money can be kept in, by code. */
export const currencies = (): CurrencyCode[] => Object.keys(ISO_4217).filter(isCurrency).sort();

/** All of them to choose from: the shop's own, then those used before in the order given, then the rest by code. */
export const currenciesToChoose = (home: CurrencyCode, used: readonly string[]): CurrencyCode[] => [
	...new Set([home, ...used.filter(isCurrency), ...currencies()]),
];
