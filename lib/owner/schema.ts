import { z } from "zod";
import { dayField, optionalDay } from "@/lib/core/dayFields";
import { chosen, line, optionalChosen, words } from "@/lib/core/words";
import type { CurrencyCode } from "@/lib/money/currency";
import { type MinorUnits, minor, parseAmount } from "@/lib/money/money";
import { parsePercent } from "@/lib/owner/percent";
import { typedMoment } from "@/lib/steps/typedMoment";

export const PAPER_KINDS = ["quote", "more", "statement"] as const;

/** The kinds of paper, as a heading calls them. */
export const PAPER_KIND_WORDS: Readonly<Record<(typeof PAPER_KINDS)[number], string>> = {
	quote: "Quote",
	more: "More work found",
	statement: "Statement",
};

export const PAYMENT_KINDS = ["deposit", "payment", "refund"] as const;
export const PAYMENT_KIND_WORDS: Readonly<Record<(typeof PAYMENT_KINDS)[number], string>> = {
	deposit: "deposit",
	payment: "payment",
	refund: "given back",
};

const percent = z
	.string()
	.max(40, "Write the percentage in figures, like 21 or 7.7, or leave it empty.")
	.default("")
	.transform((text, check): string => {
		const read = parsePercent(text);
		if (read.ok) return read.value;
		check.addIssue({ code: "custom", message: read.error.say });
		return z.NEVER;
	});

const TOO_LONG = "Write the amount in figures.";

/** An amount typed in the shop's currency, or minor units from a program. Empty is not nothing: `missing` says what to write. */
const amount = (currency: CurrencyCode, missing: string, mayBeNegative: boolean) =>
	z.union([z.number(), z.string().max(60, TOO_LONG)], TOO_LONG).transform((typed, check): MinorUnits => {
		const say = (message: string) => {
			check.addIssue({ code: "custom", message });
			return z.NEVER;
		};
		if (typeof typed === "number") return Number.isSafeInteger(typed) ? minor(typed) : say("Whole minor units.");
		if (typed.trim() === "") return say(missing);
		const read = parseAmount(typed, currency, { mayBeNegative });
		return read.ok ? read.value : say(read.error.say);
	});

/** An amount that need not be named: empty is null, which is not nothing. */
const optionalAmount = (currency: CurrencyCode) =>
	z
		.union([z.number(), z.string().max(60, TOO_LONG)], TOO_LONG)
		.nullish()
		.transform((typed, check): MinorUnits | null => {
			if (typed === null || typed === undefined || (typeof typed === "string" && typed.trim() === "")) return null;
			if (typeof typed === "number" && Number.isSafeInteger(typed) && typed >= 0) return minor(typed);
			const read = parseAmount(String(typed), currency);
			if (read.ok) return read.value;
			check.addIssue({ code: "custom", message: read.error.say });
			return z.NEVER;
		});

export const MOST_LINES = 200;

/** A paper as it is given: from then on nothing of it changes but the answer. */
export const givePaperSchema = (currency: CurrencyCode) =>
	z
		.object({
			machineId: chosen("the machine"),
			kind: z.enum(PAPER_KINDS, "Say what kind of paper it is."),
			day: dayField("it is given"),
			/** A quote holds until then; a statement is due then. */
			untilDay: optionalDay,
			/** Why more is to be done; only on a paper that says so. */
			why: words("why more is to be done", 1000),
			/** What holds, in plain words. */
			terms: words("the terms", 2000),
			limit: optionalAmount(currency),
			/** Per cent on parts that the lines were made with. */
			handling: percent,
			/** On a quote: the agreed papers that the lines were made with. Not said: all that are agreed. */
			takesIn: z.array(chosen("the paper")).max(200, "At most 200 papers.").optional(),
			lines: z
				.array(
					z.object({
						words: line("what the line is for", 200),
						net: amount(currency, "Write what the line comes to; 0 if it is free.", true),
						tax: percent,
						/** The added step or wanted part that the line stands for. */
						about: optionalChosen,
					}),
				)
				.min(1, "Write at least one line.")
				.max(MOST_LINES, `At most ${MOST_LINES} lines a paper: put some together.`),
		})
		.superRefine((paper, check) => {
			if (paper.untilDay !== null && paper.untilDay < paper.day)
				check.addIssue({
					code: "custom",
					path: ["untilDay"],
					message: "Before the day on which it is given. Write a later day, or leave it empty.",
				});
			if (paper.kind === "more" && paper.why === "")
				check.addIssue({ code: "custom", path: ["why"], message: "Say what was found, and why it has to be done." });
		});

/** The owner's answer; the moment is an instant made by the action from what a clock field holds. */
const answer = {
	paperId: chosen("the paper"),
	answer: z.enum(["agreed", "refused"], "Say whether the owner agreed."),
	by: line("who answered"),
	how: line("how the answer came", 200),
};
export const answerPaperFormSchema = z.object({ ...answer, answered: typedMoment });
export const withdrawPaperSchema = z.object({ paperId: chosen("the paper"), why: line("why it is taken back", 200) });

export const addPaymentSchema = (currency: CurrencyCode) =>
	z.object({
		machineId: chosen("the machine"),
		kind: z.enum(PAYMENT_KINDS, "Say what kind of payment it is."),
		day: dayField("on which the money came or went"),
		amount: amount(currency, "Write how much.", false).refine((paid) => paid > 0, "Write an amount above nothing."),
		words: line("how it was paid", 200),
	});
export const takeBackPaymentSchema = z.object({ paymentId: chosen("the payment"), why: line("why it was wrong", 200) });

export type GivePaper = z.output<ReturnType<typeof givePaperSchema>>;
export type AnswerPaper = Omit<z.output<typeof answerPaperFormSchema>, "answered"> & { readonly at: string | undefined };
export type WithdrawPaper = z.output<typeof withdrawPaperSchema>;
export type AddPayment = z.output<ReturnType<typeof addPaymentSchema>>;
export type TakeBackPayment = z.output<typeof takeBackPaymentSchema>;
