// Reading a tag that was typed with dirty hands, pasted, or scanned.
//
// Tolerant of case, of blanks and dots for dashes, and of missing separators. Not tolerant of anything by which one
// wrong character, or two swapped neighbours, separators included, could turn one tag into another.

import { ok, type Refusal, type Result, refuse } from "@/lib/core/result";
import { checkCharacterOf } from "@/lib/tags/checkCharacter";
import { formatTag, LAST_MACHINE, type Tag, usableNumber } from "@/lib/tags/tag";

/** A tag that was read: its machine (0 for the shop's own bags), its running number, and its printed form. */
export type ReadTag = { readonly machine: number; readonly number: number; readonly tag: Tag };

// http or https, any host (labels outlive a shop's address), then /T/ and the tag, in any case.
const ADDRESS = /^(?:HTTPS?:\/\/)?[^\s/?#]+\/T\/([^/?#]*)\/?(?:[?#].*)?$/;
const GROUPS = /^([0-9]{1,4})([- ]?)([0-9]{4})([- ]?)([0-9A-Z*])$/;
const BARE = /^([0-9]*)([0-9]{4})([0-9A-Z*])$/;

/**
 * The text in capitals, out of its address if it is one, with one kind of dash and single blanks.
 * Shared by the reader and by the suggestions, so that both see the same characters.
 */
export function plainTagText(text: string): string {
	const upper = text.normalize("NFKC").trim().toUpperCase();
	return (ADDRESS.exec(upper)?.[1] ?? upper)
		.replace(/[\u2010-\u2015\u2212._]/g, "-")
		.replace(/\s+/g, " ")
		.replace(/ - /g, "-");
}

/** The tag of compact characters (digits, then the check character, no separators) if they verify and were ever printed; else null. */
export function tagOfCompact(compact: string): ReadTag | null {
	const [, machineDigits = "", numberDigits = "", check = ""] = BARE.exec(compact) ?? [];
	if (machineDigits === "") return null;
	const machine = Number(machineDigits);
	const number = Number(numberDigits);
	if (machine > LAST_MACHINE || !usableNumber(machine, number)) return null;
	if (checkCharacterOf(machineDigits + numberDigits) !== check) return null;
	return { machine, number, tag: formatTag(machine, number) };
}

/**
 * Reads a tag as typed or scanned: `12-0147-K`, `12 0147 k`, `120147K` (the last five characters are number and check
 * character), or a scanned address `HTTP://HOST/T/12-0147-K`.
 *
 * Refuses, with what to do: nothing typed (`tag-empty`), a form that is no tag, above all a running number that is not
 * four digits wide (`tag-form`), a check character that does not fit (`tag-check`), and a number that is never printed
 * (`tag-never-printed`). `suggestTags` then offers what may have been meant.
 */
export function readTag(text: string): Result<ReadTag, Refusal> {
	const plain = plainTagText(text);
	const facts = { typed: plain };
	if (plain === "") return refuse("tag-empty", "Type or scan a tag, such as 12-0147-K.");

	const [, machineDigits = "", firstGap = "", numberDigits = "", secondGap = "", check = ""] = GROUPS.exec(plain) ?? [];
	// With only the first separator missing, a digit that stands in its place would join the machine number. Up to three
	// digits in front the check character always catches that; with four it may not.
	const mayHideAWrongSeparator = firstGap === "" && secondGap !== "" && machineDigits.length > 3;
	if (machineDigits === "" || mayHideAWrongSeparator) return refuse("tag-form", formSentence(plain), { facts });

	const machine = Number(machineDigits);
	const number = Number(numberDigits);
	const written = `${machineDigits}-${numberDigits}-${check}`;
	if (checkCharacterOf(machineDigits + numberDigits) !== check) {
		return refuse(
			"tag-check",
			`${written} is no tag: its last character does not fit its digits. One character is wrong, or two are swapped. Compare it with the label, or scan it.`,
			{ facts },
		);
	}
	if (!usableNumber(machine, number)) {
		return refuse("tag-never-printed", `${written} is a tag that is never printed. Compare it with the label, or scan it.`, { facts });
	}
	return ok({ machine, number, tag: formatTag(machine, number) });
}

function formSentence(plain: string): string {
	const shown = plain.length > 40 ? `${plain.slice(0, 40)}…` : plain;
	if (plain.includes("://")) return "This address leads to no tag. Scan the code on a label, or type its tag, such as 12-0147-K.";
	if (/^[0-9]{4}-?[0-9A-Z*]$/.test(plain)) return `${shown} lacks the machine number in front. Type the whole tag, such as 12-0147-K.`;
	return `${shown} is no tag. A tag is the machine number, four digits, and a last character, such as 12-0147-K; write the zeros too.`;
}
