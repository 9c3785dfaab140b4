// The ten tasks by paper tag, phone photo and spreadsheet, written out in full. It is done well: the sheet is open and has a
// row a part; the photo folder has a folder a machine; nothing that a careful person writes today is written that the shop's
// own book would not hold as well. Where the book does more (a tag that cannot be mistyped, what is behind what), the paper
// way is not charged for it.

import { pen, press, type Step, shoot, type } from "./keystrokes";

const SHEET = press("the tab of the spreadsheet");
const FOLDER = [press("the photos on the phone"), press("the photo"), press("share"), press("the machine's folder")];

export const PAPER: Readonly<Record<string, readonly Step[]>> = {
	"take out, photo, new bag, label": [
		shoot("it in place"),
		...FOLDER,
		type("21 lamp 03 place"),
		pen("21-0203"),
		pen("BRASS GREBE"),
		pen("Lamp 03"),
		pen("2 x M4 x 10"),
		pen("29 Nov PS"),
		SHEET,
		press("the first empty row"),
		type("21-0203"),
		type("Lamp 03"),
		type("2 x M4 x 10"),
		type("29-11"),
		type("holding"),
	],
	"take out into the same bag, no label": [
		shoot("it in place"),
		...FOLDER,
		type("21 lamp 04 place"),
		pen("Lamp 04"),
		SHEET,
		press("the first empty row"),
		type("21-0203"),
		type("Lamp 04"),
		type("29-11"),
	],
	"put a bag on a shelf": [SHEET, press("find"), type("21-0203"), press("the cell of its place"), type("Back room shelf 1")],
	"find where a part is": [SHEET, press("find"), type("Lamp 03"), press("the next one found"), press("across to its place")],
	"what is in this bag": [SHEET, press("the filter"), type("21-0203"), press("show them")],
	"put it back in": [
		SHEET,
		press("find"),
		type("Lamp 03"),
		press("the cell of its state"),
		type("fitted"),
		press("the cell of its day"),
		type("29-11"),
	],
	"only a photo now, words in the evening": [
		shoot("it"),
		...FOLDER,
		type("21 lamp 09 burnt socket"),
		SHEET,
		press("the first empty row"),
		type("Lamp 09"),
		type("burnt socket"),
		type("29-11 14.32"),
	],
	"start the clock of a step, and stop it": [
		pen("14.02"),
		pen("clean lamps"),
		pen("14.47"),
		SHEET,
		press("the first empty row"),
		type("21 clean lamps"),
		type("PS"),
		type("45"),
	],
	"count a shelf of three": [
		SHEET,
		press("the filter"),
		type("shelf 1"),
		press("show them"),
		press("the first as seen"),
		press("the second as seen"),
		press("the third as seen"),
		press("the cell of the count"),
		type("29-11 PS"),
	],
	"print its label again": [pen("21-0203"), pen("BRASS GREBE"), pen("Lamp 03"), pen("2 x M4 x 10"), pen("29 Nov PS")],
};
