// The demo's drawings: the same on every run, of the promised size, and never to be taken for photographs.

import sharp from "sharp";
import { describe, expect, test } from "vitest";
import { docksideMagpie } from "@/seed/data/docksideMagpie";
import { hairpinRidge } from "@/seed/data/hairpinRidge";
import { meteorMinnow } from "@/seed/data/meteorMinnow";
import { skerryLight } from "@/seed/data/skerryLight";
import { lettering, letteringWidth, unknownLetters } from "@/seed/drawings/lettering";
import { sketchKinds } from "@/seed/drawings/sketches";
import { drawPart, drawPortrait, partSvg, portraitSvg } from "@/seed/pictures";

const machines = [skerryLight, meteorMinnow, docksideMagpie, hairpinRidge];

describe("portraits", () => {
	test.each(machines.map((machine) => [machine.name, machine.number] as const))(
		"%s has one of 1600 x 1200, drawn alike every time",
		async (_name, number) => {
			const picture = await drawPortrait(number);
			const { format, width, height, exif } = await sharp(picture).metadata();
			expect({ format, width, height, exif }).toEqual({ format: "jpeg", width: 1600, height: 1200, exif: undefined });
			expect((await drawPortrait(number)).equals(picture)).toBe(true);
		},
	);

	test("a machine without one is a mistake of ours and says so", () => {
		expect(() => portraitSvg(13)).toThrow("machine 13");
	});
});

describe("bench pictures", () => {
	test("every kind is drawn, and no two alike", () => {
		const pictures = sketchKinds.map((kind) => partSvg("part", kind));
		expect(sketchKinds.length).toBeGreaterThan(40);
		expect(new Set(pictures).size).toBe(pictures.length);
	});

	test("a JPEG of 1200 x 900 that differs by tag, count, hand and bag", async () => {
		const { format, width, height } = await sharp(await drawPart("AC gearmotor", "motor", { tag: "12-0208-Q" })).metadata();
		expect({ format, width, height }).toEqual({ format: "jpeg", width: 1200, height: 900 });
		const pictures = [
			partSvg("trim screws", "screws", { count: 5 }),
			partSvg("trim screws", "screws", { count: 6 }),
			partSvg("trim screws", "screws", { count: 5, hand: "LEFT" }),
			partSvg("trim screws", "screws", { count: 5, bagged: true }),
			partSvg("trim screws", "screws", { count: 5, tag: "12-0205-W" }),
			partSvg("trim screws", "screws", { count: 5, going: "out" }),
			partSvg("trim screws", "screws", { count: 5, going: "in" }),
		];
		expect(new Set(pictures).size).toBe(pictures.length);
	});

	test("as many screws are drawn as were counted, up to two dozen", () => {
		const heads = (count: number) => partSvg("screws", "screws", { count }).split('d="M-40 -6').length - 1;
		expect([1, 4, 6, 8, 10, 24, 31].map(heads)).toEqual([1, 4, 6, 8, 10, 24, 24]);
	});

	test("every picture carries the word that it is a drawing", () => {
		const mark = lettering("DRAWING", { x: 0, y: 0, height: 20, colour: "#1c2424", anchor: "start" }).replace(
			/transform="translate\([^)]*\) scale/,
			"",
		);
		const strokes = mark.slice(mark.indexOf("<path"));
		for (const picture of [...machines.map((machine) => portraitSvg(machine.number)), ...sketchKinds.map((kind) => partSvg("part", kind))])
			expect(picture).toContain(strokes);
	});
});

describe("lettering", () => {
	test("has a letter for every name and label of the demo", () => {
		const texts = machines.flatMap((machine) => [
			machine.name,
			...machine.positions.map((position) => position.name),
			...machine.newParts.map((part) => part.name),
			...machine.bags.flatMap((bag) => [bag.label, bag.tag]),
		]);
		expect(texts.length).toBeGreaterThan(180);
		expect(texts.flatMap((text) => unknownLetters(text).map((letter) => `${letter} in ${text}`))).toEqual([]);
	});

	test("a line that would be too wide is made smaller until it fits", () => {
		const text = "a very long name of a very small thing";
		const wide = letteringWidth(text, 34);
		expect(wide).toBeGreaterThan(400);
		const scale = Number(/scale\(([\d.]+)\)/.exec(lettering(text, { x: 0, y: 0, height: 34, colour: "#000", fit: 400 }))?.[1]);
		expect(letteringWidth(text, scale * 6)).toBeLessThanOrEqual(400.5);
	});
});
