// A list of what is in a bag, to lie in it or to tick off: figures first, since the count is the check.

import { type Day, formatDayShort } from "@/lib/core/days";
import type { CodeMark, Drawing } from "@/lib/labels/drawing";
import type { TypeCase } from "@/lib/labels/face";
import { charactersOf, wrap } from "@/lib/labels/fitText";
import { writeHazard } from "@/lib/labels/labelBands";
import { DOT, INSET, RULE, SMALLEST_CAP } from "@/lib/labels/labelMeasures";
import type { PaperPage } from "@/lib/labels/paper";
import { type Pen, penWith } from "@/lib/labels/pen";
import { type QrModules, QUIET_MODULES } from "@/lib/labels/qrModules";
import type { Tag } from "@/lib/tags/tag";

/** What a bag holds, and what a hand must know of it. */
export type BagContents = {
	readonly tag: Tag;
	readonly words: string;
	/** "keeping tote", "holding bag". */
	readonly kind: string;
	readonly machine: string;
	readonly caution: string;
	readonly where: string;
	readonly pieces: number;
	readonly lines: readonly ContentsLine[];
	/** Lines that are left off; a bag of more than some hundred is not listed whole. */
	readonly more: number;
};
export type ContentsLine = {
	/** How many; empty for a bag in it. */
	readonly count: string;
	readonly words: string;
	/** For which position, "original", tightness, what to watch: one under the other. */
	readonly notes: readonly string[];
};

/** Lists are made on this day. */
export type ListMade = { readonly day: Day; readonly initials: string };
export type ListTools = { readonly type: TypeCase; readonly codeOf: (tag: Tag) => { text: string; modules: QrModules } | null };

const CAP = 2.2;
const PITCH = 1.5;
/** Longest list that is cut off a roll; a longer one goes on a page. */
export const LONGEST_LIST = 300;

/** A piece of the list that is not broken: so high, and drawn so from its top. */
type Piece = { readonly height: number; readonly draw: (pen: Pen, x: number, y: number) => void };

/** The list as one strip of this width, as long as it comes. */
export function listStrip(bag: BagContents, width: number, made: ListMade, tools: ListTools): Drawing {
	const pen = penWith(tools.type);
	let y = INSET;
	for (const piece of piecesOf(bag, width - 2 * INSET, made, tools)) {
		piece.draw(pen, INSET, y);
		y += piece.height;
	}
	return { width, height: y + INSET, marks: pen.marks };
}

const MARGIN = 12;
const GUTTER = 8;

/** The lists of several bags on pages of this size, two columns a page; a bag stays together where it can. */
export function listPages(
	bags: readonly BagContents[],
	{ pageWidth, pageHeight }: { readonly pageWidth: number; readonly pageHeight: number },
	made: ListMade,
	tools: ListTools,
): PaperPage[] {
	const column = (pageWidth - 2 * MARGIN - GUTTER) / 2;
	const room = pageHeight - 2 * MARGIN;
	const columns: Pen[] = [penWith(tools.type)];
	let y = 0;
	const nextColumn = (): void => {
		columns.push(penWith(tools.type));
		y = 0;
	};
	for (const bag of bags) {
		const pieces = piecesOf(bag, column, made, tools);
		const height = pieces.reduce((sum, piece) => sum + piece.height, 0);
		if (y > 0 && y + height > room) nextColumn();
		for (const [at, piece] of pieces.entries()) {
			if (y > 0 && y + piece.height > room) {
				nextColumn();
				if (at > 0) {
					const again = continued(bag, column, tools);
					again.draw(columns.at(-1) ?? penWith(tools.type), 0, y);
					y += again.height;
				}
			}
			piece.draw(columns.at(-1) ?? penWith(tools.type), 0, y);
			y += piece.height;
		}
		y += 2 * PITCH * CAP;
	}
	const pages: PaperPage[] = [];
	for (let at = 0; at < columns.length; at += 2) {
		const drawings = columns.slice(at, at + 2).map(({ marks }, side) => ({
			x: MARGIN + side * (column + GUTTER),
			y: MARGIN,
			drawing: { width: column, height: room, marks },
		}));
		pages.push({ width: pageWidth, height: pageHeight, drawings });
	}
	return pages;
}

const words = (text: string, type: TypeCase): string =>
	charactersOf(
		text
			.normalize("NFC")
			.replace(/[\s\p{Cc}\p{Cf}]+/gu, " ")
			.trim(),
	)
		.map((cluster) => (type.covers(cluster) ? cluster : "□"))
		.join("");

function piecesOf(bag: BagContents, width: number, made: ListMade, tools: ListTools): Piece[] {
	const { type } = tools;
	const foot = [`${bag.pieces} ${bag.pieces === 1 ? "piece" : "pieces"}`, `listed ${formatDayShort(made.day)}`, made.initials]
		.filter(Boolean)
		.join(" · ");
	return [
		headPiece(bag, width, tools),
		bag.caution === "" ? rulePiece(width) : cautionPiece(words(bag.caution, type), width, type),
		...(bag.lines.length === 0
			? [textPiece([{ text: "Nothing is in it.", bold: false }], 0, width, type)]
			: bag.lines.map((line) => linePiece(line, width, type))),
		...(bag.more > 0 ? [textPiece([{ text: `and ${bag.more} more`, bold: false }], countRoom(type), width, type)] : []),
		rulePiece(width),
		textPiece([{ text: foot, bold: false }], 0, width, type),
	];
}

/** Code left, tag and words right of it, then what kind of bag of which machine, and where it lies. */
function headPiece(bag: BagContents, width: number, { type, codeOf }: ListTools): Piece {
	const code = codeOf(bag.tag);
	const module = 4 * DOT;
	const beside = code === null ? 0 : (code.modules.rows.length + QUIET_MODULES) * module;
	const measure = penWith(type);
	const tagCap = Math.min(4, (width - beside) / measure.widthAt("mono", 1)(bag.tag));
	const titleCap = CAP * 1.25;
	const title = wrap(words(bag.words, type), () => width - beside, measure.widthAt("bold", titleCap)).slice(0, 4);
	const facts = [bag.machine, bag.kind, bag.where]
		.map((fact) => words(fact, type))
		.filter((fact) => fact !== "")
		.flatMap((fact) => wrap(fact, () => width - beside, measure.widthAt("sans", SMALLEST_CAP)));
	const height = Math.max(beside, tagCap + title.length * titleCap * PITCH + facts.length * SMALLEST_CAP * PITCH) + CAP * 0.8;
	return {
		height,
		draw: (pen, x, top) => {
			if (code !== null) {
				const mark: CodeMark = { kind: "code", x, y: top, module, ...code };
				pen.marks.push(mark);
			}
			let y = top + tagCap;
			pen.write(bag.tag, x + beside, y, "mono", tagCap);
			for (const line of title) {
				y += titleCap * PITCH;
				pen.write(line, x + beside, y, "bold", titleCap);
			}
			for (const line of facts) {
				y += SMALLEST_CAP * PITCH;
				pen.write(line, x + beside, y, "sans", SMALLEST_CAP);
			}
		},
	};
}

/** The head of a list that goes on in the next column. */
function continued(bag: BagContents, width: number, { type }: ListTools): Piece {
	return textPiece([{ text: `${bag.tag}, continued`, bold: true }], 0, width, type);
}

function cautionPiece(caution: string, width: number, type: TypeCase): Piece {
	const trial = penWith(type);
	const { top } = writeHazard(trial, caution, { left: 0, right: width, floor: 0 }, 1, 1, 6);
	const height = -top;
	return {
		height: height + CAP,
		draw: (pen, x, y) => void writeHazard(pen, caution, { left: x, right: x + width, floor: y + height }, 1, 1, 6),
	};
}

const rulePiece = (width: number): Piece => ({ height: CAP * 0.9, draw: (pen, x, y) => pen.box(x, y, width, RULE) });

/** Room for the count, to the widest figure that a bag is likely to hold. */
const countRoom = (type: TypeCase): number => penWith(type).widthAt("bold", CAP * 1.1)("000") + 1.2;

function linePiece({ count, words: said, notes }: ContentsLine, width: number, type: TypeCase): Piece {
	const left = countRoom(type);
	const text = textPiece([{ text: said, bold: true }, ...notes.map((note) => ({ text: note, bold: false }))], left, width, type);
	return {
		height: text.height + CAP * 0.35,
		draw: (pen, x, y) => {
			const cap = CAP * 1.1;
			if (count !== "") pen.write(count, x + left - 1.2 - pen.widthAt("bold", cap)(count), y + cap, "bold", cap);
			text.draw(pen, x, y);
		},
	};
}

function textPiece(texts: readonly { text: string; bold: boolean }[], left: number, width: number, type: TypeCase): Piece {
	const measure = penWith(type);
	const lines = texts.flatMap(({ text, bold }) => {
		const cap = bold ? CAP : SMALLEST_CAP;
		const face = bold ? ("bold" as const) : ("sans" as const);
		return wrap(words(text, type), () => width - left, measure.widthAt(face, cap)).map((line) => ({ line, cap, face }));
	});
	return {
		height: lines.reduce((sum, { cap }) => sum + cap * PITCH, 0) + CAP * 0.3,
		draw: (pen, x, top) => {
			let y = top;
			for (const { line, cap, face } of lines) {
				y += cap * PITCH;
				pen.write(line, x + left, y - cap * (PITCH - 1), face, cap);
			}
		},
	};
}
