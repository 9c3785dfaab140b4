// The demo's pictures. Every one is a drawing and says so in the picture itself: the demo has no photographs.

import sharp from "sharp";
import type { SketchKind } from "@/seed/data/types";
import { docksideMagpiePortrait } from "@/seed/drawings/docksideMagpie";
import { hairpinRidgePortrait } from "@/seed/drawings/hairpinRidge";
import { lettering, letteringWidth } from "@/seed/drawings/lettering";
import { meteorMinnowPortrait } from "@/seed/drawings/meteorMinnow";
import {
	card,
	circle,
	ellipse,
	group,
	ink,
	line,
	oxide,
	paper,
	path,
	poly,
	rect,
	second,
	stroke,
	svg,
	tagStock,
	verdigris,
} from "@/seed/drawings/pen";
import { skerryLightPortrait } from "@/seed/drawings/skerryLight";
import { screw, sketchOf } from "@/seed/drawings/sketches";

const PORTRAIT = { width: 1600, height: 1200 } as const;

const portraits: Readonly<Record<number, () => { shapes: string[]; definitions: string[] }>> = {
	12: skerryLightPortrait,
	14: meteorMinnowPortrait,
	15: docksideMagpiePortrait,
	16: hairpinRidgePortrait,
};

/** The word that keeps a drawing from being taken for a photograph. */
function markedAsDrawing(width: number, height: number): string[] {
	const text = "DRAWING";
	const wide = letteringWidth(text, 20) + 36;
	return [
		rect(width - wide - 28, height - 72, wide, 44, { fill: card, opacity: 0.94 }, 6),
		lettering(text, { x: width - 28 - wide / 2, y: height - 60, height: 20, colour: ink, anchor: "middle" }),
	];
}

const asJpeg = (picture: string): Promise<Buffer> =>
	sharp(Buffer.from(picture)).flatten({ background: card }).jpeg({ quality: 88, chromaSubsampling: "4:4:4" }).toBuffer();

/** The portrait of one of the demo's machines, 1600 x 1200, as SVG text. */
export function portraitSvg(machine: number): string {
	const portrait = portraits[machine];
	if (portrait === undefined) throw new Error(`no portrait is drawn for machine ${machine}`);
	const { shapes, definitions } = portrait();
	return svg(PORTRAIT.width, PORTRAIT.height, [...shapes, ...markedAsDrawing(PORTRAIT.width, PORTRAIT.height)], definitions);
}

/** The same as a JPEG file. */
export const drawPortrait = (machine: number): Promise<Buffer> => asJpeg(portraitSvg(machine));

const SKETCH = { width: 1200, height: 900 } as const;
/** What the scale bar stands for beside a part of this kind; 50 mm for all others. */
const usualScaleMm: Partial<Record<SketchKind, number>> = {
	bush: 20,
	casting: 100,
	cord: 200,
	disc: 200,
	door: 100,
	fuse: 10,
	glass: 200,
	harness: 100,
	lamp: 20,
	panel: 200,
	rod: 100,
	scene: 200,
	screws: 20,
	seat: 200,
	shell: 500,
	switch: 20,
	tray: 200,
	trim: 200,
	tube: 200,
	wheel: 100,
};
const MOST_SCREWS = 24;
const MOST_COPIES = 4;

export type PartPicture = {
	/** The tag that lies in the frame, "12-0208-Q". */
	readonly tag?: string;
	/** How many: screws are drawn one by one, other lots as up to four and the number. */
	readonly count?: number;
	readonly hand?: "LEFT" | "RIGHT" | "FRONT" | "REAR";
	/** An arrow for a picture of the work itself. */
	readonly going?: "out" | "in";
	/** Drawn inside a bag with a seam, as it was packed. */
	readonly bagged?: true;
	/** Length that the scale bar stands for, where the kind's usual size will not do. */
	readonly scaleMm?: number;
};

/** A small number out of a text, the same on every computer: it chooses the cloth on the bench. */
const numberFrom = (text: string): number => [...text].reduce((sum, letter) => (sum * 31 + (letter.codePointAt(0) ?? 0)) % 9973, 7);

const cloths = [paper, "#eef0e6", "#f3ead6", "#e9eeea"] as const;

function bench(name: string): string[] {
	const cloth = cloths[numberFrom(name) % cloths.length] ?? paper;
	const rules = (count: number, step: number, from: (at: number) => [number, number], to: (at: number) => [number, number]) =>
		Array.from({ length: count }, (_, index) =>
			stroke([from(index * step), to(index * step)], { stroke: line, width: index % 5 === 0 ? 2.5 : 1, opacity: 0.75 }),
		);
	return [
		rect(0, 0, SKETCH.width, SKETCH.height, { fill: cloth }),
		...rules(
			31,
			40,
			(x) => [x, 0],
			(x) => [x, SKETCH.height],
		),
		...rules(
			23,
			40,
			(y) => [0, y],
			(y) => [SKETCH.width, y],
		),
	];
}

function lot(kind: SketchKind, count: number): string {
	if (kind === "screws") {
		const drawn = Math.max(1, Math.min(count, MOST_SCREWS));
		const columns = Math.min(drawn, drawn <= 6 ? drawn : Math.ceil(drawn / Math.ceil(drawn / 8)));
		const rows = Math.ceil(drawn / columns);
		const scale = Math.min(1.5, 620 / (columns * 104), 440 / (rows * 190));
		return group(
			Array.from({ length: drawn }, (_, index) => {
				const row = Math.floor(index / columns);
				const inRow = Math.min(columns, drawn - row * columns);
				return screw(
					(index - row * columns - (inRow - 1) / 2) * 104 * scale,
					((row - (rows - 1) / 2) * 190 - 36) * scale,
					scale,
					(index * 37) % 90,
				);
			}),
		);
	}
	const copies = Math.min(count, MOST_COPIES);
	if (copies <= 1) return sketchOf(kind);
	const spots: readonly (readonly [number, number])[] =
		copies === 2
			? [
					[-180, 0],
					[180, 0],
				]
			: copies === 3
				? [
						[-190, -110],
						[190, -110],
						[0, 120],
					]
				: [
						[-180, -120],
						[180, -120],
						[-180, 120],
						[180, 120],
					];
	return group(spots.map(([x, y]) => group([sketchOf(kind)], `translate(${x} ${y}) scale(${copies === 2 ? 0.54 : 0.48})`)));
}

function bagAround(sketch: string): string {
	return group([
		path("M-390 -250 H390 L404 290 C300 306 -300 306 -404 290 Z", { fill: card, opacity: 0.55 }),
		group([sketch], "translate(0 40) scale(0.82)"),
		path("M-390 -250 H390 L404 290 C300 306 -300 306 -404 290 Z", { stroke: second, width: 5 }),
		rect(-396, -262, 792, 34, { fill: verdigris, opacity: 0.85 }, 8),
		stroke(
			[
				[-390, -206],
				[390, -206],
			],
			{ stroke: second, width: 4 },
		),
		stroke(
			[
				[-340, -170],
				[-366, 240],
			],
			{ stroke: card, width: 16, opacity: 0.8 },
		),
		stroke(
			[
				[-300, -170],
				[-312, 20],
			],
			{ stroke: card, width: 9, opacity: 0.8 },
		),
	]);
}

function strungTag(text: string): string {
	const height = 40;
	const width = Math.max(250, letteringWidth(text, height) + 130);
	return group([
		path("M40 60 C-10 10 -60 70 -120 30", { stroke: second, width: 5 }),
		poly(
			[
				[0, 60],
				[44, 0],
				[width, 0],
				[width, 120],
				[44, 120],
			],
			{ fill: tagStock, stroke: "#b89a5e", width: 4 },
		),
		circle(44, 60, 17, { fill: paper, stroke: "#a8894d", width: 8 }),
		lettering(text, { x: 84, y: 40, height, colour: ink, weight: 0.15 }),
	]);
}

/** Scale bar in black and white fields, as a ruler laid beside the part. */
function scaleBar(mm: number): string {
	const field = 44;
	return group([
		...[0, 1, 2, 3, 4].map((index) => rect(index * field, 0, field, 16, { fill: index % 2 === 0 ? ink : card, stroke: ink, width: 3 })),
		lettering("0", { x: 0, y: 30, height: 20, colour: ink, anchor: "middle" }),
		lettering(`${mm} mm`, { x: 5 * field, y: 30, height: 20, colour: ink, anchor: "middle" }),
	]);
}

function arrow(going: "out" | "in"): string {
	const shape = group(
		[path("M-44 96 V-10 H-84 L0 -96 L84 -10 H44 V96 Z", { fill: going === "out" ? oxide : verdigris })],
		going === "out" ? undefined : "scale(1 -1)",
	);
	return group(
		[shape, lettering(going, { x: 0, y: going === "out" ? 24 : -58, height: 34, colour: card, weight: 0.16, anchor: "middle", fit: 78 })],
		"translate(1090 300)",
	);
}

/** A bench picture of a part, a lot of screws, or a packed bag, 1200 x 900, as SVG text. */
export function partSvg(
	name: string,
	kind: SketchKind,
	{ tag, count = 1, hand, going, bagged, scaleMm = usualScaleMm[kind] ?? 50 }: PartPicture = {},
): string {
	const { width, height } = SKETCH;
	const sketch = lot(kind, count);
	return svg(width, height, [
		...bench(name),
		bagged === true ? "" : ellipse(600, 668, 340, 22, { fill: ink, opacity: 0.08 }),
		group([bagged === true ? bagAround(sketch) : sketch], "translate(600 410) scale(1.12)"),
		lettering(name, { x: 48, y: 44, height: 34, colour: ink, weight: 0.15, fit: 840 }),
		hand === undefined
			? ""
			: group(
					[
						rect(0, 0, letteringWidth(hand, 30) + 44, 62, { fill: ink }, 8),
						lettering(hand, { x: 22, y: 16, height: 30, colour: card, weight: 0.16 }),
					],
					bagged === true ? "translate(232 236)" : "translate(48 104)",
				),
		count > 1 ? lettering(`× ${count}`, { x: 1152, y: 44, height: 44, colour: oxide, weight: 0.16, anchor: "end" }) : "",
		going === undefined ? "" : arrow(going),
		tag === undefined ? "" : group([strungTag(tag)], "translate(96 748)"),
		group([scaleBar(scaleMm)], "translate(680 806)"),
		...markedAsDrawing(width, height),
	]);
}

/**
 * The same as a JPEG file: what the demo shows where a shop would have its photograph.
 *
 * @example await drawPart("AC gearmotor", "motor", { tag: "12-0208-Q" })
 */
export const drawPart = (name: string, kind: SketchKind, picture: PartPicture = {}): Promise<Buffer> =>
	asJpeg(partSvg(name, kind, picture));
