import { describe, expect, it } from "vitest";
import { labelFonts } from "@/lib/labels/labelFonts";
import { layoutLabel } from "@/lib/labels/labelLayout";
import { labelSvg } from "@/lib/labels/labelSvg";
import type { LabelContent } from "@/lib/labels/labelText";
import { qrModules } from "@/lib/labels/qrModules";
import { GEARMOTOR, good, OVERFULL, SHOP_ADDRESS, stock, TRIM_SCREWS, TUBE } from "./printed";

const drawingOf = (content: LabelContent) =>
	good(layoutLabel(content, stock("roll-62x29"), { type: labelFonts(), modulesOf: qrModules, address: SHOP_ADDRESS }));

describe("a label on the screen", () => {
	it.each([GEARMOTOR, TRIM_SCREWS, TUBE, OVERFULL])("has every word of the paper, at the same place and width: $words", (content) => {
		const drawing = drawingOf(content);
		const svg = labelSvg(drawing);
		const drawn = [...svg.matchAll(/<text x="([\d.]+)" y="([\d.]+)" font-size="([\d.]+)" textLength="([\d.]+)"[^>]*>([^<]*)<\/text>/g)];
		const round = (value: number) => Math.round(value * 10_000) / 10_000;
		expect(drawn.map(([, ...numbers]) => [...numbers.slice(0, 4).map(Number), numbers[4]?.replaceAll("&#39;", "'")])).toEqual(
			drawing.marks.flatMap((mark) =>
				mark.kind === "text" ? [[round(mark.x), round(mark.y), round(mark.size), round(mark.width), mark.text]] : [],
			),
		);
	});

	it("is as large as the label and has its words as a name for those who listen", () => {
		const svg = labelSvg(drawingOf(GEARMOTOR));
		expect(svg).toMatch(/^<svg [^>]*width="62mm" height="29mm" viewBox="0 0 62 29" role="img" aria-label="([^"]*)"/);
		expect(/aria-label="([^"]*)"/.exec(svg)?.[1]).toBe(
			"12-0208-Q AC gearmotor THIS WAY UP Skerry Light · motor on drive plate 1 piece ORIGINAL: KEEP out 4 Mar 2026 · IM",
		);
	});

	it("cannot be made to hold more than letters by what somebody typed", () => {
		const svg = labelSvg(drawingOf({ ...GEARMOTOR, words: `<script>alert("1")</script>`, machine: `"><img onerror='x' & co` }));
		expect(svg).not.toContain("<script");
		expect(svg).not.toContain("<img");
		expect(svg).toContain("&lt;script&gt;");
		expect(svg.match(/<[a-z]+/g)?.every((tag) => ["<svg", "<rect", "<text", "<path", "<polygon"].includes(tag))).toBe(true);
	});

	it("is black and white only", () => {
		const colours = new Set([...labelSvg(drawingOf(OVERFULL)).matchAll(/fill="([^"]+)"/g)].map(([, colour]) => colour));
		expect([...colours].sort()).toEqual(["black", "white"]);
	});
});
