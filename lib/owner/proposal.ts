// The lines that the book itself proposes for a paper. Pure; the desk changes them before the paper is given.

import type { Day } from "@/lib/core/days";
import { formatMinutes } from "@/lib/core/minutes";
import { percentOf } from "@/lib/money/exchange";
import { type MinorUnits, minor, NOTHING, sumMinor } from "@/lib/money/money";
import { type Sixths, sixthsToMinutes } from "@/lib/money/pert";
import {
	type Chargeable,
	type ChargedStep,
	chargedSteps,
	costToCome,
	type MissingRate,
	type OwnerOffPrice,
	type OwnerReturn,
	type UsedLine,
	usedLines,
	withHandling,
} from "@/lib/owner/charged";
import { percentOfText } from "@/lib/owner/percent";
import { STEP_KIND_WORDS, STEP_KINDS } from "@/lib/steps/schema";

/** How labour is put into lines. */
export type Grouping = "kind" | "person";

/** A line before handling. `net` is null where a rate is missing: it is never silently nothing. */
export type BasisLine = {
	readonly words: string;
	readonly net: MinorUnits | null;
	/** The added step, or the wanted part, that the line stands for; null for all others. */
	readonly about: string | null;
};

/** What a paper's lines are made from: with it the desk can have them laid out in another way without asking the book again. */
export type Basis = {
	readonly labour: Readonly<Record<Grouping, readonly BasisLine[]>>;
	/** Landed, before handling; below nought for what sellers took off the price. */
	readonly parts: readonly BasisLine[];
	readonly costs: readonly BasisLine[];
	readonly missingRates: readonly MissingRate[];
	/** Steps that are planned for nobody: their time is in no line. */
	readonly nobody: readonly number[];
	/** What was sent back and no seller has answered for: it is in no line. */
	readonly awaited: readonly OwnerReturn[];
};

export type Layout = {
	readonly by: Grouping;
	/** Per cent on parts; "" for none. */
	readonly handling: string;
	/** Per cent on everything else; "" for no such line. */
	readonly contingency: string;
};

/** The lines, in the order labour, parts, other costs, contingency. Requires percentages as `parsePercent` gives them. */
export function proposedLines(basis: Basis, { by, handling, contingency }: Layout): BasisLine[] {
	const parts = basis.parts.map((line) => ({ ...line, net: line.net === null ? null : withHandling(line.net, handling) }));
	const lines = [...basis.labour[by], ...parts, ...basis.costs];
	if (contingency === "" || lines.length === 0) return lines;
	const unknown = lines.some(({ net }) => net === null);
	const all = sumMinor(lines.map(({ net }) => net ?? NOTHING));
	return [
		...lines,
		{ words: `Contingency, ${contingency} %`, net: unknown ? null : percentOf(all, percentOfText(contingency)), about: null },
	];
}

/** What is already agreed of what was added to the plan: the ids of steps and wanted parts. */
export type Covered = ReadonlySet<string>;

/**
 * For a quote, of the whole job: the first plan with what was since agreed to, at the rates of the day; parts used, and
 * parts still wanted; other costs.
 */
export function quoteBasis(of: Chargeable, { today, covered }: { readonly today: Day; readonly covered: Covered }): Basis {
	const mine = of.steps.filter((step) => step.state !== "dropped" && (step.addedWhy === "" || covered.has(step.id)));
	const { steps, missingRates } = chargedSteps({ steps: mine, work: [], persons: of.persons }, { ratesOn: today, today });
	const wanted = of.wanted.filter(({ id, stands, addedWhy }) => stands === "to-come" && (addedWhy === "" || covered.has(id)));
	const apart = notAsked(of, covered);
	const used = usedLines(of.uses).filter(({ lineId }) => !apart.has(lineId));
	return {
		labour: bothWays(steps, missingRates, "planned"),
		parts: [
			...used.map(usedLine),
			...of.offPrice.map(offPriceLine),
			...wanted.map(({ words, toCome }) => ({ words, net: toCome, about: null })),
		],
		costs: [
			...of.costs.map((cost) => ({ words: cost.words, net: sumMinor([cost.spent, costToCome(cost)]), about: null })),
			...of.returns.flatMap(keptLine),
		],
		missingRates,
		nobody: withoutCrew(mine),
		awaited: of.returns.filter(({ awaited }) => awaited > 0),
	};
}

/** For more work found: each step and each part that was added to the plan and is in no paper yet, a line each. */
export function moreBasis(of: Chargeable, { today, covered }: { readonly today: Day; readonly covered: Covered }): Basis {
	const mine = of.steps.filter((step) => step.state !== "dropped" && step.addedWhy !== "" && !covered.has(step.id));
	const { steps, missingRates } = chargedSteps({ steps: mine, work: [], persons: of.persons }, { ratesOn: today, today });
	const lines = steps.map(({ step, persons, estimated }): BasisLine => {
		const known = !persons.some(({ name }) => missingRates.some((rate) => rate.name === name));
		return { words: `Step ${step.number}: ${step.title}`, net: known && step.crew.length > 0 ? estimated : null, about: step.id };
	});
	const apart = notAsked(of, covered);
	// What was used already is asked about as well; it stands with the first part that was bought with its line.
	const usedFor = (part: string) => usedLines(of.uses).filter(({ lineId }) => apart.get(lineId) === part);
	return {
		labour: { kind: lines, person: lines },
		parts: of.wanted
			.filter(({ id, stands, addedWhy }) => addedWhy !== "" && !covered.has(id) && (stands === "to-come" || usedFor(id).length > 0))
			.map(({ id, words, toCome }) => ({ words, net: sumMinor([toCome, ...usedFor(id).map(({ landed }) => landed)]), about: id })),
		costs: [],
		missingRates,
		nobody: withoutCrew(mine),
		awaited: [],
	};
}

/** For a statement: what was really done. Time at the rate of its own day, parts used, and what else was spent. */
export function statementBasis(of: Chargeable, today: Day): Basis {
	const asWorked = of.steps.map((step) => ({ ...step, crew: [] }));
	const { steps, missingRates } = chargedSteps({ steps: asWorked, work: of.work, persons: of.persons }, { ratesOn: today, today });
	return {
		labour: bothWays(steps, missingRates, "worked"),
		parts: [...usedLines(of.uses).map(usedLine), ...of.offPrice.map(offPriceLine)],
		costs: [
			...of.costs.filter(({ spent }) => spent > 0).map(({ words, spent }) => ({ words, net: spent, about: null })),
			...of.returns.flatMap(keptLine),
		],
		missingRates,
		nobody: [],
		awaited: of.returns.filter(({ awaited }) => awaited > 0),
	};
}

/** Lines that were bought only for what was added and the owner has not agreed to, each with the first wanted part that it was for. */
function notAsked({ wanted }: Pick<Chargeable, "wanted">, covered: Covered): ReadonlyMap<string, string> {
	const planned = new Set(wanted.flatMap(({ id, lineId, addedWhy }) => (addedWhy === "" || covered.has(id) ? [lineId] : [])));
	const apart = new Map<string, string>();
	for (const { id, lineId } of wanted) if (lineId !== null && !planned.has(lineId) && !apart.has(lineId)) apart.set(lineId, id);
	return apart;
}

const usedLine = ({ what, count, landed }: UsedLine): BasisLine => ({ words: `${count} × ${what}`, net: landed, about: null });

const offPriceLine = ({ purchase, amount }: OwnerOffPrice): BasisLine => ({
	words: `Taken off the price, purchase ${purchase}`,
	net: minor(-amount),
	about: null,
});

/** What a seller did not give back of something sent back; no line where nothing stays. */
const keptLine = ({ what, count, kept }: OwnerReturn): BasisLine[] =>
	kept > 0 ? [{ words: `${count} × ${what} sent back, what the seller kept`, net: kept, about: null }] : [];

type What = "planned" | "worked";

const bothWays = (steps: readonly ChargedStep[], missing: readonly MissingRate[], what: What): Basis["labour"] => ({
	kind: labourByKind(steps, missing, what),
	person: labourByPerson(steps, missing, what),
});

type Share = { readonly name: string; readonly sixths: Sixths; readonly net: MinorUnits };

/** What each person has in a step, of what is planned or of what was worked; those with no time in it are left out. */
const sharesOf = ({ persons }: ChargedStep, what: What): Share[] =>
	persons
		.map(({ name, plannedSixths, minutes, estimated, spent }) =>
			what === "planned" ? { name, sixths: plannedSixths, net: estimated } : { name, sixths: 6 * minutes, net: spent },
		)
		.filter(({ sixths }) => sixths > 0);

function labourByKind(steps: readonly ChargedStep[], missing: readonly MissingRate[], what: What): BasisLine[] {
	return STEP_KINDS.flatMap((kind) => {
		const ofKind = steps.filter(({ step }) => step.kind === kind);
		return lineOf(
			STEP_KIND_WORDS[kind],
			ofKind.flatMap((step) => sharesOf(step, what)),
			missing,
			what,
		);
	});
}

function labourByPerson(steps: readonly ChargedStep[], missing: readonly MissingRate[], what: What): BasisLine[] {
	const persons = new Map(steps.flatMap((step) => step.persons.map(({ personId, name }) => [personId, name] as const)));
	return [...persons].flatMap(([id, name]) =>
		lineOf(
			name,
			steps.flatMap((step) => sharesOf({ ...step, persons: step.persons.filter(({ personId }) => personId === id) }, what)),
			missing,
			what,
		),
	);
}

/** One line of labour, or none where nobody has any time. The time in its words is for reading; the net is summed, not computed from it. */
function lineOf(words: string, shares: readonly Share[], missing: readonly MissingRate[], what: What): BasisLine[] {
	if (shares.length === 0) return [];
	const known = !shares.some(({ name }) => missing.some((rate) => rate.name === name));
	const time = formatMinutes(sixthsToMinutes(shares.reduce((sum, { sixths }) => sum + sixths, 0)));
	return [
		{
			words: `Labour, ${words}: ${what === "planned" ? `about ${time}` : time}`,
			net: known ? sumMinor(shares.map(({ net }) => net)) : null,
			about: null,
		},
	];
}

const withoutCrew = (steps: readonly { readonly number: number; readonly crew: readonly string[] }[]): number[] =>
	steps.filter(({ crew }) => crew.length === 0).map(({ number }) => number);
