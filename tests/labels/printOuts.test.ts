// Print-outs that are no labels: flags of wires, lists of bags, sheets for shelves, test grids.

import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { day } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { sayConnection, takeOut } from "@/lib/fittings/changes";
import { type BagContents, type ListTools, listPages, listStrip } from "@/lib/labels/contentsList";
import { bagContents, listsOnPaper, paperFor } from "@/lib/labels/contentsQueries";
import type { Drawing } from "@/lib/labels/drawing";
import { CAP_HEIGHT } from "@/lib/labels/face";
import { type FlagContent, flagSize, isForFlags, layoutFlag } from "@/lib/labels/flagLayout";
import { labelFonts } from "@/lib/labels/labelFonts";
import { paperPdf } from "@/lib/labels/paper";
import { qrModules } from "@/lib/labels/qrModules";
import { labelContents } from "@/lib/labels/queries";
import { shelvesOf } from "@/lib/labels/shelfQueries";
import { shelfSheet } from "@/lib/labels/shelfSheet";
import { A4, FLAG_ROLL, LETTER, STOCKS } from "@/lib/labels/stock";
import { testGrid } from "@/lib/labels/testGrid";
import { flagsOnPaper, wiresOf } from "@/lib/labels/wireQueries";
import { addLocation, tagPlaces } from "@/lib/store/changes";
import { formatTag, type Tag } from "@/lib/tags/tag";
import { type AMachine, aMachine } from "@/tests/fittings/aMachine";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";
import { pagesDrawn } from "./contentStream";
import { askPoppler, good, pixelPagesOf, pngOf, readByOthers, stock } from "./printed";

const type = labelFonts();
const madeAt = instant("2026-03-04T08:00:00.000Z");
const textsOf = (drawing: Drawing) => drawing.marks.flatMap((mark) => (mark.kind === "text" ? [mark] : []));
const wordsOf = (drawing: Drawing): string =>
	textsOf(drawing)
		.map(({ text }) => text)
		.join(" ");

/** Words that leave the paper, are under 2 mm, or run into each other. */
function faultsOf(drawing: Drawing): string[] {
	const boxes = textsOf(drawing).map(({ x, y, width, size, text }) => ({
		text,
		cap: size * CAP_HEIGHT,
		left: x,
		right: x + width,
		top: y - size * CAP_HEIGHT,
		bottom: y,
	}));
	return boxes.flatMap((box, at) => [
		...(box.left < 0 || box.top < 0 || box.right > drawing.width + 1e-6 || box.bottom > drawing.height
			? [`${box.text} leaves the paper`]
			: []),
		...(box.cap < 2 - 1e-6 ? [`${box.text} is under 2 mm high`] : []),
		...boxes
			.slice(at + 1)
			.filter((other) => box.left < other.right && other.left < box.right && box.top < other.bottom && other.top < box.bottom)
			.map((other) => `${box.text} runs into ${other.text}`),
	]);
}

const FLAG: FlagContent = {
	tag: "W12a",
	terminal: "X1-1",
	device: "12 k03 sign box",
	colour: "RDBU",
	colourWords: "red and blue",
	other: "block 4b",
};
const LONG: FlagContent = {
	tag: "",
	terminal: "solder lug on the far side of the transformer",
	device: "12 k27 a very long name of a device, behind the fish paper",
	colour: "GNYE",
	colourWords: "green and yellow, seen: faded cloth",
	other: "the terminal strip below the second tray from the top",
};

describe("a flag round a wire", () => {
	const forFlags = [FLAG_ROLL, ...STOCKS].filter(isForFlags);

	it("can be made of the flag roll and of every common label that is long enough", () => {
		expect(STOCKS.filter((on) => !isForFlags(on)).map(({ id }) => id)).toEqual(["roll-40x30", "a4-65"]);
		expect(flagSize(FLAG_ROLL)).toEqual({ width: 75, height: 25 });
	});

	it.each(forFlags)("says the same on both sides of the fold, in words that keep apart: $name", (on) => {
		for (const content of [FLAG, LONG]) {
			const flag = good(layoutFlag(content, on, type));
			expect(faultsOf(flag)).toEqual([]);
			const texts = textsOf(flag);
			const [here, there] = [texts.filter(({ x }) => x < flag.width / 2), texts.filter(({ x }) => x >= flag.width / 2)];
			expect(there.map(({ text, y, size }) => [text, y, size])).toEqual(here.map(({ text, y, size }) => [text, y, size]));
			// What goes round the wire stays free: 3 mm on either side of the fold.
			for (const { x, width } of here) expect(x + width).toBeLessThan(flag.width / 2 - 2.99);
			for (const { x } of there) expect(x).toBeGreaterThan(flag.width / 2 + 2.99);
			const fold = flag.marks.filter((mark) => mark.kind === "box");
			for (const mark of fold) if (mark.kind === "box") expect(mark.x + mark.width / 2).toBeCloseTo(flag.width / 2, 6);
			expect(fold.length).toBeGreaterThan(5);
		}
	});

	it("says terminal, device, the colour's code of IEC 60757 and its words, and the other end", () => {
		const flag = good(layoutFlag(FLAG, FLAG_ROLL, type));
		for (const words of ["W12a", "X1-1", "sign box", "RDBU", "red and blue", "to block 4b"]) expect(wordsOf(flag)).toContain(words);
		expect(flag.shortened).toEqual([]);
		expect(wordsOf(good(layoutFlag(LONG, FLAG_ROLL, type)))).toContain("GNYE");
	});

	it("is refused on a label that cannot hold it, with what to take instead", () => {
		expect(layoutFlag(FLAG, stock("a4-65"), type)).toMatchObject({
			ok: false,
			error: { code: "label-too-small", say: expect.stringContaining("flag roll") },
		});
	});
});

const CONTENTS = (lines: number): BagContents => ({
	tag: formatTag(12, 208),
	words: "AC gearmotor, on its plate",
	kind: "keeping tote",
	machine: "12 Skerry Light",
	caution: "this side up; not working, winding open, keep dry and away from rubber",
	where: "Back room · Rack B · Shelf B2",
	pieces: 9,
	more: lines > 100 ? 7 : 0,
	lines: Array.from({ length: lines }, (_, at) => ({
		count: at % 3 === 2 ? "" : String(at + 1),
		words: `No.8 wood x ${at + 1}, round slotted`,
		notes: [`for glazing bead, left (k${at})`],
	})),
});
const made = { day: day("2026-03-04"), initials: "IM" };
const tools: ListTools = {
	type,
	codeOf: (tag) => {
		const modules = qrModules(tag);
		return modules && { text: tag, modules };
	},
};

describe("a list of what is in a bag", () => {
	it("as a strip says every line with its count, and grows with them", () => {
		for (const width of [38, 62, 89]) {
			const strip = listStrip(CONTENTS(12), width, made, tools);
			expect(faultsOf(strip)).toEqual([]);
			expect(strip.height).toBeGreaterThan(listStrip(CONTENTS(2), width, made, tools).height);
			for (const words of ["12-0208-Q", "AC gearmotor", "Skerry", "winding", "11", "(k11)", "9 pieces", "4 Mar 2026", "IM"])
				expect(wordsOf(strip)).toContain(words);
		}
	});

	it("on pages loses no line, stays on the paper, and says where a long one goes on", () => {
		const pages = listPages([CONTENTS(3), CONTENTS(120), CONTENTS(3)], LETTER, made, tools);
		const drawings = pages.flatMap((page) => page.drawings.map(({ drawing }) => drawing));
		expect(drawings.flatMap(faultsOf)).toEqual([]);
		const words = drawings.map(wordsOf).join(" ");
		for (let at = 0; at < 120; at++) expect(words).toContain(`(k${at})`);
		expect(words).toContain("12-0208-Q, continued");
		expect(words).toContain("and 7 more");
		for (const { width, height, drawings: placed } of pages) {
			expect([width, height]).toEqual([215.9, 279.4]);
			for (const { x, y, drawing } of placed)
				expect([x + drawing.width <= width - 11.9, y + drawing.height <= height - 11.9]).toEqual([true, true]);
		}
	});
});

describe("a sheet for a shelf", () => {
	const code = {
		tag: "0-0231-M",
		text: "HTTP://QUAYLANE.LOCAL/T/0-0231-M",
		modules: good({ ok: true, value: qrModules("HTTP://QUAYLANE.LOCAL/T/0-0231-M") }),
	};
	const tag = code.modules === null ? null : { ...code, modules: code.modules };

	it.each(["2", "Shelf B2", "Transformers and motors, heavy", "Donaudampfschifffahrtsgesellschaft", "x".repeat(60)])(
		"bears the name as large as it fits, whole: %s",
		(name) => {
			for (const paper of [A4, LETTER]) {
				const sheet = shelfSheet({ name, way: ["Back room", "Rack B"], tag }, paper, type);
				expect(sheet.width).toBeGreaterThan(sheet.height);
				expect(faultsOf(sheet)).toEqual([]);
				expect(wordsOf(sheet)).toContain("Back room · Rack B");
				const bold = textsOf(sheet).filter(({ face }) => face === "bold");
				expect(bold.map(({ text }) => text).join(name.includes(" ") ? " " : "")).toBe(name);
				// As large as fits: a tenth more would leave the room that the name has.
				const widest = Math.max(...bold.map(({ width }) => width));
				const height = (bold.at(-1)?.y ?? 0) - (bold[0]?.y ?? 0) + (bold[0]?.size ?? 0);
				if (name.length < 40) expect(widest > (sheet.width - 28) * 0.85 || height > (sheet.height - 100) * 0.75).toBe(true);
			}
		},
	);

	it("has a code that a phone reads from it", async () => {
		const drawing = shelfSheet({ name: "Shelf B2", way: ["Back room"], tag }, A4, type);
		const pdf = await paperPdf([{ width: drawing.width, height: drawing.height, drawings: [{ x: 0, y: 0, drawing }] }], "Shelf", madeAt);
		const [page] = await pixelPagesOf(pdf, 72);
		if (page === undefined) throw new Error("no page");
		expect(await readByOthers(await pngOf(page))).toMatchObject({ jsqr: code.text, zxing: code.text });
	});
});

describe("a test grid", () => {
	it.each(STOCKS.filter(({ kind }) => kind === "sheet"))("has a line on the middle of every edge of every label: $name", async (on) => {
		if (on.kind !== "sheet") throw new Error("no sheet");
		const drawing = testGrid(on, type);
		const [page] = pagesDrawn(
			await paperPdf([{ width: drawing.width, height: drawing.height, drawings: [{ x: 0, y: 0, drawing }] }], "Grid", madeAt),
		);
		expect(page?.width).toBeCloseTo(on.pageWidth, 1);
		const lines = (page?.paths ?? []).map(({ box }) => box);
		const upright = lines
			.filter(({ top, bottom }) => Math.abs(bottom - top - on.height) < 0.2)
			.map(({ left, right }) => (left + right) / 2);
		const level = lines.filter(({ left, right }) => Math.abs(right - left - on.width) < 0.2).map(({ top, bottom }) => (top + bottom) / 2);
		for (let column = 0; column < on.columns; column++) {
			for (const edge of [on.left + column * on.pitchX, on.left + column * on.pitchX + on.width]) {
				expect(Math.min(...upright.map((at) => Math.abs(at - edge)))).toBeLessThan(0.02);
			}
		}
		for (let row = 0; row < on.rows; row++) {
			for (const edge of [on.top + row * on.pitchY, on.top + row * on.pitchY + on.height]) {
				expect(Math.min(...level.map((at) => Math.abs(at - edge)))).toBeLessThan(0.02);
			}
		}
		// The rule across the first label's left edge: a stroke at each millimetre, five to either side.
		const strokes = lines
			.filter(({ left, right, top, bottom }) => right - left < 0.2 && bottom - top < 3.1)
			.map(({ left, right }) => (left + right) / 2);
		for (let mm = -5; mm <= 5; mm++) expect(Math.min(...strokes.map((at) => Math.abs(at - (on.left + mm))))).toBeLessThan(0.02);
	});
});

describe("print-outs from the shop's book", () => {
	let shop: FreshShop;
	let machine: AMachine;
	beforeAll(async () => {
		shop = await freshShop();
		machine = await aMachine(shop, { door: { fixings: 4 }, lamp: { wire: "BK" } });
		good(
			await sayConnection(
				{ positionId: machine.position("lamp"), from: "L2", to: "block 7", colour: "burd", tagFrom: "L2 RDBU", tagTo: "W9 block 7" },
				shop.env(),
			),
		);
		good(await takeOut({ machineId: machine.id, positionId: machine.position("door"), into: { kind: "new-bag", bag: {} } }, shop.env()));
	});
	afterAll(() => shop.close());

	it("the flags of a wire say each what its own end is and where the other one goes, and no tag that says the same again", async () => {
		const wires = await wiresOf(shop.store.read, machine.id, null);
		const [here, there] = wires.find(({ ends }) => ends[0].terminal === "L2")?.ends ?? [];
		expect(here).toMatchObject({ terminal: "L2", tag: "", colour: "RDBU", colourWords: "red and blue", other: "block 7" });
		expect(there).toMatchObject({ terminal: "block 7", tag: "W9", colour: "RDBU", other: expect.stringMatching(/ L2$/) });
		const { number } = await shop.store.read.machine.findUniqueOrThrow({ where: { id: machine.id } });
		const paper = good(await flagsOnPaper(shop.store.read, { machine: number, position: null, start: 1 }, madeAt));
		const pages = pagesDrawn(paper.pdf);
		expect(pages).toHaveLength(2 * wires.length);
		expect(pages.map(({ width, height }) => [Math.round(width), Math.round(height)])).toEqual(pages.map(() => [25, 75]));
		expect(await flagsOnPaper(shop.store.read, { machine: 9999, position: null, start: 1 }, madeAt)).toMatchObject({
			ok: false,
			error: { code: "no-machine" },
		});
	});

	it("the list of a bag says parts and fixings with their counts and positions; on a roll it is cut to length", async () => {
		const bag = await shop.store.read.tag.findFirstOrThrow({ where: { bagId: { not: null } } });
		const tags = [bag.id as Tag];
		const [list] = await bagContents(shop.store.read, tags);
		expect(list?.lines.map(({ count }) => count)).toContain("4");
		expect(list?.lines.flatMap(({ notes }) => notes).join()).toMatch(/for .*door/i);
		const by = { at: madeAt, initials: "IM" };
		const roll = good(await listsOnPaper(shop.store.read, { tags }, stock("continuous-62"), by));
		const [strip] = pagesDrawn(roll.pdf);
		expect(strip?.width).toBeCloseTo(62, 1);
		expect(strip?.height).toBeGreaterThanOrEqual(29);
		const page = good(await listsOnPaper(shop.store.read, { tags }, stock("roll-62x29"), by));
		expect(pagesDrawn(page.pdf)[0]?.width).toBeCloseTo(210, 1);
		expect(await askPoppler("pdftotext", page.pdf)).toContain(bag.id);
		expect([paperFor(stock("continuous-62")), paperFor(stock("letter-30")), paperFor(stock("a4-21"))]).toEqual(["roll", "letter", "a4"]);
		expect(await listsOnPaper(shop.store.read, { tags: [formatTag(0, 999)] }, stock("a4-21"), by)).toMatchObject({
			ok: false,
			error: { code: "no-bags" },
		});
	});

	it("the sheet of a place has its way and, once it has one, its tag", async () => {
		const room = good(await addLocation({ kind: "room", name: "Back room" }, shop.env()));
		const shelf = good(await addLocation({ kind: "shelf", name: "Shelf 2", parentId: room.locationId }, shop.env()));
		expect(await shelvesOf(shop.store.read, [shelf.locationId, "gone"])).toEqual([{ name: "Shelf 2", way: ["Back room"], tag: null }]);
		const { tags } = good(await tagPlaces({ locationIds: [shelf.locationId] }, shop.env()));
		const [sheet] = await shelvesOf(shop.store.read, [shelf.locationId]);
		expect(sheet?.tag?.tag).toBe(tags[0]?.tag);
		// A small label of the place says the same.
		const [label] = await labelContents(shop.store.read, [tags[0]?.tag as Tag], "Europe/Amsterdam");
		expect(label).toMatchObject({ words: "Shelf 2", position: "Back room" });
	});
});
