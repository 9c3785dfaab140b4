// What may be done to a machine as a whole. Pure.

import { ok, type Result, refuse } from "@/lib/core/result";
import type { MachineState } from "@/lib/generated/prisma/enums";
import { LAST_MACHINE } from "@/lib/tags/tag";

/** The number of a machine that comes in: the one asked for, or one above the highest. */
export function numberFor(asked: number | null, taken: readonly number[]): Result<number> {
	if (asked !== null) {
		if (!taken.includes(asked)) return ok(asked);
		return refuse("number-taken", `Machine ${asked} is in the book already. Leave the number empty for the next free one.`, {
			fields: { number: `Machine ${asked} is in the book already.` },
		});
	}
	const next = Math.max(0, ...taken) + 1;
	if (next <= LAST_MACHINE) return ok(next);
	return refuse("numbers-used-up", `Numbers end at ${LAST_MACHINE}, which is taken. Write a free number yourself.`, {
		fields: { number: "Write a number that is free." },
	});
}

/** As found is stamped once, when there is something to stamp. `lastFindingAt` is the latest instant of any finding. */
export function mayStamp(
	machine: { readonly asFoundAt: string | null },
	build: { readonly positions: number; readonly lastFindingAt: string | null },
	at: string,
): Result<null> {
	if (machine.asFoundAt !== null) {
		return refuse("already-stamped", "As found is stamped already. What is learnt now is added to it as later knowledge.");
	}
	if (build.positions === 0) {
		return refuse("nothing-found", "Nothing is recorded yet. Add the positions first, if only as not seen yet.");
	}
	if (build.lastFindingAt !== null && build.lastFindingAt > at) {
		return refuse("stamp-too-early", "Something was found after that moment. Stamp as found after the last finding.");
	}
	return ok(null);
}

/** Which states follow one another; the intake ends with the stamp, and a machine that left is handed over, not set. */
export function mayBecome(from: MachineState, to: "waiting" | "work" | "ready"): Result<null> {
	if (from === "intake") return refuse("not-stamped", "Stamp as found first: work begins when the as found record is closed.");
	if (from === to) return refuse("same-state", "The machine is there already.");
	return ok(null);
}

/** A machine leaves with everything that is its own, or with words that say why not. */
export function mayHandOver(
	machine: { readonly state: MachineState },
	left: { readonly holdingBagsNotEmpty: number; readonly partsOutside: number },
	why: string,
): Result<null> {
	if (machine.state === "left") return refuse("has-left", "The machine has left the shop already.");
	if (machine.state === "intake") return refuse("not-stamped", "Stamp as found first: the machine's record is still open.");
	const missing = [
		left.holdingBagsNotEmpty > 0 ? `${counted(left.holdingBagsNotEmpty, "bag")} that should be empty` : "",
		left.partsOutside > 0 ? `${counted(left.partsOutside, "part")} outside the shop` : "",
	].filter(Boolean);
	if (missing.length === 0 || why !== "") return ok(null);
	return refuse(
		"not-complete",
		`There ${left.holdingBagsNotEmpty + left.partsOutside === 1 ? "is" : "are"} still ${missing.join(" and ")}. Say why it leaves all the same.`,
		{
			fields: { why: "Say why it leaves all the same." },
			facts: left,
		},
	);
}

/** "1 bag", "3 bags". */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;
