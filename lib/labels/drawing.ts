// A label as ink: what paper and screen both draw. Black only; millimetres from the label's top left corner.

import type { Face } from "@/lib/labels/face";
import type { QrModules } from "@/lib/labels/qrModules";

export type Ink = "black" | "white";

export type Mark =
	/** A line of text; `y` is its base line, `size` the height of an em, `width` how wide it comes out. */
	| {
			readonly kind: "text";
			readonly x: number;
			readonly y: number;
			readonly size: number;
			readonly width: number;
			readonly face: Face;
			readonly ink: Ink;
			readonly text: string;
	  }
	| { readonly kind: "box"; readonly x: number; readonly y: number; readonly width: number; readonly height: number; readonly ink: Ink }
	| { readonly kind: "shape"; readonly points: readonly (readonly [number, number])[]; readonly ink: Ink }
	/** A QR symbol without its quiet zone; `module` is the side of one module. */
	| {
			readonly kind: "code";
			readonly x: number;
			readonly y: number;
			readonly module: number;
			readonly modules: QrModules;
			readonly text: string;
	  };

export type CodeMark = Extract<Mark, { kind: "code" }>;

/** Marks on an area of this size. */
export type Drawing = { readonly width: number; readonly height: number; readonly marks: readonly Mark[] };

/** A label ready to be drawn. */
export type LabelDrawing = Drawing & {
	/** What had to be shortened or left out, by name, so that the person can be told before printing. */
	readonly shortened: readonly string[];
	/** Characters that no font here can draw; a box stands in their place. */
	readonly undrawable: readonly string[];
};

/**
 * The dark modules as rectangles [x, y, width, height] in modules, one for each run in a row that touches the next one
 * without a gap: exact, and few enough for a page of labels.
 */
export function darkRuns({ rows }: QrModules): [number, number, number, number][] {
	const runs: [number, number, number, number][] = [];
	rows.forEach((row, y) => {
		let start = -1;
		for (let x = 0; x <= row.length; x++) {
			const dark = row[x] === true;
			if (dark && start < 0) start = x;
			if (!dark && start >= 0) {
				runs.push([start, y, x - start, 1]);
				start = -1;
			}
		}
	});
	return runs;
}
