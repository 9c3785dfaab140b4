// Where everything on a label goes. One layout for paper and screen.
//
// Code left, words right: the tag largest, then the part in bold, which side and which way up, machine and place, what
// must be known before opening, what becomes of it, day and initials. Under the code stands the count, the check when the
// bag is opened. On a narrow label the words run on below the code. The largest setting that shortens nothing is taken;
// text is never smaller than a capital 2 mm high.

import { ok, type Refusal, type Result, refuse } from "@/lib/core/result";
import { codeText, type LabelAddress } from "@/lib/labels/address";
import type { LabelDrawing } from "@/lib/labels/drawing";
import type { TypeCase } from "@/lib/labels/face";
import { charactersOf } from "@/lib/labels/fitText";
import { type LabelContent, type LabelText, labelText } from "@/lib/labels/labelText";
import type { QrModules } from "@/lib/labels/qrModules";
import { codeBox, type SetLabel, type Setting, setLabel } from "@/lib/labels/setLabel";
import type { Stock } from "@/lib/labels/stock";

// 4 dots are 0.50 mm, the usual target for a module; 3 dots are 0.375 mm, still read at hand's length. Never less.
const GOOD_DOTS = 4;
const LEAST_DOTS = 3;
const MOST_DOTS = 10;
const LARGEST_SCALE = 2.4;
const SCALE_STEP = 0.08;
/** Continuous labels are tried this much longer each time, in mm. */
const LENGTH_STEP = 3;
/** Before anything is shortened, smaller tag and words are tried. A hazard may take the room of day and initials. */
const ROOMY = { heading: 1, hazardLines: 3, hasFoot: true };
const TIGHTER = [
	{ heading: 0.85, hazardLines: 3, hasFoot: true },
	{ heading: 0.72, hazardLines: 3, hasFoot: true },
	{ heading: 0.72, hazardLines: 3, hasFoot: false },
	{ heading: 0.72, hazardLines: 2, hasFoot: false },
	{ heading: 0.72, hazardLines: 1, hasFoot: true },
	{ heading: 0.72, hazardLines: 1, hasFoot: false },
];

type Size = { readonly width: number; readonly height: number };

/** What the layout needs besides the content; handed in, so that it stays pure. */
export type LabelTools = {
	readonly type: TypeCase;
	readonly modulesOf: (text: string) => QrModules | null;
	/** Null while codes hold the bare tag. */
	readonly address: LabelAddress | null;
};

/**
 * The drawing of a label on this stock.
 *
 * What does not fit at the smallest size is shortened and named in `shortened`; the tag, the side and what becomes of the
 * thing never are. Refused when the label cannot hold its code (`address-too-long`) or not even the least words
 * (`label-too-small`).
 */
export function layoutLabel(content: LabelContent, stock: Stock, tools: LabelTools): Result<LabelDrawing, Refusal> {
	const { text, undrawable } = drawableText(labelText(content), tools.type);
	const coded = codeText(content.tag, tools.address);
	const modules = tools.modulesOf(coded);
	const sizes = sizesOf(stock);
	if (modules === null || !sizes.some((size) => codeBox(modules, LEAST_DOTS) <= roomForCode(size))) {
		return refuse("address-too-long", "The address is too long for a code on this label. Use a shorter one, or larger labels.", {
			facts: { coded },
		});
	}

	let best: SetLabel | null = null;
	for (const settings of [sizes.flatMap((size) => settingsFor(size, modules, text)), sizes.flatMap(lastResorts)]) {
		if (best !== null) break;
		for (const setting of settings) {
			const drawing = setLabel(text, { text: coded, modules }, setting, tools.type);
			if (drawing === null) continue;
			if (drawing.cost === 0) return ok(asDrawing(drawing, undrawable));
			// Of two that give up the same the later, smaller one gives up less of it; with nothing given up, larger is better.
			const isBetter = best === null || drawing.cost < best.cost || (drawing.cost === best.cost && drawing.shortened.length > 0);
			if (isBetter) best = drawing;
		}
	}
	if (best === null) {
		return refuse("label-too-small", `These labels are too small for what ${content.tag} must say. Use larger ones for it.`, {
			facts: { stock: stock.id, tag: content.tag },
		});
	}
	return ok(asDrawing(best, undrawable));
}

const asDrawing = ({ width, height, marks, shortened }: SetLabel, undrawable: readonly string[]): LabelDrawing => ({
	width,
	height,
	marks,
	shortened,
	undrawable,
});

function sizesOf(stock: Stock): Size[] {
	if (stock.kind !== "continuous") return [{ width: stock.width, height: stock.height }];
	const { width, shortest, longest } = stock;
	const heights = Array.from({ length: Math.ceil((longest - shortest) / LENGTH_STEP) }, (_, more) => shortest + more * LENGTH_STEP);
	return [...heights, longest].map((height) => ({ width, height }));
}

const roomForCode = ({ width, height }: Size): number => Math.min(width / 2, height);

/** The settings to try on a label of this size, best first. */
function settingsFor(size: Size, modules: QrModules, text: LabelText): Setting[] {
	// The code takes about a third of the width; below it stays room for the count, if there is one.
	const wanted = Math.min(size.width * 0.37, size.height * (text.count === null ? 0.8 : 0.66));
	let most = MOST_DOTS;
	while (most > GOOD_DOTS && codeBox(modules, most) > wanted) most--;
	while (most > LEAST_DOTS && codeBox(modules, most) > roomForCode(size)) most--;
	const least = Math.min(most, GOOD_DOTS);
	const codes = Array.from({ length: most - least + 1 }, (_, less) => most - less);
	const largest = Math.max(1, Math.min(LARGEST_SCALE, size.width / 46, size.height / 23));
	const scales = [...Array.from({ length: Math.ceil((largest - 1) / SCALE_STEP) }, (_, less) => largest - less * SCALE_STEP), 1];
	return [
		...codes.flatMap((dots) => scales.map((scale) => ({ ...size, ...ROOMY, dots, scale }))),
		...TIGHTER.flatMap((tighter) => codes.map((dots) => ({ ...size, ...tighter, dots, scale: 1 }))),
	];
}

/** With the smallest code; only for a label that cannot be set at all with a good one. */
const lastResorts = (size: Size): Setting[] => TIGHTER.map((tighter) => ({ ...size, ...tighter, dots: LEAST_DOTS, scale: 1 }));

/** The text with a box for every character that cannot be drawn, and those characters. */
function drawableText(text: LabelText, type: TypeCase): { text: LabelText; undrawable: string[] } {
	const undrawable = new Set<string>();
	const drawable = (words: string): string =>
		charactersOf(words)
			.map((cluster) => {
				if (type.covers(cluster)) return cluster;
				undrawable.add(cluster);
				return "□";
			})
			.join("");
	return {
		text: {
			...text,
			words: drawable(text.words),
			count: text.count && { ...text.count, of: drawable(text.count.of) },
			facts: text.facts.map(drawable),
			hazard: text.hazard && drawable(text.hazard),
			foot: text.foot.map(drawable),
		},
		undrawable: [...undrawable],
	};
}
