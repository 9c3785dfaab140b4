// The bands at the foot of a label: what must be known before it is opened, and what becomes of the thing.

import { fitLines } from "@/lib/labels/fitText";
import { RULE, SMALLEST_CAP } from "@/lib/labels/labelMeasures";
import type { LabelText } from "@/lib/labels/labelText";
import type { Pen } from "@/lib/labels/pen";

type Fate = NonNullable<LabelText["fate"]>;

/** Where a band stands: its left and right edge, and the line it must stay above. */
export type BandPlace = { readonly left: number; readonly right: number; readonly floor: number };

/**
 * What becomes of the thing, between two rules: in bold, with the rest of the sentence beside it if it fits on the line.
 * Gives the line that everything above must stay above.
 */
export function writeFate(pen: Pen, { word, rest }: Fate, { left, right, floor }: BandPlace, scale: number, air: number): number {
	const room = right - left;
	const widthOf = (said: string): number => pen.widthAt("bold", 1)(word) + (said === "" ? 0 : 0.5 + pen.widthAt("sans", 1)(said));
	const said = rest.find((wording) => widthOf(wording) * SMALLEST_CAP <= room) ?? "";
	const cap = Math.max(SMALLEST_CAP, Math.min(2.35 * scale, room / widthOf(said)));
	const baseLine = floor - RULE - 0.85 * air;
	const top = baseLine - cap - 0.85 * air - RULE;
	pen.box(left, floor - RULE, room, RULE);
	const end = pen.write(word, left, baseLine, "bold", cap);
	pen.write(said, end + 0.5 * cap, baseLine, "sans", cap);
	pen.box(left, top, room, RULE);
	return top - 0.6 * air;
}

/**
 * A hazard, white on black behind a warning triangle, in at most `most` lines.
 * Gives the line that everything above must stay above, and whether the words had to be cut.
 */
export function writeHazard(
	pen: Pen,
	hazard: string,
	{ left, right, floor }: BandPlace,
	scale: number,
	air: number,
	most: number,
): { top: number; isCut: boolean } {
	const cap = SMALLEST_CAP * Math.min(scale, 1.6);
	const edge = 0.95 * air;
	const pitch = cap * 1.5;
	const sign = cap * 1.55;
	const textLeft = left + edge + sign * 1.05 + edge;
	const { lines, isCut } = fitLines(hazard, right - textLeft - edge, most, pen.widthAt("bold", cap));
	const height = 2 * edge + cap + (lines.length - 1) * pitch;
	const top = floor - height;
	pen.box(left, top, right - left, height);
	drawWarning(pen, left + edge, top + height / 2, sign);
	for (const [at, line] of lines.entries()) pen.write(line, textLeft, top + edge + cap + at * pitch, "bold", cap, "white");
	return { top: top - 0.6 * air, isCut };
}

/** A triangle with an exclamation mark, cut out of a black band. */
function drawWarning(pen: Pen, left: number, middle: number, size: number): void {
	const foot = middle + size * 0.43;
	pen.shape(
		[
			[left, foot],
			[left + size * 1.05, foot],
			[left + size * 0.525, foot - size * 0.9],
		],
		"white",
	);
	pen.box(left + size * 0.465, foot - size * 0.58, size * 0.12, size * 0.32);
	pen.box(left + size * 0.465, foot - size * 0.2, size * 0.12, size * 0.11);
}
