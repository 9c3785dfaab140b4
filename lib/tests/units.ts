// The units that a meter shows, and how they compare. Pure. Exact: factors are decimal numbers, never floating point.
import { type Decimal, decimal, multiplyDecimals } from "@/lib/core/decimals";

/** A unit by what it measures and its size; two units compare when they measure the same. */
type Unit = { readonly measures: string; readonly size: Decimal };

const BASES = ["\u03a9", "V", "A", "W", "VA", "Hz", "F", "N", "N m", "m", "g", "s"] as const;
const PREFIXES: Readonly<Record<string, string>> = {
	p: "0.000000000001",
	n: "0.000000001",
	"\u00b5": "0.000001",
	m: "0.001",
	c: "0.01",
	k: "1000",
	M: "1000000",
	G: "1000000000",
};

/** Units that are no base with a prefix, in terms of one. */
const OTHERS: Readonly<Record<string, { measures: string; size: string }>> = {
	min: { measures: "s", size: "60" },
	h: { measures: "s", size: "3600" },
	in: { measures: "m", size: "0.0254" },
	"N cm": { measures: "N m", size: "0.01" },
	"N mm": { measures: "N m", size: "0.001" },
};

/** Other ways to write a unit, by what people and meters write. */
const SPELLINGS: Readonly<Record<string, string>> = {
	sec: "s",
	secs: "s",
	mins: "min",
	hrs: "h",
	hours: "h",
	inch: "in",
	"1/min": "rpm",
	"/min": "rpm",
	"deg C": "\u00b0C",
	degC: "\u00b0C",
	deg: "\u00b0",
	Nm: "N m",
	"N\u00b7m": "N m",
	"N*m": "N m",
	Ncm: "N cm",
	Nmm: "N mm",
};

/** The unit as the tool writes it: `ohm`, `Ohm` and the ohm sign are all Ω, `uA` is µA, `Nm` is N m. */
export function unitAsWritten(text: string): string {
	const trimmed = text.trim().replace(/\s+/g, " ").replaceAll("\u2126", "\u03a9").replaceAll("\u03bc", "\u00b5");
	const spelled = SPELLINGS[trimmed];
	if (spelled !== undefined) return spelled;
	const ohms = /^([pn\u00b5umkMG]?) ?[Oo]hms?$/.exec(trimmed);
	if (ohms !== null) return `${ohms[1] === "u" ? "\u00b5" : ohms[1]}\u03a9`;
	const micro = /^u(V|A|W|F|m|s|g|\u03a9)$/.exec(trimmed);
	return micro === null ? trimmed : `\u00b5${micro[1]}`;
}

/** A value times its unit, in the base unit, and what is measured. An unknown unit measures itself, so it compares with itself only. */
export function inBase(value: Decimal, unit: string): { readonly measures: string; readonly value: Decimal } {
	const { measures, size } = unitOf(unitAsWritten(unit));
	return { measures, value: multiplyDecimals(value, size) };
}

function unitOf(unit: string): Unit {
	const other = OTHERS[unit];
	if (other !== undefined) return { measures: other.measures, size: decimal(other.size) };
	const base = BASES.find((known) => unit === known);
	if (base !== undefined) return { measures: base, size: decimal("1") };
	const prefix = PREFIXES[unit.slice(0, 1)];
	const rest = BASES.find((known) => unit.slice(1) === known);
	if (prefix !== undefined && rest !== undefined) return { measures: rest, size: decimal(prefix) };
	return { measures: unit, size: decimal("1") };
}
