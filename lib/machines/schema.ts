import { z } from "zod";
import { dayField, optionalDay } from "@/lib/core/dayFields";
import { type Edtf, readEdtf } from "@/lib/core/edtf";
import { chosen, line, optionalChosen, optionalLine, words } from "@/lib/core/words";
import type { CurrencyCode } from "@/lib/money/currency";
import { parseAmount } from "@/lib/money/money";
import { LAST_MACHINE } from "@/lib/tags/tag";

/** A date of manufacture in EDTF; an empty field is null. */
export const madeField = z
	.string()
	.trim()
	.nullish()
	.transform((text, check): Edtf | null => {
		if (!text) return null;
		const read = readEdtf(text);
		if (read.ok) return read.value.edtf;
		check.addIssue({ code: "custom", message: read.error.say });
		return z.NEVER;
	});

/** An amount that may stay empty: minor units of the currency, or null. */
const amountOrNothing = (currency: CurrencyCode) =>
	z
		.string()
		.trim()
		.default("")
		.transform((text, check): number | null => {
			if (text === "") return null;
			const amount = parseAmount(text, currency);
			if (amount.ok) return amount.value;
			check.addIssue({ code: "custom", message: amount.error.say });
			return z.NEVER;
		});

/** The machine's number as typed; an empty field takes the next free one. */
const numberOrNext = z
	.union([z.number(), z.string().trim()])
	.default("")
	.transform((typed, check): number | null => {
		if (typed === "") return null;
		const number = typeof typed === "number" ? typed : /^\d{1,6}$/.test(typed) ? Number(typed) : Number.NaN;
		if (Number.isInteger(number) && number >= 1 && number <= LAST_MACHINE) return number;
		check.addIssue({
			code: "custom",
			message: `A machine's number is a whole number from 1 to ${LAST_MACHINE}. Leave it empty for the next free one.`,
		});
		return z.NEVER;
	});

const identity = {
	name: line("the machine's name"),
	kind: optionalLine("what kind of machine it is"),
	maker: optionalLine("the maker"),
	model: optionalLine("the model"),
	serial: optionalLine("the serial number"),
	made: madeField,
	ownership: z.enum(["shop", "customer", "collection"], "Say whose machine it is.").default("shop"),
	carried: words("how it was carried"),
	condition: words("its condition"),
	hazards: words("its hazards"),
};

/** A known party by id, or a new one by name; both empty when nobody knows. */
const somebody = {
	sellerId: optionalChosen,
	sellerName: optionalLine("who it came from"),
	ownerId: optionalChosen,
	ownerName: optionalLine("the owner"),
};

export const takeInMachineSchema = (currency: CurrencyCode) =>
	z
		.object({
			...identity,
			...somebody,
			number: numberOrNext,
			price: amountOrNothing(currency),
			carriage: amountOrNothing(currency),
			receivedDay: dayField("on which it came in"),
		})
		.refine((input) => input.ownership !== "customer" || input.ownerId !== null || input.ownerName !== "", {
			path: ["ownerName"],
			message: "Say whose machine it is: choose the owner, or write the name.",
		});

export const describeMachineSchema = (currency: CurrencyCode) =>
	z.object({
		...identity,
		...somebody,
		machineId: chosen("the machine"),
		price: amountOrNothing(currency),
		carriage: amountOrNothing(currency),
		receivedDay: dayField("on which it came in"),
	});

/** The day on which it is promised to be ready; empty takes the promise back. */
export const promiseSchema = z.object({
	machineId: chosen("the machine"),
	promisedDay: optionalDay,
});

export const stampAsFoundSchema = z.object({ machineId: chosen("the machine") });
export const setPortraitSchema = z.object({
	machineId: chosen("the machine"),
	fileSha: z.string().regex(/^[0-9a-f]{64}$/, "Choose a photo."),
});
export const setMachineStateSchema = z.object({
	machineId: chosen("the machine"),
	state: z.enum(["waiting", "work", "ready"], "Say how far the machine is."),
});

export const handOverSchema = (currency: CurrencyCode) =>
	z.object({
		machineId: chosen("the machine"),
		leftDay: dayField("on which it leaves"),
		buyerId: optionalChosen,
		buyerName: optionalLine("who takes it"),
		sold: amountOrNothing(currency),
		/** Why it leaves although bags are not empty or parts are outside; "" when there is nothing of the kind. */
		why: words("why it leaves all the same", 500),
	});

export const EVIDENCE_KINDS = ["seen", "documented", "told", "assumed"] as const;
const evidenceKind = z.enum(EVIDENCE_KINDS, "Say how it is known: seen, documented, told or assumed.");

export const sayNoteSchema = z.object({
	machineId: chosen("the machine"),
	kind: evidenceKind,
	words: words("the note").pipe(z.string().min(1, "Write the note.")),
	whoSaid: optionalLine("who said it"),
});

export const sayFaultSchema = z.object({
	machineId: chosen("the machine"),
	positionId: optionalChosen,
	partId: optionalChosen,
	kind: evidenceKind,
	words: line("what is wrong", 400),
	how: optionalLine("how it shows", 400),
});

export const closeFaultSchema = z.object({
	faultId: chosen("the fault"),
	state: z.enum(["mended", "stays", "open"], "Say what became of it."),
});

/** Money in minor units of the shop's currency. */
export type TakeInMachine = z.output<ReturnType<typeof takeInMachineSchema>>;
export type DescribeMachine = z.output<ReturnType<typeof describeMachineSchema>>;
export type PromiseDay = z.output<typeof promiseSchema>;
export type HandOver = z.output<ReturnType<typeof handOverSchema>>;
export type SayNote = z.output<typeof sayNoteSchema>;
export type SayFault = z.output<typeof sayFaultSchema>;
export type CloseFault = z.output<typeof closeFaultSchema>;
export type SetMachineState = z.output<typeof setMachineStateSchema>;
