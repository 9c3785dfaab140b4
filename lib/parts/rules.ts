// Who may leave the shop, and what is lost by it. Pure. Rule 3: an original does not go without a reason, and the tool
// says beforehand what reversal loses.

import { ok, type Result, refuse } from "@/lib/core/result";
import type { Origin, PlaceKind } from "@/lib/generated/prisma/enums";

/** A part as these rules see it. */
export type LeavingPart = {
	readonly name: string;
	readonly tag: string;
	readonly origin: Origin;
	readonly place: PlaceKind;
};

/** A position that can never hold its original again: its mark and name. `original` is false where what it loses was in it when it came, and is no original. */
export type LostPosition = { readonly mark: string; readonly name: string; readonly original?: boolean };

export type Way = "sold" | "lost" | "scrapped" | "void" | "out";

const DONE: Readonly<Record<Exclude<Way, "out">, string>> = {
	sold: "sold",
	lost: "lost",
	scrapped: "scrapped",
	void: "struck out as entered in error",
};

/** Where a part may be while it is still in the shop's hands and free to go. */
const LOOSE: readonly PlaceKind[] = ["bag", "location", "bench"];

/** Only loose parts leave. What is out may still be sold or lost there. */
export function mayLeave(part: LeavingPart, way: Way): Result<null> {
	if (LOOSE.includes(part.place)) return ok(null);
	if (part.place === "out" && way !== "void" && way !== "out") return ok(null);
	if (part.place === "fitted") {
		return refuse("still-fitted", `${part.tag}, ${part.name}, is fitted. Take it out first.`, { facts: { tag: part.tag } });
	}
	const where = part.place === "void" ? "struck out as entered in error" : part.place === "out" ? "out already" : part.place;
	return refuse(
		"not-here",
		`${part.tag}, ${part.name}, is ${where}. ${part.place === "void" ? "Nothing can be done with it." : "Say first that it came back."}`,
		{
			facts: { tag: part.tag },
		},
	);
}

/**
 * What reversal loses when the part goes for good, as a sentence; null when nothing.
 * `loses` names the positions whose original goes with it (its own, and those of originals fitted on it).
 */
export function whatIsLost(part: LeavingPart, loses: readonly LostPosition[]): string | null {
	if (loses.length === 0) return part.origin === "original" ? "no reversal can ever use it again." : null;
	return positionsSaid(loses, "can never be original again", "can never be as found again");
}

/** What reversal misses for as long as a part is lent, lost or in another machine, as a sentence; "" when nothing. */
export const whatIsMissed = (loses: readonly LostPosition[]): string =>
	positionsSaid(loses, "cannot be original while it is away", "cannot be as found while it is away");

/** "1 position can never be original again: k25 motor.", with originals apart from what was only there when it came. */
function positionsSaid(loses: readonly LostPosition[], original: string, other: string): string {
	const say = (rows: readonly LostPosition[], what: string): string => {
		if (rows.length === 0) return "";
		const names = rows.map((position) => `${position.mark} ${position.name}`);
		const shown = names.length > 5 ? `${names.slice(0, 5).join(", ")} and ${names.length - 5} more` : names.join(", ");
		return `${rows.length === 1 ? "1 position" : `${rows.length} positions`} ${what}: ${shown}.`;
	};
	const isOwn = (position: LostPosition): boolean => position.original !== false;
	return [
		say(loses.filter(isOwn), original),
		say(
			loses.filter((position) => !isOwn(position)),
			other,
		),
	]
		.filter(Boolean)
		.join(" ");
}

const whatItIs = (part: LeavingPart, loses: readonly LostPosition[]): string =>
	part.origin === "original"
		? "is original"
		: loses.some(({ original }) => original !== false)
			? "carries an original"
			: "was in the machine when it came";

/** Whether the part may go for good: loose, and with a reason if it or anything on it is original. */
export function mayGoForGood(part: LeavingPart, way: Exclude<Way, "out">, loses: readonly LostPosition[], why: string): Result<null> {
	const free = mayLeave(part, way);
	if (!free.ok) return free;
	const lost = way === "void" ? null : whatIsLost(part, loses);
	if (lost !== null && why === "") {
		return refuse("original-needs-reason", `${part.tag}, ${part.name}, ${whatItIs(part, loses)}. If it is ${DONE[way]}, ${lost} Say why.`, {
			fields: { why: "Say why: it does not go without a reason." },
			facts: { tag: part.tag, loses: loses.map((position) => position.mark), count: loses.length },
		});
	}
	if (way !== "sold" && why === "") return refuse("needs-reason", `Say why ${part.tag} is ${DONE[way]}.`, { fields: { why: "Say why." } });
	return ok(null);
}

/** An original goes out only with a day on which it is due back. */
export function mayGoOut(part: LeavingPart, dueDay: string | null): Result<null> {
	const free = mayLeave(part, "out");
	if (!free.ok) return free;
	if (part.origin !== "original" || dueDay !== null) return ok(null);
	return refuse("original-needs-due-day", `${part.tag}, ${part.name}, is original. Say when it is due back.`, {
		fields: { dueDay: "Say when it is due back." },
	});
}

const AWAY: readonly PlaceKind[] = ["out", "sold", "lost", "scrapped"];

/** What was out comes back; what was sold, lost or scrapped can, too, but says how. */
export function mayComeBack(part: LeavingPart, why: string): Result<null> {
	if (!AWAY.includes(part.place))
		return refuse("is-here", `${part.tag}, ${part.name}, is in the shop already.`, { facts: { tag: part.tag } });
	if (part.place === "out" || why !== "") return ok(null);
	return refuse("needs-reason", `${part.tag} was ${part.place}. Say how it came back.`, { fields: { why: "Say how it came back." } });
}
