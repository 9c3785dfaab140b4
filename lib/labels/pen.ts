// A pen that collects the marks of a label and knows how wide its letters come out. Millimetres throughout.

import type { Ink, Mark } from "@/lib/labels/drawing";
import { CAP_HEIGHT, type Face, type TypeCase } from "@/lib/labels/face";
import { GLUE, type WidthOf } from "@/lib/labels/fitText";

export type Pen = {
	readonly marks: Mark[];
	/** Width of text in a face, for capitals `cap` high. */
	readonly widthAt: (face: Face, cap: number) => WidthOf;
	/** Writes with the base line at `y`, capitals `cap` high; gives the x at which the text ends. */
	readonly write: (text: string, x: number, y: number, face: Face, cap: number, ink?: Ink) => number;
	readonly box: (x: number, y: number, width: number, height: number, ink?: Ink) => void;
	/** Marks of another pen, moved down. */
	readonly add: (marks: readonly Mark[], down: number) => void;
	readonly shape: (points: readonly (readonly [number, number])[], ink?: Ink) => void;
};

/** A fresh pen that measures with these fonts. */
export function penWith(type: TypeCase): Pen {
	const marks: Mark[] = [];
	const widthAt = (face: Face, cap: number) => (text: string) => (type.widthOf(text, face) * cap) / CAP_HEIGHT;
	return {
		marks,
		widthAt,
		write: (text, x, y, face, cap, ink = "black") => {
			if (text === "") return x;
			const printed = text.replaceAll(GLUE, " ");
			const width = widthAt(face, cap)(printed);
			marks.push({ kind: "text", x, y, size: cap / CAP_HEIGHT, width, face, ink, text: printed });
			return x + width;
		},
		box: (x, y, width, height, ink = "black") => marks.push({ kind: "box", x, y, width, height, ink }),
		add: (others, down) => marks.push(...others.map((mark) => movedDown(mark, down))),
		shape: (points, ink = "black") => marks.push({ kind: "shape", points, ink }),
	};
}

const movedDown = (mark: Mark, down: number): Mark =>
	mark.kind === "shape" ? { ...mark, points: mark.points.map(([x, y]) => [x, y + down] as const) } : { ...mark, y: mark.y + down };
