// Colours of wires as IEC 60757 writes them: two letters a colour, several joined in the standard's order.

import { ok, type Refusal, type Result, refuse } from "@/lib/core/result";

/** The codes in the order of the standard, with their colours (IEC 60757:2021, clauses 4 and 5). */
export const WIRE_COLOURS = [
	["BK", "black"],
	["BN", "brown"],
	["RD", "red"],
	["OG", "orange"],
	["YE", "yellow"],
	["GN", "green"],
	["BU", "blue"],
	["VT", "violet"],
	["GY", "grey"],
	["WH", "white"],
	["PK", "pink"],
	["GD", "gold"],
	["TQ", "turquoise"],
	["SR", "silver"],
] as const;

export type ColourCode = (typeof WIRE_COLOURS)[number][0];

/** Green and yellow are joined against the order, and only with each other: the protective conductor. */
const PROTECTIVE = "GNYE";

const PLACE = new Map<string, number>(WIRE_COLOURS.map(([code], place) => [code, place]));
const BY_WORD = new Map<string, ColourCode>([
	...WIRE_COLOURS.map(([code, word]): [string, ColourCode] => [word.toUpperCase(), code]),
	["GRAY", "GY"],
	["PURPLE", "VT"],
]);
const WORD = new Map<string, string>(WIRE_COLOURS);

/**
 * A wire colour as typed, in the standard's writing: `rd/bu`, `BURD` and `red blue` all give `RDBU`; `YEGN` gives `GNYE`.
 * Nothing typed gives "": a colour need not be known. Refuses what is no code, a colour named twice, and green with
 * yellow beside a third, since they are joined only as GNYE.
 */
export function readWireColour(text: string): Result<string, Refusal> {
	const plain = text.normalize("NFKC").trim().toUpperCase();
	if (plain === "") return ok("");
	const codes: string[] = [];
	for (const word of plain.split(/[^A-Z]+/).filter((part) => part !== "" && part !== "AND")) {
		const named = BY_WORD.get(word);
		const pairs = named ? [named] : (word.match(/.{1,2}/g) ?? []);
		for (const code of pairs) {
			if (!PLACE.has(code)) {
				return refuse("colour-unknown", `${code} is no colour code. Use ${WIRE_COLOURS.map(([known]) => known).join(" ")} or GNYE.`, {
					facts: { typed: text, code },
				});
			}
			codes.push(code);
		}
	}
	if (codes.length === 0) return refuse("colour-unknown", `${text.trim()} is no colour. Write a code such as BN, or leave it empty.`);
	if (new Set(codes).size < codes.length) {
		return refuse("colour-twice", `A colour is named twice in ${plain}. Write each once, such as RDBU.`, { facts: { typed: text } });
	}
	if (codes.includes("GN") && codes.includes("YE")) {
		if (codes.length === 2) return ok(PROTECTIVE);
		return refuse("colour-earth", "Green and yellow go together only as GNYE, the protective conductor, with no third colour.", {
			facts: { typed: text },
		});
	}
	return ok(codes.sort((a, b) => (PLACE.get(a) ?? 0) - (PLACE.get(b) ?? 0)).join(""));
}

/** Whether the text is a colour in the standard's own writing. */
export const isWireColour = (code: string): boolean => {
	const read = readWireColour(code);
	return code !== "" && read.ok && read.value === code;
};

/** The colour in words: `red and blue`; text that is no code is given back as it is. */
export function colourInWords(code: string): string {
	if (!isWireColour(code)) return code;
	const words = (code.match(/.{2}/g) ?? []).map((pair) => WORD.get(pair) ?? pair);
	return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

/** Whether the wire is a protective conductor by its colour. */
export const isProtective = (code: string): boolean => code === PROTECTIVE;
