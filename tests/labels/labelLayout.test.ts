import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { day } from "@/lib/core/days";
import type { LabelAddress } from "@/lib/labels/address";
import { type CodeMark, darkRuns, type LabelDrawing, type Mark } from "@/lib/labels/drawing";
import { CAP_HEIGHT } from "@/lib/labels/face";
import { labelFonts } from "@/lib/labels/labelFonts";
import { layoutLabel } from "@/lib/labels/labelLayout";
import { DOT } from "@/lib/labels/labelMeasures";
import type { LabelContent } from "@/lib/labels/labelText";
import { QUIET_MODULES, qrModules } from "@/lib/labels/qrModules";
import { STOCKS, type Stock } from "@/lib/labels/stock";
import { formatTag, usableNumber } from "@/lib/tags/tag";
import { GEARMOTOR, good, OVERFULL, SHOP_ADDRESS, stock, TRIM_SCREWS, TUBE } from "./printed";

const ALL: readonly Stock[] = [...STOCKS, { kind: "roll", id: "own-102x152", name: "4 x 6 in", width: 101.6, height: 152.4 }];
const EXAMPLES = [GEARMOTOR, TRIM_SCREWS, TUBE, OVERFULL, { ...TRIM_SCREWS, print: 2 }, { tag: formatTag(0, 14), words: "Spare lamps" }];
/** The smallest common label: an address in its code leaves no room for a hazard. */
const SMALLEST = "a4-65";

const lay = (content: LabelContent, on: Stock, address: LabelAddress | null = null): LabelDrawing =>
	good(layoutLabel(content, on, { type: labelFonts(), modulesOf: qrModules, address }));
const textsOf = (drawing: LabelDrawing) => drawing.marks.flatMap((mark) => (mark.kind === "text" ? [mark] : []));
const wordsOf = (drawing: LabelDrawing): string =>
	textsOf(drawing)
		.map((mark) => mark.text)
		.join("\n");
const codeOf = (drawing: LabelDrawing): CodeMark => {
	const code = drawing.marks.find((mark): mark is CodeMark => mark.kind === "code");
	if (code === undefined) throw new Error("the label has no code");
	return code;
};

type Box = { left: number; top: number; right: number; bottom: number };
/** The room a mark takes; of text, from the top of its capitals to the line it stands on. */
function boxOf(mark: Mark): Box {
	switch (mark.kind) {
		case "text":
			return { left: mark.x, top: mark.y - mark.size * CAP_HEIGHT, right: mark.x + mark.width, bottom: mark.y };
		case "box":
			return { left: mark.x, top: mark.y, right: mark.x + mark.width, bottom: mark.y + mark.height };
		case "code": {
			const side = mark.modules.rows.length * mark.module;
			return { left: mark.x, top: mark.y, right: mark.x + side, bottom: mark.y + side };
		}
		case "shape": {
			const xs = mark.points.map(([x]) => x);
			const ys = mark.points.map(([, y]) => y);
			return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
		}
	}
}
const overlap = (a: Box, b: Box, slack = 0.01): boolean =>
	a.left < b.right - slack && b.left < a.right - slack && a.top < b.bottom - slack && b.top < a.bottom - slack;

/** Everything that is wrong with a drawing, in words; empty for a good one. */
function faultsOf(drawing: LabelDrawing): string[] {
	const faults: string[] = [];
	const code = codeOf(drawing);
	const quiet = QUIET_MODULES * code.module - 1e-6;
	const codeBox = boxOf(code);
	const around = { left: codeBox.left - quiet, top: codeBox.top - quiet, right: codeBox.right + quiet, bottom: codeBox.bottom + quiet };
	if (around.left < -1e-6 || around.top < -1e-6 || around.bottom > drawing.height + 1e-6) faults.push("the quiet zone leaves the label");
	if (Math.abs(code.module / DOT - Math.round(code.module / DOT)) > 1e-9) faults.push("a module is no whole number of dots");
	if (Math.round(code.module / DOT) < 3) faults.push("a module is under three dots");

	const texts = textsOf(drawing);
	for (const mark of drawing.marks) {
		const box = boxOf(mark);
		const name = mark.kind === "text" ? mark.text : mark.kind;
		if (box.left < 1 || box.top < 1 || box.right > drawing.width - 1.4 || box.bottom > drawing.height - 1.4)
			faults.push(`${name} leaves the label`);
		if (mark.kind !== "code" && overlap(box, around)) faults.push(`${name} stands in the code's quiet zone`);
		if (mark.kind === "text" && mark.size * CAP_HEIGHT < 2 - 1e-6) faults.push(`${name} is under 2 mm high`);
	}
	for (const [at, mark] of texts.entries()) {
		for (const other of texts.slice(at + 1)) if (overlap(boxOf(mark), boxOf(other))) faults.push(`${mark.text} overlaps ${other.text}`);
		for (const other of drawing.marks) {
			const isGround = mark.ink === "white" && other.kind === "box";
			if (other.kind === "box" && !isGround && overlap(boxOf(mark), boxOf(other))) faults.push(`${mark.text} is struck through`);
		}
	}
	return faults;
}

describe("a label", { timeout: 120_000 }, () => {
	describe.each(ALL)("on $name", (on) => {
		const examples = on.id === SMALLEST ? EXAMPLES.filter((content) => !("hazard" in content)) : EXAMPLES;
		it.each(examples)("keeps its words apart, on the label, out of the code's quiet zone, and 2 mm high: $words", (content) => {
			expect(faultsOf(lay(content, on))).toEqual([]);
			expect(faultsOf(lay(content, on, SHOP_ADDRESS))).toEqual([]);
		});

		it.each(examples)("always says the tag, the side and what becomes of it: $words", (content) => {
			const words = wordsOf(lay(content, on));
			expect(words).toContain(content.tag);
			if ("side" in content) expect(words).toMatch(/LEFT/);
			if ("fate" in content)
				expect(words).toMatch({ original: /ORIGINAL: KEEP/, keeping: /KEEP/, holding: /HOLD:/ }[content.fate ?? "holding"]);
		});
	});

	it("says everything on the usual rolls when it is an ordinary one", () => {
		for (const id of ["roll-62x29", "roll-57x32", "a4-21"]) {
			for (const content of [GEARMOTOR, TRIM_SCREWS, TUBE]) expect(lay(content, stock(id)).shortened).toEqual([]);
		}
	});

	it("names what it had to shorten, and gives up everything else before a hazard", () => {
		const drawing = lay(OVERFULL, stock("roll-62x29"));
		expect(drawing.shortened).toContain("words");
		expect(drawing.shortened).not.toContain("hazard");
		expect(wordsOf(drawing).replaceAll("\n", " ")).toContain("do not abrade, keep wet");
	});

	it("with a hazard goes on the smallest sheet label beside the bare tag; beside an address it is refused by name", () => {
		for (const content of [TUBE, OVERFULL]) {
			expect(faultsOf(lay(content, stock(SMALLEST)))).toEqual([]);
			const laid = layoutLabel(content, stock(SMALLEST), { type: labelFonts(), modulesOf: qrModules, address: SHOP_ADDRESS });
			expect(laid).toMatchObject({ ok: false, error: { code: "label-too-small", say: expect.stringContaining(content.tag) } });
		}
	});

	it("says at its foot which print it is from the second on, with day and initials, on every stock that has room for them", () => {
		for (const on of ALL) expect(wordsOf(lay(GEARMOTOR, on))).not.toContain("print");
		for (const on of ALL) {
			const drawing = lay({ ...GEARMOTOR, print: 3 }, on);
			if (!drawing.shortened.includes("day and initials")) expect(wordsOf(drawing)).toMatch(/4 Mar.* · IM · 3rd print/);
		}
		const usual = ["roll-62x29", "roll-57x32", "roll-40x30", "a4-21", "a4-24-70x37"].map((id) =>
			lay({ ...GEARMOTOR, print: 2 }, stock(id)),
		);
		expect(usual.map((drawing) => drawing.shortened)).toEqual(usual.map(() => []));
	});

	it("says LEFT together with from where that is seen", () => {
		for (const on of ALL) expect(wordsOf(lay(TRIM_SCREWS, on))).toMatch(/player's (place|view)/);
	});

	it("shows the count on its own, or before the words where the label is narrow", () => {
		const wide = textsOf(lay(TRIM_SCREWS, stock("roll-62x29"))).map((mark) => mark.text);
		expect(wide).toEqual(expect.arrayContaining(["5", "screws"]));
		const narrow = stock("roll-40x30");
		expect(wordsOf(lay(TRIM_SCREWS, narrow))).toContain("5 × Trim");
		expect(wordsOf(lay({ ...TRIM_SCREWS, words: "Harness branch", counted: "wires" }, narrow))).toContain("5 wires");
	});

	it("is as long on a continuous roll as its words need", () => {
		const roll = stock("continuous-62");
		expect(lay(GEARMOTOR, roll).height).toBe(29);
		expect(lay(OVERFULL, roll).height).toBeGreaterThan(45);
	});

	it("has a code of half-millimetre modules or more on every common stock but the smallest, which has them for the bare tag", () => {
		const module = (id: string, address: LabelAddress | null) => codeOf(lay(GEARMOTOR, stock(id), address)).module;
		for (const { id } of STOCKS) {
			expect(module(id, null)).toBeGreaterThan(0.5);
			if (id !== SMALLEST) expect(module(id, SHOP_ADDRESS)).toBeGreaterThan(0.5);
		}
		expect(module(SMALLEST, SHOP_ADDRESS)).toBeCloseTo(3 * DOT, 6);
	});

	it("prints a box for a character that no font has, and names it", () => {
		const drawing = lay({ ...GEARMOTOR, words: "Lamp 中" }, stock("roll-62x29"));
		expect(drawing.undrawable).toEqual(["中"]);
		expect(wordsOf(drawing)).toContain("Lamp □");
	});

	it("prints Greek, Czech, Cyrillic, Hebrew and Arabic letters", () => {
		const words = "λάμπα žluťoučký лампа מנורה مصباح";
		expect(lay({ ...GEARMOTOR, words }, stock("roll-100x50")).undrawable).toEqual([]);
	});

	it("is refused with what to do when the address is too long for its code", () => {
		const address = `HTTP://${"A".repeat(150)}` as LabelAddress;
		const laid = layoutLabel(GEARMOTOR, stock("roll-62x29"), { type: labelFonts(), modulesOf: qrModules, address });
		expect(laid).toMatchObject({ ok: false, error: { code: "address-too-long", say: expect.stringContaining("Use a shorter one") } });
	});

	it("stays whole for any content, on any stock, or is refused by name", () => {
		const line = fc.oneof(
			fc.lorem({ maxCount: 12 }),
			fc.string({ unit: "grapheme", maxLength: 60 }),
			fc.constantFrom("x".repeat(200), "", "4 x 1/2"),
		);
		const some = <T>(value: fc.Arbitrary<T>) => fc.option(value, { nil: undefined });
		const contents = fc.record({
			tag: fc
				.tuple(fc.integer({ min: 0, max: 9999 }), fc.integer({ min: 1, max: 9999 }))
				.filter(([machine, number]) => usableNumber(machine, number))
				.map(([machine, number]) => formatTag(machine, number)),
			words: line,
			machine: some(line),
			position: some(line),
			side: some(fc.constantFrom("left", "right", "front", "rear", "top", "bottom")),
			wayRound: some(line),
			thisWayUp: some(fc.boolean()),
			count: some(fc.integer({ min: 0, max: 100_000 })),
			counted: some(line),
			also: some(line),
			fate: some(fc.constantFrom("original", "keeping", "holding")),
			hazard: some(line),
			deed: some(line),
			day: some(fc.constant(day("2026-09-30"))),
			initials: some(fc.constantFrom("IM", "ČŽ", "WXYZ")),
			print: some(fc.integer({ min: 1, max: 40 })),
		});
		fc.assert(
			fc.property(contents, fc.constantFrom(...ALL), fc.constantFrom(null, SHOP_ADDRESS), (content, on, address) => {
				const laid = layoutLabel(content, on, { type: labelFonts(), modulesOf: qrModules, address });
				if (laid.ok) expect(faultsOf(laid.value)).toEqual([]);
				else expect(laid.error).toMatchObject({ code: "label-too-small", say: expect.stringContaining(content.tag) });
			}),
			{ seed: 20260304, numRuns: 120 },
		);
	});

	it("finds fault with a label that has faults", () => {
		const drawing = lay(GEARMOTOR, stock("roll-62x29"));
		const [first] = textsOf(drawing);
		if (first === undefined) throw new Error("no text");
		const spoilt = (mark: Mark): string[] => faultsOf({ ...drawing, marks: [...drawing.marks, mark] });
		expect(spoilt({ ...first, text: "twice" })).not.toEqual([]);
		expect(spoilt({ ...first, y: 500 })).not.toEqual([]);
		expect(spoilt({ kind: "box", x: 3, y: 3, width: 1, height: 1, ink: "black" })).not.toEqual([]);
	});
});

describe("the modules of a code", () => {
	it("are drawn as runs that cover every dark module once and no light one", () => {
		const modules = qrModules("HTTP://HOST/T/12-0147-K");
		if (modules === null) throw new Error("no code");
		const drawn = modules.rows.map((row) => row.map(() => 0));
		for (const [x, y, width] of darkRuns(modules)) {
			const row = drawn[y];
			for (let at = x; row && at < x + width; at++) row[at] = (row[at] ?? 0) + 1;
		}
		expect(drawn).toEqual(modules.rows.map((row) => row.map((dark) => (dark ? 1 : 0))));
	});
});
