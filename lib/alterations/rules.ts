// What may be said of a lasting change. Pure.

import { ok, type Result, refuse } from "@/lib/core/result";

export type AlteredThing = {
	readonly name: string;
	/** Null for a position or a place. */
	readonly origin: "original" | "period" | "reproduction" | "modern" | "unknown" | null;
};

/** Rule 3: an original is not altered beyond undoing without a reason. What reversal loses by it is said. */
export function mayAlter(thing: AlteredThing, undo: "clean" | "trace" | "never", reason: string): Result<null> {
	if (undo !== "never" || reason !== "") return ok(null);
	const what = thing.origin === "original" ? `the original ${thing.name}` : thing.name;
	return refuse("never-undone", `No reversal can undo this on ${what}. Say why it has to be.`, {
		fields: { reason: "Say why it has to be." },
	});
}

/** An alteration that stands can be undone, unless it never can. */
export function mayUndo(alteration: {
	readonly state: "done" | "undone" | "void";
	readonly undo: "clean" | "trace" | "never";
}): Result<null> {
	if (alteration.state !== "done") return refuse("not-standing", "This alteration does not stand any more.");
	if (alteration.undo === "never")
		return refuse("never-undone", "This alteration cannot be undone. If it was undone after all, correct how far it can be first.");
	return ok(null);
}
