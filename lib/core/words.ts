// What a form may send as words: trimmed, bounded, with a sentence when it is too long or missing.

import { z } from "zod";

/** Holds no line break and no NUL, which SQLite text and labels cannot show. */
const isOneLine = (text: string): boolean => !["\r", "\n", "\0"].some((sign) => text.includes(sign));

/** One line of words that must be there. `name` is how the sentence calls it: "the name". */
export const line = (name: string, most = 120) =>
	z
		.string(`Write ${name}.`)
		.trim()
		.min(1, `Write ${name}.`)
		.max(most, `Make ${name} shorter: at most ${most} characters. What you typed is kept.`)
		.refine(isOneLine, `Write ${name} on one line.`);

/** One line of words that may be empty. */
export const optionalLine = (name: string, most = 120) =>
	z
		.string()
		.trim()
		.max(most, `Make ${name} shorter: at most ${most} characters. What you typed is kept.`)
		.refine(isOneLine, `Write ${name} on one line.`)
		.default("");

/** Words of any number of lines; may be empty. */
export const words = (name: string, most = 4000) =>
	z
		.string()
		.trim()
		.max(most, `Make ${name} shorter: at most ${most} characters. What you typed is kept.`)
		.refine((text) => !text.includes("\0"), `Leave the invisible character out of ${name}.`)
		.default("");

/** The id of a thing chosen from a list. */
export const chosen = (name: string) => z.string(`Choose ${name}.`).min(1, `Choose ${name}.`).max(64, `Choose ${name} from the list.`);

/** The same where nothing need be chosen: an empty choice is null. */
export const optionalChosen = z
	.string()
	.max(64, "Choose from the list.")
	.nullish()
	.transform((id) => id || null);
