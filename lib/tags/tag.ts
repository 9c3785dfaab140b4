// A tag, such as 12-0147-K: machine number, running number within the machine, check character.

import { checkCharacterOf } from "@/lib/tags/checkCharacter";

declare const tagBrand: unique symbol;

/** A tag in its printed form. Made only by `formatTag` and `readTag`, so that every `Tag` verifies. */
export type Tag = string & { readonly [tagBrand]: "Tag" };

/** The machine number of bags that belong to the shop and to no machine. */
export const SHOP_WIDE = 0;
/** A machine number has one to four digits and is printed without leading zeros. */
export const LAST_MACHINE = 9999;
/** A running number always has four digits; that width is what tells 12-0147 from 120-147. */
export const LAST_NUMBER = 9999;

// Read aloud or by a tired eye, I is 1 and O is 0; and `*` is on no label keypad.
const NEVER_PRINTED = ["I", "O", "*"];

const isMachine = (machine: number): boolean => Number.isInteger(machine) && machine >= 0 && machine <= LAST_MACHINE;
const bodyOf = (machine: number, number: number): string => `${machine}${String(number).padStart(4, "0")}`;

/**
 * Whether a running number may be given out on this machine: 1 to 9999, and its check character is not I, O or `*`.
 * About one number in twelve is skipped.
 *
 * @example usableNumber(12, 203) // false: its check character would be *
 */
export function usableNumber(machine: number, number: number): boolean {
	if (!isMachine(machine) || !Number.isInteger(number) || number < 1 || number > LAST_NUMBER) return false;
	return !NEVER_PRINTED.includes(checkCharacterOf(bodyOf(machine, number)));
}

/**
 * The tag of a machine number (0 to 9999; 0 for the shop's own bags) and a running number.
 * Requires a usable number (`usableNumber`, `nextNumber`); anything else is a bug of the caller and throws.
 *
 * @example formatTag(12, 147) // "12-0147-K"
 */
export function formatTag(machine: number, number: number): Tag {
	if (!usableNumber(machine, number)) throw new RangeError(`no tag for machine ${machine}, number ${number}`);
	const check = checkCharacterOf(bodyOf(machine, number));
	return `${machine}-${String(number).padStart(4, "0")}-${check}` as Tag;
}
