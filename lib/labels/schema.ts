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
