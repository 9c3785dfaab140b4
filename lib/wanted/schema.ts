import { z } from "zod";
import { chosen, line, optionalChosen, optionalLine } from "@/lib/core/words";
import type { CurrencyCode } from "@/lib/money/currency";
import { neededAmount } from "@/lib/purchases/fields";

const fields = (home: CurrencyCode) => ({
	words: line("what is wanted", 200),
	/** With freight and tax, as it will land. */
	estimated: neededAmount(home, "Write what it will cost, with freight and tax; 0 if it comes free."),
	/** The step that needs it. */
	stepId: optionalChosen,
	addedWhy: optionalLine("why it was not in the plan", 200),
});

export const wantSchema = (home: CurrencyCode) => z.object({ machineId: chosen("the machine"), ...fields(home) });
export const changeWantedSchema = (home: CurrencyCode) => z.object({ wantedId: chosen("what is wanted"), ...fields(home) });
export const boughtSchema = z.object({ wantedId: chosen("what is wanted"), lineId: chosen("the line that it was bought with") });
export const dropWantedSchema = z.object({ wantedId: chosen("what is wanted"), why: line("why it is not wanted any more", 200) });
export const wantAgainSchema = z.object({ wantedId: chosen("what is wanted") });

export type Want = z.output<ReturnType<typeof wantSchema>>;
export type ChangeWanted = z.output<ReturnType<typeof changeWantedSchema>>;
export type Bought = z.output<typeof boughtSchema>;
export type DropWanted = z.output<typeof dropWantedSchema>;
export type WantAgain = z.output<typeof wantAgainSchema>;
