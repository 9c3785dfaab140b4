import { z } from "zod";
import { type Instant, isInstant } from "@/lib/core/instants";
import { parseMinutes } from "@/lib/core/minutes";
import { chosen, line, optionalChosen, optionalLine, words } from "@/lib/core/words";
import type { CurrencyCode } from "@/lib/money/currency";
import { parseAmount } from "@/lib/money/money";
import { typedMoment } from "@/lib/steps/typedMoment";

/** What an option would do to the machine, as the form and the page call it. */
export const DOES_WORDS = {
	nothing: "nothing that lasts",
	alter: "alters something",
	parting: "parts with a part for good",
	other: "something else",
} as const;

/** A thing as a list sends it: "position:ID" or "part:ID". */
const THING = /^(position|part):([\w-]{1,64})$/;

/** The position or the part that a list's value stands for. */
export function thingOf(thing: string): { readonly positionId: string | null; readonly partId: string | null } {
	const [, kind, id = null] = THING.exec(thing) ?? [];
	return { positionId: kind === "position" ? id : null, partId: kind === "part" ? id : null };
}

const cost = (currency: CurrencyCode) =>
	z
		.union([z.number(), z.string().max(60, "Write the amount in figures.")])
		.default("")
		.transform((typed, check): number | null => {
			if (typeof typed === "string" && typed.trim() === "") return null;
			// A number is whole minor units already.
			if (typeof typed === "number" && Number.isSafeInteger(typed) && typed >= 0) return typed;
			const amount = parseAmount(typeof typed === "string" ? typed : typed < 0 ? "-1" : "broken", currency);
			if (amount.ok) return amount.value;
			check.addIssue({ code: "custom", message: amount.error.say });
			return z.NEVER;
		});

const minutes = z
	.union([z.number(), z.string().max(40, "Write the time shorter, like 1 h 30.")])
	.default("")
	.transform((typed, check): number | null => {
		if (typeof typed === "string" && typed.trim() === "") return null;
		const read = parseMinutes(String(typed));
		if (read.ok) return read.value;
		check.addIssue({ code: "custom", message: read.error.say });
		return z.NEVER;
	});

const option = (currency: CurrencyCode) =>
	z
		.object({
			words: line("the option", 300),
			cost: cost(currency),
			minutes,
			does: z.enum(["nothing", "alter", "parting", "other"], "Say what it would do to the machine.").default("other"),
			/** What it would alter, or the part that it would part with. */
			thing: z.string().max(80, "Choose from the list.").default(""),
			undo: z.enum(["clean", "trace", "never"], "Say whether it could be undone.").nullish(),
			loses: optionalLine("what reversal would lose", 300),
			state: z.enum(["open", "chosen", "refused"]).default("open"),
		})
		.transform(({ thing, undo, ...said }, check): OptionTyped => {
			if (said.does !== "alter" && said.does !== "parting") return { ...said, positionId: null, partId: null, undo: null };
			const { positionId, partId } = thingOf(thing);
			const wrong = (field: string, message: string) => {
				check.addIssue({ code: "custom", path: [field], message });
				return z.NEVER;
			};
			if (said.does === "parting") {
				return partId === null ? wrong("thing", "Choose the part that goes.") : { ...said, positionId: null, partId, undo: null };
			}
			if (positionId === null && partId === null) return wrong("thing", "Choose what it would alter.");
			return undo ? { ...said, positionId, partId, undo } : wrong("undo", "Say whether it could be undone.");
		});

type OptionTyped = {
	readonly words: string;
	readonly cost: number | null;
	readonly minutes: number | null;
	readonly does: keyof typeof DOES_WORDS;
	readonly positionId: string | null;
	readonly partId: string | null;
	readonly undo: "clean" | "trace" | "never" | null;
	readonly loses: string;
	readonly state: "open" | "chosen" | "refused";
};

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
export type DecisionTyped = z.input<ReturnType<typeof recordDecisionFormSchema>>;
