// Machine, position, which way round, what else: run on with dots between them.

import { fitLines, shorten, type WidthOf } from "@/lib/labels/fitText";

// A dot belongs between two facts, not at the end of a line.
const withoutEdgeDot = (line: string): string => line.replace(/^· | ·$/g, "");

/**
 * The facts as lines for these places; `isCut` when something had to be shortened.
 * When short of room the machine, which comes first, keeps a line of its own: a bag must say where it belongs.
 */
export function factLines(
	facts: readonly string[],
	places: readonly { readonly room: number }[],
	widthOf: WidthOf,
): { lines: string[]; isCut: boolean } {
	if (facts.length === 0) return { lines: [], isCut: false };
	if (places.length === 0) return { lines: [], isCut: true };
	const room = Math.min(...places.map((place) => place.room));
	const { lines, isCut } = fitLines(facts.join(" · "), room, places.length, widthOf);
	const shown = isCut ? briefly(facts, room, places.length, widthOf) : lines;
	return { lines: shown.map(withoutEdgeDot), isCut };
}

function briefly(facts: readonly string[], room: number, most: number, widthOf: WidthOf): string[] {
	const [machine = "", ...others] = facts;
	if (others.length === 0) return fitLines(machine, room, most, widthOf).lines;
	const rest = others.join(" · ");
	if (most > 1) return [shorten(machine, room, widthOf), ...fitLines(rest, room, most - 1, widthOf).lines];
	const start = `${shorten(machine, room * 0.45, widthOf)} · `;
	return [start + shorten(rest, room - widthOf(start), widthOf)];
}
