import { z } from "zod";
import { type Instant, isInstant } from "@/lib/core/instants";
import { parseMinutes } from "@/lib/core/minutes";
import { chosen, line, optionalChosen, optionalLine, words } from "@/lib/core/words";
import type { CurrencyCode } from "@/lib/money/currency";
import { parseAmount } from "@/lib/money/money";
import { typedMoment } from "@/lib/steps/typedMoment";

const option = (currency: CurrencyCode) =>
	z.object({
		words: line("the option", 300),
		cost: z
			.union([z.number().int().min(0), z.string().max(60, "Write the amount in figures.")])
			.default("")
			.transform((typed, check): number | null => {
				if (typeof typed === "number") return typed;
				if (typed.trim() === "") return null;
				const amount = parseAmount(typed, currency);
				if (amount.ok) return amount.value;
				check.addIssue({ code: "custom", message: amount.error.say });
				return z.NEVER;
			}),
		minutes: z
			.union([z.number().int().min(0), z.string().max(40, "Write the time shorter, like 1 h 30.")])
			.default("")
			.transform((typed, check): number | null => {
				if (typeof typed === "number") return typed;
				if (typed.trim() === "") return null;
				const minutes = parseMinutes(typed);
				if (minutes.ok) return minutes.value;
				check.addIssue({ code: "custom", message: minutes.error.say });
				return z.NEVER;
			}),
		loses: optionalLine("what reversal would lose", 300),
		state: z.enum(["open", "chosen", "refused"]).default("open"),
	});

export const recordDecisionSchema = (currency: CurrencyCode) =>
	z
		.object({
			machineId: chosen("the machine"),
			question: line("what is to be decided", 300),
			options: z
				.array(option(currency))
				.min(2, "Weigh at least two options; leaving it as it is may be one.")
				.max(8, "At most eight options."),
			stepId: optionalChosen,
			agreedBy: optionalLine("who agreed", 120),
			words: words("why", 1000),
			at: z
				.string()
				.refine(isInstant, "Write the moment like 2026-03-02T08:00:00.000Z.")
				.transform((text) => text as Instant)
				.optional(),
		})
		.superRefine(({ options }, check) => {
			if (options.filter(({ state }) => state === "chosen").length > 1)
				check.addIssue({ code: "custom", path: ["options"], message: "One option is chosen; the others are refused or still open." });
		});

/** What the form sends: the moment as a clock field holds it, in the shop's own time. */
export const recordDecisionFormSchema = (currency: CurrencyCode) => recordDecisionSchema(currency).safeExtend({ decided: typedMoment });

export type RecordDecision = z.output<ReturnType<typeof recordDecisionSchema>>;
