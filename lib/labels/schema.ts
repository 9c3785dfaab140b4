import { z } from "zod";
import { atSchema } from "@/lib/bags/schema";
import { line } from "@/lib/core/words";
import { tagSchema } from "@/lib/tags/schema";

/** Most tags in one print; a machine's bags fit many times over. */
export const MOST_TAGS = 300;

const tags = z.array(tagSchema).min(1, "Choose at least one label.").max(MOST_TAGS, `Print at most ${MOST_TAGS} labels at a time.`);

export const recordPrintSchema = z.object({
	tags,
	/** The id of the stock, or its name. */
	stock: line("the label stock", 60),
	copies: z.number().int().min(1).max(20, "Print at most 20 copies at a time.").default(1),
	at: atSchema,
});

/** What goes straight to the printer. */
export const printLabelsSchema = z.object({
	tags: tags.transform((list) => [...new Set(list)]),
	/** Left out, the stock that this browser printed on last, or the first of the list. */
	stock: z.string().max(40, "Choose the label stock from the list.").optional(),
	startAt: z.int("Count the labels of the sheet from 1.").min(1, "Count the labels of the sheet from 1.").max(200).default(1),
	copies: z
		.int("Print 1 to 20 copies at a time.")
		.min(1, "Print 1 to 20 copies at a time.")
		.max(20, "Print at most 20 copies at a time.")
		.default(1),
});
export type PrintLabels = z.input<typeof printLabelsSchema>;

/** The tags in an address, `12-0208-Q,12-0210-1`; each once, in the order given. */
export const tagListSchema = z
	.string()
	.max(8000, "Those are too many labels for one address.")
	.transform((text) => [...new Set(text.split(/[,\s]+/).filter(Boolean))])
	.pipe(tags)
	.transform((list) => [...new Set(list)]);

export type RecordPrint = z.input<typeof recordPrintSchema>;

const whole = (least: number, most: number, say: string) => z.coerce.number(say).int(say).min(least, say).max(most, say);

/** What an address says of a print: `?tags=12-0208-Q,12-0210-1&stock=a4-21&start=4&copies=1`. */
export const printAddressSchema = z.object({
	tags: tagListSchema,
	stock: z.string().max(40, "Choose the label stock from the list.").optional(),
	start: whole(1, 200, "Count the labels of the sheet from 1.").default(1),
	copies: whole(1, 20, "Print 1 to 20 copies at a time.").default(1),
	outlines: z.literal("yes").optional().catch(undefined),
});
export type PrintAddress = z.output<typeof printAddressSchema>;

/** The page that print-outs without stock of their own go on. */
const paperSchema = z.enum(["a4", "letter"], "Choose A4 or US Letter.").default("a4");

/** `?tags=12-0208-Q&paper=roll`: lists of what is in bags. */
export const listAddressSchema = z.object({
	tags: tagListSchema,
	paper: z.enum(["roll", "a4", "letter"], "Choose the roll, A4 or US Letter.").optional().catch(undefined),
});

/** `?machine=12&position=k21&stock=flag-25x75&start=1`: flags of wires. */
export const wiresAddressSchema = z.object({
	machine: whole(1, 99_999, "Choose a machine."),
	position: z
		.string()
		.max(40, "Choose a position from the list.")
		.optional()
		.transform((mark) => mark || null),
	stock: z.string().max(40, "Choose the label stock from the list.").optional(),
	start: whole(1, 200, "Count the labels of the sheet from 1.").default(1),
});

/** `?place=ID&place=ID&paper=a4`: sheets for shelves. */
export const shelvesAddressSchema = z.object({
	places: z
		.array(z.string().max(64, "Choose places from the list."))
		.min(1, "Choose at least one place.")
		.max(60, "Print at most 60 sheets at a time."),
	paper: paperSchema.catch("a4"),
});
