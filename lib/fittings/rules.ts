// What may come out and what may go in. Pure: plain data in, a ruling out.

import { lower } from "@/lib/bags/rules";
import { ok, type Refusal, type Result, refuse } from "@/lib/core/result";
import { type Cover, hostsOf, type ReachFacts, whatCovers, wholeOf } from "@/lib/fittings/reach";
import type { Origin, PlaceKind, PositionKind } from "@/lib/generated/prisma/enums";

export type SeatFact = {
	readonly id: string;
	readonly machineId: string;
	readonly mark: string;
	readonly name: string;
	readonly kind: PositionKind;
	readonly sides: readonly string[];
};
export type PartFact = {
	readonly id: string;
	readonly name: string;
	readonly tag: string | null;
	readonly machineId: string;
	readonly machineNumber: number;
	readonly origin: Origin;
	readonly place: PlaceKind;
	/** The name of the position it is fitted in; null while it is loose. */
	readonly fittedIn: string | null;
	/** The tag of the bag that is out of the shop with it; null when no bag around it is. */
	readonly outIn: string | null;
};
/** Names for the parts and positions that a sentence may speak of, by part id. */
export type PartNames = ReadonlyMap<string, { readonly name: string; readonly tag: string | null }>;

const seat = (position: { name: string; mark: string }): string => `${lower(position.name)} (${position.mark})`;

/** "the lower rear panel and the coupling", with sides where they matter. */
export function coversInWords(covers: readonly Cover[], names: PartNames): string {
	const nameOf = (id: string) => {
		const part = names.get(id);
		return part ? `the ${lower(part.name)}` : "a part";
	};
	const bySide = new Map<string, string[]>();
	for (const cover of covers) bySide.set(cover.side, [...new Set([...(bySide.get(cover.side) ?? []), nameOf(cover.partId)])]);
	return [...bySide]
		.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
		.map(([side, parts]) => (side === "" ? listed(parts) : `${side}: ${listed(parts)}`))
		.join("; ");
}

/** "a", "a and b", "a, b and c". */
export const listed = (words: readonly string[]): string =>
	words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;

function covered(position: SeatFact, covers: readonly Cover[], names: PartNames): Refusal {
	const parts = new Set(covers.map((cover) => cover.partId));
	const they = parts.size === 1 ? "it covers" : "they cover";
	const sides = covers.some((cover) => cover.side !== "") ? " One free side is enough." : "";
	return {
		code: "covered",
		say: `Take out ${coversInWords(covers, names)} first: ${they} ${seat(position)}.${sides} If it came out all the same, say how.`,
		facts: { by: [...parts], obstructions: covers.map((cover) => cover.obstructionId) },
	};
}

/** Whether a moment can be that of a deed: not to come, and not before what it follows. */
export function mayHaveBeen(at: string, now: string, after: string | null, afterWhat: string): Result<true, Refusal> {
	if (at > now) return refuse("not-yet", "That moment is still to come. Enter what has happened.", { fields: { at: "Still to come." } });
	if (after !== null && at < after) {
		return refuse("too-early", `That is before ${afterWhat}. Enter a later moment.`, {
			fields: { at: "Too early." },
			facts: { at, after },
		});
	}
	return ok(true);
}

/** Who took out what was in a position last, when, and where it is now. */
export type Emptied = { readonly by: string; readonly part: string; readonly when: string; readonly where: string };

/** Whether the part in a position may be taken out; `anyway` is the reason to believe the hand and not the record. */
export function mayTakeOut(
	position: SeatFact,
	part: PartFact | null,
	facts: ReachFacts,
	names: PartNames,
	anyway: boolean,
	emptied: Emptied | null = null,
): Result<{ covers: Cover[] }, Refusal> {
	if (position.kind === "place") {
		return refuse(
			"place-holds-no-part",
			`${position.name} (${position.mark}) is a place with no part of its own: nothing can be taken out.`,
		);
	}
	if (!part) {
		const last = emptied ? ` ${emptied.by} took the ${lower(emptied.part)} out ${emptied.when}: it is ${emptied.where}.` : "";
		return refuse(
			"position-empty",
			`${position.name} (${position.mark}) is empty already.${last} Choose the position that you have in hand.`,
		);
	}
	const covers = whatCovers(facts, position.id);
	if (covers.length > 0 && !anyway) return { ok: false, error: covered(position, covers, names) };
	return ok({ covers });
}

/** Whether these parts can have come off first: they are no longer fitted in the same whole as the position. */
export function mayHaveComeBefore(
	position: SeatFact,
	before: readonly { partId: string; side: string }[],
	facts: ReachFacts,
	names: PartNames,
): Result<true, Refusal> {
	const whole = wholeOf(facts, position.id);
	for (const { partId, side } of before) {
		const at = facts.seatOf.get(partId);
		const name = names.get(partId);
		if (!name) return refuse("no-part", "A part that is said to have come off first is not known. Choose it from the list.");
		if (at === position.id) return refuse("obstructs-itself", `The ${lower(name.name)} cannot cover its own position.`);
		if (at !== undefined && wholeOf(facts, at) === whole) {
			return refuse("still-fitted", `The ${lower(name.name)} is still fitted, so it did not have to come off first.`, {
				facts: { part: partId },
			});
		}
		if (side !== "" && !position.sides.includes(side)) {
			const sides = position.sides.length === 0 ? "it has one side only" : `its sides are ${listed(position.sides)}`;
			return refuse("no-such-side", `${position.name} (${position.mark}) has no side called ${side}: ${sides}.`);
		}
	}
	return ok(true);
}

export type PutInFacts = {
	readonly position: SeatFact;
	readonly machineNumber: number;
	/** The part there now. */
	readonly occupant: { readonly name: string; readonly tag: string | null } | null;
	readonly part: PartFact;
	readonly reach: ReachFacts;
	readonly names: PartNames;
	/** Parts (`partId`) that cannot be fitted at the same time as this one or a part fitted on it (`ofId`). */
	readonly excludes: readonly { readonly ofId: string; readonly partId: string; readonly note: string }[];
	/** Originals of other machines that are fitted on this one. */
	readonly carries: readonly { readonly name: string; readonly machineNumber: number }[];
	/** The conversion done for safety that took this part out of this machine; null when none did. */
	readonly safety: string | null;
	readonly anyway: boolean;
	readonly reason: string;
};

/** Whether the part may go into the position. Rules 1 and 3: one part a position, one place a part, nothing on itself. */
export function mayPutIn(facts: PutInFacts): Result<{ covers: Cover[] }, Refusal> {
	const { position, occupant, part, reach, names } = facts;
	const named = `the ${lower(part.name)}`;
	if (position.kind === "place") {
		return refuse(
			"place-holds-no-part",
			`${position.name} (${position.mark}) is a place with no part of its own. Choose another position.`,
		);
	}
	if (occupant) {
		return refuse(
			"position-taken",
			`The ${lower(occupant.name)}${occupant.tag ? ` (${occupant.tag})` : ""} is in ${seat(position)}. Take it out first.`,
		);
	}
	const there = mayBeFitted(part);
	if (!there.ok) return there;
	if (hostsOf(reach, position.id).includes(part.id)) {
		return refuse("assembly-hosts-itself", `${position.name} (${position.mark}) is on ${named} itself. Choose another position.`);
	}
	if (part.origin === "original" && part.machineId !== position.machineId && facts.reason === "") {
		return refuse(
			"original-of-another",
			`${upper(named)} is an original of machine ${part.machineNumber}. Say why it goes into machine ${facts.machineNumber}: machine ${part.machineNumber} loses it by this.`,
			{ fields: { reason: "Say why an original of another machine is used." } },
		);
	}
	const carried = facts.carries[0];
	if (carried && part.machineId !== position.machineId && facts.reason === "") {
		return refuse(
			"original-of-another",
			`${upper(named)} carries the ${lower(carried.name)}, an original of machine ${carried.machineNumber}. Say why it goes into machine ${facts.machineNumber}: machine ${carried.machineNumber} loses it by this.`,
			{ fields: { reason: "Say why an original of another machine is used." } },
		);
	}
	if (facts.safety !== null && facts.reason === "") {
		return refuse("undoes-safety", `${upper(named)} was taken out for safety (${facts.safety}). Say why it goes in again.`, {
			fields: { reason: "Say why it goes in again." },
		});
	}
	const excluded = facts.anyway ? null : excludedBy(facts);
	if (excluded) return { ok: false, error: excluded };
	const covers = whatCovers(reach, position.id);
	if (covers.length > 0 && !facts.anyway) return { ok: false, error: covered(position, covers, names) };
	return ok({ covers });
}

/** What stands where the part, or a part fitted on it, would; null when nothing does. */
function excludedBy({ position, part, reach, names, excludes }: PutInFacts): Refusal | null {
	const whole = wholeOf(reach, position.id);
	const inTheWay = excludes.filter((other) => {
		const at = reach.seatOf.get(other.partId);
		return at !== undefined && wholeOf(reach, at) === whole;
	});
	if (inTheWay.length === 0) return null;
	const own = `the ${lower(part.name)}`;
	const nameOf = (id: string) => `the ${lower(names.get(id)?.name ?? "other part")}`;
	const mine = new Set(inTheWay.map(({ ofId }) => (ofId === part.id ? own : `${nameOf(ofId)} on ${own}`)));
	const by = [...new Set(inTheWay.map((other) => other.partId))];
	const why = inTheWay.find((other) => other.note !== "")?.note;
	return {
		code: "excluded",
		say: `${upper(listed([...mine, ...by.map(nameOf)]))} cannot be fitted together${why ? ` (${why})` : ""}. Take ${listed(by.map(nameOf))} out first.`,
		facts: { by },
	};
}

/** Whether a part is loose and fit to be fitted, by the place it is in. */
export function mayBeFitted(part: Pick<PartFact, "name" | "place" | "fittedIn" | "outIn">): Result<true, Refusal> {
	const named = `The ${lower(part.name)}`;
	switch (part.place) {
		case "bag":
			if (part.outIn === null) return ok(true);
			return refuse(
				"part-out",
				`${named} is in ${part.outIn}, which is not here. Say where that bag lies now, or where the part itself does, first.`,
				{ facts: { out: part.outIn } },
			);
		case "location":
		case "bench":
			return ok(true);
		case "fitted":
			return refuse("part-elsewhere", `${named} is fitted in ${part.fittedIn ?? "another position"}. Take it out there first.`);
		case "out":
			return refuse("part-out", `${named} is out of the shop. Say that it came back first.`);
		case "sold":
			return refuse("part-sold", `${named} was sold. Choose another part.`);
		case "lost":
			return refuse("part-lost", `${named} is marked as lost. If it turned up, move it to where it lies first.`);
		case "scrapped":
			return refuse("part-scrapped", `${named} was scrapped. Choose another part.`);
		case "void":
			return refuse("part-void", `${named} was entered in error. Choose the right part.`);
	}
}

const upper = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
