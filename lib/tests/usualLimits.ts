// Limits that shops usually test against, each with its source, to choose from. Pure.
// Limits differ by country and change with each edition: a test stores its own limit with its source and date, so a
// change here changes no test that was made. Local codes and an electrically skilled person come first.
import {
	compareDecimals,
	type Decimal,
	decimal,
	decimalFrom,
	decimalText,
	dividedHalfUp,
	dividedUp,
	multiplyDecimals,
	shortest,
} from "@/lib/core/decimals";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Limit } from "@/lib/tests/limits";

/** How well a limit is known: read in a text that quotes the standard; recalled; a habit of the trade; this shop's own. */
export type Backing = "read in a source" | "from memory" | "common practice, no source" | "own limit";

export type UsualLimit = {
	readonly id: string;
	readonly test: string;
	readonly limit: Limit;
	readonly source: string;
	readonly backing: Backing;
	readonly note: string;
};

const VDE_2008 = "VDE 0701-0702:2008, read in a tester maker's overview";

/** What EN 50678 and EN 50699 changed for the protective conductor; shown beside every limit by cord length. */
export const NEWER_EARTH_RULE =
	"EN 50678 and EN 50699 (2020/21) differ: 0.3 \u03a9 holds up to 1.5 mm\u00b2 and 5 m only; for thicker or longer conductors the limit is computed, 0.1 \u03a9 at the least and 1 \u03a9 at the most.";

/**
 * The limit for the protective conductor of a cord, from plug pin to metal part, by VDE 0701-0702:2008: 0.3 Ω up to 5 m,
 * 0.1 Ω more for each further 7.5 m begun, never above 1 Ω. The length is decimal text, in metres.
 */
export function protectiveConductorLimit(cordMetres: string): Result<UsualLimit> {
	const length = decimalFrom(cordMetres);
	if (length === null || length.digits <= 0n) return refuse("cord-length", "Write the length of the cord in metres, like 2.5.");
	return ok({
		id: "earth-by-cord",
		test: `protective earth, plug pin to each metal part, cord of ${decimalText(length)} m`,
		limit: { kind: "at most", value: decimalText(shortest(ohmsFor(length))), unit: "\u03a9" },
		source: VDE_2008,
		backing: "read in a source",
		note: NEWER_EARTH_RULE,
	});
}

function ohmsFor(metres: Decimal): Decimal {
	const most = decimal("1.0");
	if (compareDecimals(metres, decimal("5")) <= 0) return decimal("0.3");
	// (metres - 5) / 7.5, in whole steps begun; both scaled to whole numbers.
	const scale = 10n ** BigInt(metres.places);
	const steps = dividedUp((metres.digits - 5n * scale) * 10n, 75n * scale);
	const ohms = { digits: 3n + steps, places: 1 };
	return compareDecimals(ohms, most) > 0 ? most : ohms;
}

/** A rail may be loaded with 80 % of its supply's rated current (amperes as decimal text). */
export function railLimit(ratedAmperes: string): Result<UsualLimit> {
	const rated = decimalFrom(ratedAmperes);
	if (rated === null || rated.digits <= 0n) return refuse("rated-current", "Write the supply's rated current in amperes, like 2.5.");
	const value = decimalText(shortest(multiplyDecimals(rated, decimal("0.8"))));
	return ok({
		id: "rail-80",
		test: "current on the rail, running",
		limit: { kind: "at most", value, unit: "A" },
		source: `own limit: 80 % of ${decimalText(rated)} A`,
		backing: "own limit",
		note: "Log the current at the start as well.",
	});
}

/** A fuse link may not be larger than the drawing says (amperes as decimal text). */
export function fuseLimit(drawnAmperes: string): Result<UsualLimit> {
	const drawn = decimalFrom(drawnAmperes);
	if (drawn === null || drawn.digits <= 0n) return refuse("drawn-fuse", "Write the fuse's rating as drawn, in amperes, like 1.");
	return ok({
		id: "fuse-as-drawn",
		test: "fuse link, rating read",
		limit: { kind: "at most", value: decimalText(drawn), unit: "A" },
		source: "the machine's own drawing",
		backing: "common practice, no source",
		note: "Eye and nose do not test a fuse: read it, then measure it. A UL and an IEC fuse of the same rating are not the same.",
	});
}

/** A transformer without load usually shows 5 to 12 % more than its rated voltage (volts as decimal text, kept to 0.1 V). */
export function noLoadLimit(ratedVolts: string): Result<UsualLimit> {
	const rated = decimalFrom(ratedVolts);
	if (rated === null || rated.digits <= 0n) return refuse("rated-voltage", "Write the winding's rated voltage, like 6.3.");
	const tenths = (permille: bigint) =>
		decimalText({ digits: dividedHalfUp(rated.digits * permille, 100n * 10n ** BigInt(rated.places)), places: 1 });
	return ok({
		id: "no-load",
		test: "transformer winding, no load",
		limit: { kind: "between", low: tenths(1050n), high: tenths(1120n), unit: "V" },
		source: "own limit: 5 to 12 % above rating",
		backing: "own limit",
		note: "6.3, 24 to 28 and 50 V AC are usual.",
	});
}

const usual = (id: string, test: string, limit: Limit, source: string, backing: Backing, note = ""): UsualLimit => ({
	id,
	test,
	limit,
	source,
	backing,
	note,
});
const atMost = (value: string, unit: string): Limit => ({ kind: "at most", value, unit });
const atLeast = (value: string, unit: string): Limit => ({ kind: "at least", value, unit });

/** The limits that need no further figure. Those that do: `protectiveConductorLimit`, `railLimit`, `fuseLimit`, `noLoadLimit`. */
export const USUAL_LIMITS: readonly UsualLimit[] = [
	usual(
		"movement",
		"free movement by hand, full cycle",
		{ kind: "words", words: ["free", "no tight spot"] },
		"own limit",
		"own limit",
		"Before any power; a spring returns by itself.",
	),
	usual(
		"earth-au",
		"protective earth, plug pin to each metal part",
		atMost("1", "\u03a9"),
		"AS/NZS 3760, read on appliance-test pages",
		"read in a source",
		"Australia and New Zealand.",
	),
	usual(
		"earth-uk",
		"protective earth without the cord's own resistance",
		atMost("0.1", "\u03a9"),
		"UK practice, read on appliance-test pages",
		"common practice, no source",
		"0.1 \u03a9 plus the resistance of the cord.",
	),
	usual(
		"insulation-1",
		"insulation, 500 V DC, class I",
		atLeast("1", "M\u03a9"),
		VDE_2008,
		"read in a source",
		"250 V first on doubtful old windings; disconnect electronics.",
	),
	usual(
		"insulation-2",
		"insulation, 500 V DC, class II",
		atLeast("2", "M\u03a9"),
		VDE_2008,
		"read in a source",
		"250 V first on doubtful old windings; disconnect electronics.",
	),
	usual("insulation-3", "insulation, class III", atLeast("0.25", "M\u03a9"), VDE_2008, "read in a source"),
	usual(
		"insulation-heater",
		"insulation, 500 V DC, class I with heaters above 3.5 kW",
		atLeast("0.3", "M\u03a9"),
		VDE_2008,
		"read in a source",
		"Digits partly lost in the copy that was read.",
	),
	usual(
		"earth-current",
		"protective conductor current",
		atMost("3.5", "mA"),
		VDE_2008,
		"read in a source",
		"Where the insulation test is not possible. Heaters above 3.5 kW: 1 mA for each kW, 10 mA at the most.",
	),
	usual("touch-current", "touch current", atMost("0.5", "mA"), VDE_2008, "read in a source", "Where the insulation test is not possible."),
	usual(
		"leakage-1-portable",
		"leakage current, class I portable",
		atMost("0.75", "mA"),
		"IEC 60335-1 clause 13.2, 4th edition, quoted in a test forum",
		"read in a source",
	),
	usual(
		"leakage-1-motor",
		"leakage current, class I stationary, motor-operated",
		atMost("3.5", "mA"),
		"IEC 60335-1 clause 13.2, 4th edition, quoted in a test forum",
		"read in a source",
	),
	usual(
		"leakage-2",
		"leakage current, class II",
		atMost("0.25", "mA"),
		"IEC 60335-1 clause 13.2, 4th edition, quoted in a test forum",
		"read in a source",
	),
	usual(
		"residual-voltage",
		"voltage left 5 s after switching off",
		atMost("60", "V"),
		"IEC 60204-1:2016, 18.5 and 6.2.4",
		"from memory",
		"Within 1 s where the plug's pins can be touched.",
	),
	usual(
		"polarity",
		"polarity: switch and fuse in the line",
		{ kind: "words", words: ["right"] },
		"common practice",
		"common practice, no source",
		"Old two-core cords are unmarked.",
	),
	usual(
		"child-touch",
		"voltage of what a child can touch",
		atMost("12", "V"),
		"a service manual for coin-operated rides",
		"read in a source",
		"Lamps, buttons, coin unit: extra-low voltage only.",
	),
	usual(
		"coins",
		"coins: good accepted / wrong rejected",
		{
			kind: "in turn",
			limits: [
				{ kind: "count", atLeast: 98, of: 100 },
				{ kind: "count", atLeast: 19, of: 20 },
			],
		},
		"own limit: 98 % and 95 %",
		"own limit",
		"Clean coins, worn coins, wet coins.",
	),
	usual("payout", "vend or payout", { kind: "count", atLeast: 50, of: 50 }, "own limit", "own limit", "A jam is worse than a miss."),
	usual(
		"plays",
		"plays in a row",
		{ kind: "count", atLeast: 200, of: 200 },
		"own limit",
		"own limit",
		"With the temperature at motor, transformer, ballast and supply.",
	),
	usual(
		"warmth",
		"warmth of a motor's case after the soak",
		{ kind: "rise", value: "40" },
		"own limit",
		"own limit",
		"Read the air around as well.",
	),
	usual("cord-pull", "cord pulled with 100 N, 25 times: moved by", atMost("2", "mm"), "in the manner of IEC 60335-1", "from memory"),
];
