import { z } from "zod";
import { dayField } from "@/lib/core/dayFields";
import { chosen, line, optionalChosen } from "@/lib/core/words";
import type { CurrencyCode } from "@/lib/money/currency";
import { neededAmount } from "@/lib/purchases/fields";

/** What a seller gave back, in the shop's currency: for a return, or off the price of what was kept. */
export const creditSchema = (home: CurrencyCode) =>
	z.object({
		purchaseId: chosen("the purchase"),
		/** The return that it is for; none: it is off the price. */
		useId: optionalChosen,
		/** Off the price: the machine whose costs it lessens; none: the shop's. A return names its own. */
		machineId: optionalChosen,
		day: dayField("it was credited"),
		amount: neededAmount(home, "Write what the seller gave; 0 if nothing is given for what was sent back."),
		words: line("what it is for", 200),
	});

export const voidCreditSchema = z.object({ creditId: chosen("the credit"), why: line("why it was entered in error", 200) });

export type GiveCredit = z.output<ReturnType<typeof creditSchema>>;
export type VoidCredit = z.output<typeof voidCreditSchema>;
