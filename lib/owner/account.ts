// Where a customer's machine stands with its owner: agreed, limit, spent, at completion, paid, still due. Pure.
//
// Spent and at completion are at charge rates and before tax, and so is the limit: like is held against like. Paid and still
// due are money that changes hands, with tax.

import type { Day } from "@/lib/core/days";
import { type MinorUnits, minor, NOTHING, sumMinor } from "@/lib/money/money";
import { overLimit } from "@/lib/money/summary";
import {
	type Chargeable,
	chargedSteps,
	costToCome,
	type MissingRate,
	type OwnerReturn,
	usedLines,
	withHandling,
} from "@/lib/owner/charged";
import type { Covered } from "@/lib/owner/proposal";
import { type TaxedLine, type Totals, totalsOf } from "@/lib/owner/totals";

export type PaperKind = "quote" | "more" | "statement";
export type PaperState = "given" | "agreed" | "refused" | "withdrawn";

export type AccountPaper = {
	readonly id: string;
	readonly kind: PaperKind;
	readonly number: number;
	readonly state: PaperState;
	readonly day: Day;
	/** The entry with which it was given: which of two papers is the later one. */
	readonly givenEntry: number;
	/** The entry since which it is agreed to; null while it is not. */
	readonly agreedEntry: number | null;
	/** Of a quote: the agreed papers that its lines take in; null in an older book, which does not say. */
	readonly takesIn: readonly string[] | null;
	readonly limit: MinorUnits | null;
	readonly lines: readonly TaxedLine[];
	/** Added steps and wanted parts that it speaks of. */
	readonly about: readonly string[];
	/** Per cent on parts that it was made with. */
	readonly handling: string;
};

export type AccountPayment = { readonly kind: "deposit" | "payment" | "refund"; readonly amount: MinorUnits };

/** Why it will come to more: a line of the plan, and by how much. */
export type Reason = { readonly what: string; readonly over: MinorUnits };

export type Account = {
	/** The papers that make up what was agreed: the last agreed quote, and more work agreed to that it does not take in. */
	readonly agreedPapers: readonly AccountPaper[];
	readonly agreed: Totals;
	/** The limit of the last agreed paper that names one; null when none does. */
	readonly limit: MinorUnits | null;
	readonly spent: MinorUnits;
	readonly toCome: MinorUnits;
	readonly atCompletion: MinorUnits;
	readonly paid: MinorUnits;
	/** The statement that stands, or null while there is none. */
	readonly statement: AccountPaper | null;
	/** Of the statement, or of what was agreed while there is none; below nought when too much was paid. */
	readonly due: MinorUnits;
	/** Quotes and more work found that wait for the owner's answer. */
	readonly waiting: readonly AccountPaper[];
	/** By how much at completion lies over the limit, or over what was agreed where no limit was named; null when it does not. */
	readonly over: { readonly than: "limit" | "agreed"; readonly by: MinorUnits; readonly because: readonly Reason[] } | null;
	readonly missingRates: readonly MissingRate[];
	/** Sent back, and no seller has answered: in none of these figures. */
	readonly awaited: readonly OwnerReturn[];
	/** Kinds of which there are more rows than are read: the rest is in none of these figures. */
	readonly leftOut: readonly string[];
};

/**
 * The papers that make up what was agreed: the last agreed quote, and more work agreed to that its lines do not take in.
 * What the owner agreed to while the quote lay there is in neither but its own paper.
 */
export function agreedOf(papers: readonly AccountPaper[]): AccountPaper[] {
	const agreed = papers.filter(({ state, kind }) => state === "agreed" && kind !== "statement").sort(byEntry);
	const last = agreed.findLast(({ kind }) => kind === "quote");
	return agreed.filter((paper) => paper === last || (paper.kind === "more" && !(last && takesIn(last, paper))));
}

/** Whether a quote has another paper's lines in its own. An older book does not say: what was agreed to before it was given. */
const takesIn = (quote: AccountPaper, paper: AccountPaper): boolean =>
	quote.takesIn?.includes(paper.id) ?? (paper.agreedEntry !== null && paper.agreedEntry < quote.givenEntry);

/** Added steps and parts that need no new paper: those of a paper that was agreed to, or that still waits for its answer. */
export const coveredBy = (papers: readonly AccountPaper[], states: readonly PaperState[] = ["given", "agreed"]): Covered =>
	new Set(papers.filter(({ kind, state }) => kind === "more" && states.includes(state)).flatMap(({ about }) => about));

/** The statement that stands: the last one that was neither refused nor withdrawn. */
export const standingStatement = (papers: readonly AccountPaper[]): AccountPaper | null =>
	papers
		.filter(({ kind, state }) => kind === "statement" && (state === "given" || state === "agreed"))
		.sort(byEntry)
		.at(-1) ?? null;

/** What was paid: deposits and payments, less what was given back. */
export const paidOf = (payments: readonly AccountPayment[]): MinorUnits =>
	sumMinor(payments.map(({ kind, amount }) => (kind === "refund" ? minor(-amount) : amount)));

/** Where the owner stands today. */
export function accountOf(input: {
	readonly of: Chargeable;
	readonly papers: readonly AccountPaper[];
	/** Those that stand. */
	readonly payments: readonly AccountPayment[];
	readonly today: Day;
}): Account {
	const { of, papers, today } = input;
	const agreedPapers = agreedOf(papers);
	const agreed = totalsOf(agreedPapers.flatMap(({ lines }) => lines));
	const handling = agreedPapers.at(-1)?.handling ?? "";
	const covered = coveredBy(papers, ["agreed"]);
	const ratesOn = (agreedPapers.find(({ kind }) => kind === "quote") ?? agreedPapers.at(0))?.day ?? today;

	const { steps, missingRates } = chargedSteps(of, { ratesOn, today });
	const planned = (addedWhy: string, id: string): boolean => addedWhy === "" || covered.has(id);
	const labour = steps.map(({ step, estimated, spent, toCome }) => ({
		what: `Step ${step.number}, ${step.title}${step.addedWhy === "" ? "" : `, added: ${step.addedWhy}`}`,
		planned: planned(step.addedWhy, step.id) ? estimated : NOTHING,
		spent,
		toCome,
	}));
	// What the lines of a statement come to, each rounded by itself: a sum rounded once would be another figure.
	const used = sumMinor(usedLines(of.uses).map(({ landed }) => withHandling(landed, handling)));
	const off = sumMinor(of.offPrice.map(({ amount }) => withHandling(minor(-amount), handling)));
	const kept = sumMinor(of.returns.map((returned) => returned.kept));
	const parts = [
		{
			what: "Parts and materials used",
			planned: sumMinor(
				of.wanted
					.filter(({ id, stands, addedWhy }) => stands === "used" && planned(addedWhy, id))
					.map(({ estimated }) => withHandling(estimated, handling)),
			),
			spent: used,
			toCome: NOTHING,
		},
		...of.wanted
			.filter(({ stands }) => stands === "to-come")
			.map(({ id, words, estimated, toCome: left, addedWhy }) => ({
				what: `${words}${addedWhy === "" ? "" : `, added: ${addedWhy}`}`,
				planned: planned(addedWhy, id) ? withHandling(estimated, handling) : NOTHING,
				spent: NOTHING,
				toCome: withHandling(left, handling),
			})),
	];
	const costs = of.costs.map((cost) => ({ what: cost.words, planned: cost.estimated, spent: cost.spent, toCome: costToCome(cost) }));
	const returned = [
		{ what: "Taken off the price by sellers", planned: NOTHING, spent: off, toCome: NOTHING },
		{ what: "Sent back, what sellers kept", planned: NOTHING, spent: kept, toCome: NOTHING },
	];
	const rows = [...labour, ...parts, ...returned, ...costs];
	const spent = sumMinor(rows.map((row) => row.spent));
	const toCome = sumMinor(rows.map((row) => row.toCome));
	const atCompletion = sumMinor([spent, toCome]);

	const limit = agreedPapers.findLast((paper) => paper.limit !== null)?.limit ?? null;
	const over = agreedPapers.length === 0 ? NOTHING : overLimit(atCompletion, limit ?? agreed.net);
	const statement = standingStatement(papers);
	const paid = paidOf(input.payments);
	return {
		agreedPapers,
		agreed,
		limit,
		spent,
		toCome,
		atCompletion,
		paid,
		statement,
		due: minor((statement ? totalsOf(statement.lines).total : agreed.total) - paid),
		waiting: papers.filter(({ kind, state }) => state === "given" && kind !== "statement").sort(byEntry),
		over:
			over > 0
				? {
						than: limit === null ? "agreed" : "limit",
						by: over,
						because: rows
							.map((row) => ({ what: row.what, over: minor(row.spent + row.toCome - row.planned) }))
							.filter((reason) => reason.over > 0)
							.sort((a, b) => b.over - a.over || (a.what < b.what ? -1 : 1)),
					}
				: null,
		missingRates,
		awaited: of.returns.filter(({ awaited }) => awaited > 0),
		leftOut: of.leftOut,
	};
}

const byEntry = (a: { readonly givenEntry: number }, b: { readonly givenEntry: number }): number => a.givenEntry - b.givenEntry;
