// A label as SVG for the screen: the same drawing that goes to paper.

import { type Drawing, darkRuns, type Mark } from "@/lib/labels/drawing";
import type { Face } from "@/lib/labels/face";

const FAMILY: Readonly<Record<Face, string>> = {
	sans: `font-family="'Atkinson Hyperlegible Next','DejaVu Sans',sans-serif" font-weight="400"`,
	bold: `font-family="'Atkinson Hyperlegible Next','DejaVu Sans',sans-serif" font-weight="700"`,
	mono: `font-family="'Atkinson Hyperlegible Mono','DejaVu Sans Mono',monospace" font-weight="700"`,
};

const ESCAPES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };
const escaped = (text: string): string => text.replace(/[&<>"']/g, (character) => ESCAPES[character] ?? character);

// A ten thousandth of a millimetre is finer than any printer, and keeps the text short.
const n = (value: number): string => String(Math.round(value * 10_000) / 10_000);

/**
 * The drawing as a complete `<svg>` in millimetres, with the words of the label as its name for those who listen.
 * Text is set to the widths that were measured for paper, so that a missing font does not change the layout.
 */
export function labelSvg(drawing: Drawing): string {
	const { width, height, marks } = drawing;
	const said = marks.flatMap((mark) => (mark.kind === "text" ? [mark.text] : [])).join(" ");
	return [
		`<svg xmlns="http://www.w3.org/2000/svg" width="${n(width)}mm" height="${n(height)}mm" viewBox="0 0 ${n(width)} ${n(height)}" role="img" aria-label="${escaped(said)}">`,
		`<rect width="${n(width)}" height="${n(height)}" fill="white"/>`,
		...marks.map(svgOf),
		"</svg>",
	].join("");
}

function svgOf(mark: Mark): string {
	switch (mark.kind) {
		case "box":
			return `<rect x="${n(mark.x)}" y="${n(mark.y)}" width="${n(mark.width)}" height="${n(mark.height)}" fill="${mark.ink}"/>`;
		case "shape":
			return `<polygon points="${mark.points.map(([x, y]) => `${n(x)},${n(y)}`).join(" ")}" fill="${mark.ink}"/>`;
		case "text":
			return `<text x="${n(mark.x)}" y="${n(mark.y)}" font-size="${n(mark.size)}" textLength="${n(mark.width)}" lengthAdjust="spacingAndGlyphs" ${FAMILY[mark.face]} fill="${mark.ink}">${escaped(mark.text)}</text>`;
		case "code": {
			const path = darkRuns(mark.modules)
				.map(([x, y, width, height]) => `M${x} ${y}h${width}v${height}h-${width}z`)
				.join("");
			// Drawn in modules and scaled once: every edge of the code then falls on the same grid.
			return `<path transform="translate(${n(mark.x)} ${n(mark.y)}) scale(${mark.module})" d="${path}" fill="black" shape-rendering="crispEdges"/>`;
		}
	}
}
