// Which side, and which way up: a word and a sign that says the same without words.

import type { LabelText } from "@/lib/labels/labelText";
import type { Pen } from "@/lib/labels/pen";

/** The start, room and base line of a line of text. */
export type LinePlace = { readonly x: number; readonly room: number; readonly y: number };

type SideText = NonNullable<LabelText["side"]>;

/** How many lines the markings took, whether a wording for want of room was taken, and what could not be said at all. */
export type Marked = { readonly lines: number; readonly isBrief: boolean; readonly lost: readonly ("seen from" | "this way up")[] };

/**
 * Side and way up, each on a line, or both on one where lines are short.
 * Requires a place for at least one of them.
 */
export function writeMarkings(
	pen: Pen,
	{ side, up, facts }: Pick<LabelText, "side" | "up" | "facts">,
	places: readonly LinePlace[],
	cap: number,
): Marked {
	const [first, second] = places;
	if (first === undefined) return { lines: 0, isBrief: false, lost: [] };
	const wayUp = up?.[0];
	if (side === null) {
		if (wayUp !== undefined) writeUp(pen, wayUp, first.x, first.y, cap);
		return { lines: wayUp === undefined ? 0 : 1, isBrief: false, lost: [] };
	}
	if (up !== null && (second === undefined || places.length < 2 + Math.min(2, facts.length))) {
		return writeBoth(pen, side, up, first, cap);
	}
	const view = side.seenFrom.find((wording) => sideWidth(pen, side, wording, cap) <= first.room);
	writeSide(pen, side, view, first, cap);
	const marked = { lines: 1, isBrief: view === side.seenFrom.at(-1), lost: view === undefined ? (["seen from"] as const) : [] };
	if (wayUp === undefined || second === undefined) return marked;
	writeUp(pen, wayUp, second.x, second.y, cap);
	return { ...marked, lines: 2 };
}

/** Side at the beginning of a line, way up at its end, in the fullest wordings for which there is room. */
function writeBoth(pen: Pen, side: SideText, up: readonly string[], place: LinePlace, cap: number): Marked {
	const choices = [...side.seenFrom, undefined].flatMap((view) => up.map((wayUp) => ({ view, wayUp })));
	const fits = ({ view, wayUp }: { view: string | undefined; wayUp: string }): boolean =>
		sideWidth(pen, side, view, cap) + cap + upWidth(pen, wayUp, cap) <= place.room;
	const chosen = choices.find(fits);
	writeSide(pen, side, chosen?.view, place, cap);
	if (chosen === undefined) return { lines: 1, isBrief: true, lost: ["seen from", "this way up"] };
	writeUp(pen, chosen.wayUp, place.x + place.room - upWidth(pen, chosen.wayUp, cap), place.y, cap);
	const isBrief = chosen.view === side.seenFrom.at(-1) || chosen.wayUp !== up[0];
	return { lines: 1, isBrief, lost: chosen.view === undefined ? ["seen from"] : [] };
}

const ARROW = 1.4; // with the air beside it, in capitals
const hasArrow = (side: SideText["side"]): boolean => side === "left" || side === "right";

function sideWidth(pen: Pen, { side, word }: SideText, view: string | undefined, cap: number): number {
	const said = view === undefined ? 0 : 0.5 * cap + pen.widthAt("sans", cap)(view);
	return (hasArrow(side) ? ARROW * cap : 0) + pen.widthAt("bold", cap)(word) + said;
}

/** "LEFT as seen from the player's place", with an arrow that points there. */
function writeSide(pen: Pen, { side, word }: SideText, view: string | undefined, { x, y }: LinePlace, cap: number): void {
	let at = x;
	if (side === "left") {
		drawArrow(pen, at, y, cap, -1);
		at += ARROW * cap;
	}
	at = pen.write(word, at, y, "bold", cap);
	if (side === "right") {
		drawArrow(pen, at + (ARROW - 0.9) * cap, y, cap, 1);
		at += ARROW * cap;
	}
	pen.write(view ?? "", at + 0.5 * cap, y, "sans", cap);
}

function drawArrow(pen: Pen, left: number, baseLine: number, cap: number, direction: 1 | -1): void {
	const length = cap * 0.9;
	const [tip, back] = direction === 1 ? [left + length, left] : [left, left + length];
	pen.shape([
		[tip, baseLine - cap / 2],
		[back, baseLine - cap],
		[back, baseLine],
	]);
}

/** How wide the "this way up" marking comes out. */
const upWidth = (pen: Pen, up: string, cap: number): number => cap * 1.35 + pen.widthAt("bold", cap)(up);

/** "THIS WAY UP" behind the two arrows on a line that packing cases carry (ISO 780). */
function writeUp(pen: Pen, up: string, x: number, y: number, cap: number): void {
	for (const middle of [x + cap * 0.27, x + cap * 0.77]) {
		pen.shape([
			[middle - cap * 0.24, y - cap * 0.58],
			[middle, y - cap],
			[middle + cap * 0.24, y - cap * 0.58],
		]);
		pen.box(middle - cap * 0.08, y - cap * 0.6, cap * 0.16, cap * 0.4);
	}
	pen.box(x, y - cap * 0.13, cap * 1.04, cap * 0.13);
	pen.write(up, x + cap * 1.35, y, "bold", cap);
}
