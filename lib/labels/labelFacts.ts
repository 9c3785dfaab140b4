// Machine, position, which way round, what else: run on with dots between them.

import { fitLines, type RoomOf, shorten, type WidthOf } from "@/lib/labels/fitText";

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
	const roomOf = (line: number): number => (places[line] ?? places.at(-1))?.room ?? 0;
	const { lines, isCut } = fitLines(facts.join(" · "), roomOf, places.length, widthOf);
	const shown = isCut ? briefly(facts, roomOf, places.length, widthOf) : lines;
	return { lines: shown.map(withoutEdgeDot), isCut };
}

function briefly(facts: readonly string[], roomOf: RoomOf, most: number, widthOf: WidthOf): string[] {
	const [machine = "", ...others] = facts;
	if (others.length === 0) return fitLines(machine, roomOf, most, widthOf).lines;
	const rest = others.join(" · ");
	if (most > 1) {
		const below = fitLines(rest, (line) => roomOf(line + 1), most - 1, widthOf).lines;
		return [shorten(machine, roomOf(0), widthOf), ...below];
	}
	const start = `${shorten(machine, roomOf(0) * 0.6, widthOf)} · `;
	return [start + shorten(rest, roomOf(0) - widthOf(start), widthOf)];
}
