// Money is a whole number of the currency's smallest unit. Rule 6: no floating point, and a total is the sum of the lines shown.
import { ok, type Result, refuse } from "@/lib/core/result";
import { type CurrencyCode, isCurrency, minorDigits } from "@/lib/money/currency";

declare const minorMark: unique symbol;

/** A whole number of a currency's smallest unit: cents for EUR, yen for JPY. */
export type MinorUnits = number & { readonly [minorMark]: "minor units" };

/** An amount with its currency. Two currencies cannot be added: it does not compile, and at run time it is a bug. */
export type Money<C extends CurrencyCode = CurrencyCode> = { readonly minor: MinorUnits; readonly currency: C };

/** The largest amount that can be typed: far above any machine, far below the edge of exact whole numbers. */
export const LARGEST_TYPED_MINOR = 999_999_999_999;

/** The number as minor units. Requires a whole number within the safe range: anything else is a bug and throws. */
export function minor(amount: number | bigint): MinorUnits {
	const number = Number(amount);
	if (!Number.isSafeInteger(number)) throw new Error(`not an exact amount of minor units: ${amount}`);
	return (number === 0 ? 0 : number) as MinorUnits; // -0 would be written differently from 0 in some texts
}

/** No amount takes more characters; it keeps a pasted page from being read as one. */
const LONGEST_TYPED = 60;

/** The signs that people type in place of a code, where they mean one currency only in the shop's own country. */
const SYMBOLS: Readonly<Partial<Record<CurrencyCode, string>>> = { EUR: "\u20ac", GBP: "\u00a3", USD: "$", JPY: "\u00a5" };

export const NOTHING: MinorUnits = minor(0);

/** An amount of a currency. */
export const money = <C extends CurrencyCode>(amount: number | bigint, currency: C): Money<C> => ({ minor: minor(amount), currency });

/** The sum of amounts in one currency, the empty sum being 0. */
export function sumMinor(amounts: Iterable<MinorUnits>): MinorUnits {
	let total = 0n;
	for (const amount of amounts) total += BigInt(amount);
	return minor(total);
}

export const addMinor = (a: MinorUnits, b: MinorUnits): MinorUnits => minor(a + b);
export const subtractMinor = (a: MinorUnits, b: MinorUnits): MinorUnits => minor(a - b);

/** a + b. Requires one currency. */
export function add<C extends CurrencyCode>(a: Money<C>, b: Money<NoInfer<C>>): Money<C> {
	requireSameCurrency(a, b);
	return { minor: addMinor(a.minor, b.minor), currency: a.currency };
}

/** a - b. Requires one currency. */
export function subtract<C extends CurrencyCode>(a: Money<C>, b: Money<NoInfer<C>>): Money<C> {
	requireSameCurrency(a, b);
	return { minor: subtractMinor(a.minor, b.minor), currency: a.currency };
}

/** The sum of amounts in the given currency. Requires that all are in it. */
export function sum<C extends CurrencyCode>(currency: C, amounts: readonly Money<NoInfer<C>>[]): Money<C> {
	for (const amount of amounts) requireSameCurrency({ currency }, amount);
	return { minor: sumMinor(amounts.map((amount) => amount.minor)), currency };
}

/** The amount as plain decimal text, for files and for fields of a form: `1234.50`, `-0.05`. */
export function decimalAmount(amount: MinorUnits, currency: CurrencyCode): string {
	const digits = minorDigits(currency);
	const size = Math.abs(amount)
		.toString()
		.padStart(digits + 1, "0");
	const sign = amount < 0 ? "-" : "";
	return digits === 0 ? `${sign}${size}` : `${sign}${size.slice(0, -digits)}.${size.slice(-digits)}`;
}

/** The amount for people, without its currency, for the columns of a table that names it once: `1,234.50`. */
export function formatAmount(amount: MinorUnits, currency: CurrencyCode): string {
	const [whole = "", part] = decimalAmount(amount, currency).split(".");
	const grouped = whole.replace(/\B(?=(\d{3})+$)/g, ",");
	return part === undefined ? grouped : `${grouped}.${part}`;
}

/** The amount for people: `1,234.50 EUR`. */
export const formatMoney = (amount: MinorUnits, currency: CurrencyCode): string => `${formatAmount(amount, currency)} ${currency}`;

/**
 * Reads an amount that a person typed, in the given currency: `84.5`, `1,234.50`, `1.234,50`, `1 234`, `EUR 84.50`.
 * What could be meant in two ways, like `1,234` where there are cents, is refused with both readings.
 */
export function parseAmount(text: string, currency: CurrencyCode, options: { readonly mayBeNegative?: boolean } = {}): Result<MinorUnits> {
	const digits = minorDigits(currency);
	const example = decimalAmount(minor(8450), currency);
	const unreadable = refuse("amount-unreadable", `Write the amount in figures, like ${example}.`);

	if (text.length > LONGEST_TYPED) return unreadable;
	const code = /^([A-Za-z]{3})?\s*(.*?)\s*([A-Za-z]{3})?$/s.exec(withoutSymbol(text.trim(), currency));
	if (code === null) return unreadable;
	const [, before, body = "", after] = code;
	// A word of other letters, or without a figure, names no currency: cheap is not CHE.
	if (/\p{L}/u.test(body)) return unreadable;
	for (const named of [before, after]) {
		if (named !== undefined && !isCurrency(named.toUpperCase())) return unreadable;
		if (named !== undefined && named.toUpperCase() !== currency) {
			if (!/\d/.test(body)) return unreadable;
			return refuse("amount-other-currency", `This amount is kept in ${currency}: convert the ${named.toUpperCase()} first.`);
		}
	}
	if (before !== undefined && after !== undefined) return unreadable;

	const signed = /^([-+\u2212]?)\s*(.+)$/s.exec(body);
	if (signed === null) return body === "" ? refuse("amount-missing", `Write the amount, like ${example}.`) : unreadable;
	const negative = signed[1] === "-" || signed[1] === "\u2212";
	if (negative && options.mayBeNegative !== true)
		return refuse("amount-negative", "The amount cannot be below zero: write it without the minus.");

	// Spaces (also the narrow ones that programs print) and apostrophes only ever group thousands.
	const figures = (signed[2] ?? "").replace(/[\u00a0\u2009\u202f ]/g, "'").replace(/\u2019/g, "'");
	const split = splitNumber(figures, digits);
	if (split.kind === "unreadable") return unreadable;
	if (split.kind === "two-ways") {
		return refuse("amount-two-ways", `${body} can be read in two ways: write ${split.whole} or ${split.asPart}.`);
	}
	if (split.part.length > digits) {
		const most = digits === 0 ? `${currency} has no decimals` : `${currency} has ${digits} decimals at most`;
		return refuse("amount-too-many-decimals", `${most}: write the amount like ${example}.`);
	}
	const size = BigInt(`${split.whole}${split.part.padEnd(digits, "0")}`);
	if (size > BigInt(LARGEST_TYPED_MINOR)) {
		return refuse(
			"amount-too-large",
			`The amount is larger than ${formatMoney(minor(LARGEST_TYPED_MINOR), currency)}: check for digits too many.`,
		);
	}
	return ok(minor(negative ? -size : size));
}

type Split =
	| { readonly kind: "number"; readonly whole: string; readonly part: string }
	| { readonly kind: "two-ways"; readonly whole: string; readonly asPart: string }
	| { readonly kind: "unreadable" };

/** Finds which separator is the decimal one: the last, unless it comes more than once or stands before three digits alone. */
function splitNumber(text: string, digits: number): Split {
	if (/^\d+$/.test(text)) return { kind: "number", whole: text, part: "" };
	const lone = /^(\d*)([.,])(\d+)$/.exec(text);
	if (lone !== null) {
		const [, whole = "", separator, part = ""] = lone;
		const couldGroup = /^[1-9]\d{0,2}$/.test(whole) && part.length === 3;
		// With three decimals the point is the decimal one, so that what decimalAmount wrote into a field is read back.
		if (!couldGroup || (digits >= 3 && separator === ".")) return { kind: "number", whole: whole === "" ? "0" : whole, part };
		if (digits === 0) return { kind: "number", whole: `${whole}${part}`, part: "" };
		return { kind: "two-ways", whole: `${whole}${part}`, asPart: `${whole}.${part.slice(0, digits)}` };
	}
	const grouped = /^(\d{1,3}(?:([.,'])\d{3})(?:\2\d{3})*)(?:([.,])(\d+))?$/.exec(text);
	if (grouped === null || grouped[2] === grouped[3]) return { kind: "unreadable" };
	return { kind: "number", whole: (grouped[1] ?? "").replace(/[.,']/g, ""), part: grouped[4] ?? "" };
}

function withoutSymbol(text: string, currency: CurrencyCode): string {
	const symbol = SYMBOLS[currency];
	if (symbol === undefined) return text;
	if (text.startsWith(symbol)) return text.slice(symbol.length).trim();
	return text.endsWith(symbol) ? text.slice(0, -symbol.length).trim() : text;
}

function requireSameCurrency(a: { readonly currency: CurrencyCode }, b: { readonly currency: CurrencyCode }): void {
	if (a.currency !== b.currency) throw new Error(`cannot add ${b.currency} to ${a.currency}`);
}
