// What may be said of a position: what was found there, what stands in its way. Pure.

import { ok, type Result, refuse } from "@/lib/core/result";
import type { FindingState } from "@/lib/generated/prisma/enums";

/** A position as the rule about findings sees it. */
export type FoundPosition = {
	readonly mark: string;
	readonly name: string;
	readonly kind: "seat" | "place";
	/** Null while the as found record is open. */
	readonly asFoundAt: string | null;
	/** What was found last: the state, and the part it speaks of. */
	readonly last: { readonly state: FindingState; readonly partId: string | null } | null;
	/** The part that is fitted now, since when. */
	readonly holds: { readonly partId: string; readonly tag: string; readonly since: string } | null;
};

export type Found = {
	readonly state: FindingState;
	readonly at: string;
	/** The part that was there, where it is in the book already. */
	readonly partId: string | null;
};

/** What a finding comes to besides the finding itself. */
export type FindingDeed =
	/** It speaks of no part. */
	| { readonly what: "no-part" }
	/** It speaks of a part in the book. */
	| { readonly what: "of-part"; readonly partId: string }
	/** A part that nobody had entered is there: it is entered, and has been fitted since `fromAt`. */
	| { readonly what: "new-part"; readonly fromAt: string }
	/** What is entered as fitted was never there: it is struck out. */
	| { readonly what: "strike-out"; readonly partId: string };

/**
 * What a finding means for the build.
 *
 * While the as found record is open a finding corrects it: the latest counts, earlier ones stay readable. After the stamp a
 * finding is later knowledge about the time before: it is added, and it changes what is fitted only where something was
 * there that nobody had entered, or never was what had only been presumed.
 */
export function whatFindingMeans(position: FoundPosition, found: Found): Result<FindingDeed> {
	const { asFoundAt, last, holds } = position;
	const stamped = asFoundAt !== null;
	const where = `${position.mark} ${position.name}`;
	if (position.kind === "place")
		return refuse("place-holds-no-part", `${where} is a place with no part of its own: nothing can be there or missing.`);
	if (stamped && found.at <= asFoundAt) {
		return refuse("as-found-stands", "As found is stamped. What is learnt later carries a later time; it is added, never written over.");
	}
	// What is fitted now stood there when the machine came, unless the shop put it in after the stamp.
	const itsOwn = holds !== null && (!stamped || holds.since <= asFoundAt) ? holds : null;

	switch (found.state) {
		case "there":
		case "wrong": {
			if (found.partId !== null) return ok({ what: "of-part", partId: found.partId });
			if (itsOwn) return ok({ what: "of-part", partId: itsOwn.partId });
			if (last?.partId) return ok({ what: "of-part", partId: last.partId });
			if (holds) {
				return refuse(
					"holds-another",
					`${where} holds ${holds.tag}, which was put in later. Add the part that was there before under its own tag, then say here that it was there.`,
					{ facts: { tag: holds.tag } },
				);
			}
			return ok({ what: "new-part", fromAt: asFoundAt ?? found.at });
		}
		case "missing": {
			if (itsOwn === null) {
				if (stamped && last?.partId) {
					return refuse(
						"was-there",
						`${where} had a part when the machine came: it is in the book. If it was entered in error, strike that part out.`,
					);
				}
				return ok({ what: "no-part" });
			}
			if (!stamped || last?.state === "unseen") return ok({ what: "strike-out", partId: itsOwn.partId });
			return refuse("part-is-there", `${where} holds ${itsOwn.tag}. If that is wrong, take it out and strike it out as entered in error.`, {
				facts: { tag: itsOwn.tag },
			});
		}
		case "unseen": {
			if (stamped && last !== null && last.state !== "unseen") {
				return refuse("was-seen", `${where} has been seen already; that stays. Say what is known better instead.`);
			}
			return ok(itsOwn ? { what: "of-part", partId: itsOwn.partId } : { what: "no-part" });
		}
	}
}

/** A part stands in the way of a position that it neither fills nor carries, from sides which the position has. */
export function mayObstruct(
	position: {
		readonly mark: string;
		readonly name: string;
		readonly hostId: string | null;
		readonly holdsPartId: string | null;
		readonly sides: readonly string[];
	},
	part: { readonly id: string; readonly name: string; readonly sameMachine: boolean; readonly isVoid: boolean },
	sides: readonly string[],
): Result<null> {
	const where = `${position.mark} ${position.name}`;
	const at = (field: string, code: string, say: string) => refuse(code, say, { fields: { [field]: say } });
	if (part.isVoid) return at("partId", "is-void", `${part.name} was entered in error. Choose another part.`);
	if (!part.sameMachine) return at("partId", "other-machine", `${part.name} belongs to another machine and is not fitted in this one.`);
	if (part.id === position.holdsPartId)
		return at("partId", "fills-it", `${part.name} is what ${where} holds; it cannot stand in its own way.`);
	if (part.id === position.hostId)
		return at("partId", "carries-it", `${part.name} carries ${where}; what carries a position cannot stand in its way.`);
	const unknown = sides.find((side) => !position.sides.includes(side));
	if (unknown !== undefined) {
		const has = position.sides.length === 0 ? "has one side only, without a name" : `has these sides: ${position.sides.join(", ")}`;
		return at("sides", "no-such-side", `${where} ${has}. Name its sides first, or leave "${unknown}" out.`);
	}
	return ok(null);
}
