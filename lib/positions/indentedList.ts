// A machine's build typed as a list: one position a line, deeper for what sits on it.
//
//   Coin gear:                  an area, for the lines that follow
//   Coin door
//     Coin mechanism (original)
//     4 hinge screws            a number in front makes a lot
//     Coin switch ?             not seen yet
//   [k36] Cash box (missing)    a mark of one's own in front
//   Rear wall (place)           a place with no part of its own
//   "12 way terminal block"     quoted: the number belongs to the name
//
// Pure, and quick enough to be read again at every key.

import type { FindingState, Origin } from "@/lib/generated/prisma/enums";
import type { NewPosition } from "@/lib/positions/schema";

/** One line that names a position. */
export type ListedPosition = {
	/** Counted from 1. */
	readonly line: number;
	readonly depth: number;
	/** Index in the list of what it sits on; null for the machine itself. */
	readonly parent: number | null;
	readonly mark: string | null;
	readonly name: string;
	readonly count: number;
	readonly area: string;
	readonly kind: "seat" | "place";
	readonly finding: FindingState;
	/** Null where the line does not say. */
	readonly origin: Origin | null;
};

export type WrongLine = { readonly line: number; readonly say: string };
export type IndentedList = { readonly positions: readonly ListedPosition[]; readonly wrong: readonly WrongLine[] };

/** A lot of more is a slip of the finger. */
const MOST_IN_A_LOT = 9999;
const LONGEST_NAME = 120;
const LONGEST_AREA = 60;

type Marker = { readonly finding?: FindingState; readonly kind?: "place"; readonly origin?: Origin };

const MARKERS: Readonly<Record<string, Marker>> = {
	"?": { finding: "unseen" },
	"not seen": { finding: "unseen" },
	"not seen yet": { finding: "unseen" },
	missing: { finding: "missing" },
	wrong: { finding: "wrong" },
	there: { finding: "there" },
	place: { kind: "place" },
	original: { origin: "original" },
	period: { origin: "period" },
	reproduction: { origin: "reproduction" },
	modern: { origin: "modern" },
	unknown: { origin: "unknown" },
};

/** Reads the whole text: every position, and every line that cannot be read, with what to do about it. */
export function readIndentedList(text: string): IndentedList {
	const positions: ListedPosition[] = [];
	const wrong: WrongLine[] = [];
	const marks = new Set<string>();
	let area = "";
	// The lines that the next one may sit on, outermost first, with their indents.
	let open: { readonly indent: number; readonly index: number }[] = [];
	const lines = text.split(/\r\n|\r|\n/);
	for (const [at, raw] of lines.entries()) {
		const line = at + 1;
		const bad = (say: string) => wrong.push({ line, say: `Line ${line}: ${say}` });
		const { indent, words } = indentOf(raw);
		if (words === "") continue;
		if (words.endsWith(":")) {
			const name = words.slice(0, -1).trim();
			if (name === "") bad("write the area's name before the colon.");
			else if (name.length > LONGEST_AREA) bad(`make the area's name shorter: at most ${LONGEST_AREA} characters.`);
			else if (indent > 0)
				bad(`an area such as "${name}" stands at the left edge, for it carries nothing. Take the colon off if things sit on it.`);
			else area = name;
			open = [];
			continue;
		}
		while (open.length > 0 && (open.at(-1)?.indent ?? 0) > indent) {
			const dropped = open.pop();
			const next = open.at(-1);
			if (dropped && next && next.indent < indent) {
				bad("its indent lines up with no line above. Use two spaces for each step in.");
				open.push({ indent, index: dropped.index });
			}
		}
		if (open.at(-1)?.indent === indent) open.pop();
		const parent = open.at(-1)?.index ?? null;
		const read = lineOf(words);
		if (typeof read === "string") {
			bad(read);
			continue;
		}
		if (read.mark !== null && marks.has(read.mark)) bad(`the mark ${read.mark} is used twice. Give each position its own.`);
		if (read.mark !== null) marks.add(read.mark);
		const host = parent === null ? null : positions[parent];
		if (host?.kind === "place") bad(`${read.name} cannot sit on ${host.name}, which is a place with no part of its own.`);
		if (host?.finding === "missing") bad(`${read.name} cannot sit on ${host.name}, which is missing. Put it beside it.`);
		open.push({ indent, index: positions.length });
		positions.push({ line, depth: open.length - 1, parent, area, ...read });
	}
	return { positions, wrong };
}

type Line = Omit<ListedPosition, "line" | "depth" | "parent" | "area">;

/** What one line says, or what is wrong with it. */
function lineOf(words: string): Line | string {
	let rest = words;
	let mark: string | null = null;
	const marked = /^\[([^\]]*)\]\s*(.*)$/.exec(rest);
	if (marked) {
		mark = (marked[1] ?? "").trim();
		rest = marked[2] ?? "";
		if (!/^[A-Za-z0-9][A-Za-z0-9._-]{0,11}$/.test(mark)) return "a mark is short, of letters and figures, like [k05].";
	}
	let finding: FindingState | null = null;
	let kind: "seat" | "place" = "seat";
	let origin: Origin | null = null;
	for (;;) {
		const end = /^(.*?)\s*(?:\(([^()]+)\)|(\?))$/s.exec(rest);
		const said = end ? MARKERS[(end[2] ?? end[3] ?? "").trim().toLowerCase()] : undefined;
		if (!end || !said) break;
		rest = end[1] ?? "";
		if (said.finding !== undefined) {
			if (finding !== null && finding !== said.finding) return "it says two things about what was found. Keep one.";
			finding = said.finding;
		}
		if (said.origin !== undefined) {
			if (origin !== null && origin !== said.origin) return "it says two origins. Keep one.";
			origin = said.origin;
		}
		if (said.kind !== undefined) kind = said.kind;
	}
	if (kind === "place" && (finding !== null || origin !== null)) return "a place has no part of its own, so nothing can be said of one.";
	let count = 1;
	const lot = /^(\d+)\s*[x×]?\s+(.*)$/i.exec(rest);
	if (lot) {
		count = Number(lot[1]);
		rest = (lot[2] ?? "").trim();
		if (count < 1) return "a lot is of one at least.";
		if (count > MOST_IN_A_LOT) return `a lot is of at most ${MOST_IN_A_LOT}. If the number belongs to the name, put the name in quotes.`;
		if (kind === "place") return "a place is one place. If the number belongs to the name, put the name in quotes.";
	}
	rest = /^"(.*)"$/.exec(rest)?.[1]?.trim() ?? rest;
	if (rest === "") return "write the position's name.";
	if (rest.length > LONGEST_NAME) return `make the name shorter: at most ${LONGEST_NAME} characters.`;
	return { mark, name: rest, count, kind, finding: finding ?? "there", origin };
}

/** A tab counts as two spaces; a bullet in front is left out. */
function indentOf(raw: string): { readonly indent: number; readonly words: string } {
	const [, blank = "", rest = ""] = /^([\s\u00a0]*)(.*)$/s.exec(raw) ?? [];
	let indent = 0;
	for (const sign of blank) indent += sign === "\t" ? 2 : 1;
	// Bullets of a pasted list, and invisible characters, are not part of a name.
	const words = rest
		.replace(/^[-*•–]\s+/, "")
		.replaceAll("\0", "")
		.replace(/[\s\u00a0]+/g, " ")
		.trim();
	return { indent, words };
}

/** The same list as text again: `readIndentedList` reads it back as it was. */
export function writeIndentedList(positions: readonly Omit<ListedPosition, "line" | "parent">[]): string {
	const lines: string[] = [];
	let area = "";
	for (const position of positions) {
		if (position.area !== area && position.depth === 0) {
			area = position.area;
			if (area !== "") lines.push(`${area}:`);
		}
		const mark = position.mark === null ? "" : `[${position.mark}] `;
		// What would be read as a count, a times sign, a bullet or a quoted name at its beginning is put in quotes.
		const words = /^(?:\d+\s*[x×]?\s|[x×]\s|[-*•–]\s|["[])/i.test(position.name) ? `"${position.name}"` : position.name;
		const name = position.count === 1 ? words : `${position.count} ${words}`;
		const said = [
			position.kind === "place" ? " (place)" : "",
			position.origin === null ? "" : ` (${position.origin})`,
			position.finding === "there" ? "" : position.finding === "unseen" ? " ?" : ` (${position.finding})`,
		];
		lines.push(`${"  ".repeat(position.depth)}${mark}${name}${said.join("")}`);
	}
	return lines.join("\n");
}

/**
 * The positions of a list as new positions of a machine. Hosts are named by mark, so every line gets one: its own, or the
 * next free p01, p02 ... beside `taken`. `origin` is for parts of which the line does not say it.
 */
export function positionsOfList(list: readonly ListedPosition[], taken: readonly string[], origin: Origin): NewPosition[] {
	const used = new Set([...taken, ...list.flatMap((position) => position.mark ?? [])]);
	let next = 1;
	const marks = list.map((position) => {
		if (position.mark !== null) return position.mark;
		while (used.has(numbered(next))) next += 1;
		const free = numbered(next);
		used.add(free);
		return free;
	});
	return list.map((position, index) => ({
		mark: marks[index] ?? null,
		name: position.name,
		area: position.area === "" ? null : position.area,
		hostMark: position.parent === null ? null : (marks[position.parent] ?? null),
		hostPartId: null,
		kind: position.kind,
		sides: [],
		out: null,
		in: null,
		note: "",
		finding: position.finding,
		foundWords: "",
		part:
			position.kind === "place" ||
			(position.count === 1 && position.finding !== "there" && position.finding !== "wrong" && position.origin === null)
				? null
				: {
						name: "",
						count: position.count,
						maker: "",
						type: "",
						material: "",
						made: null,
						origin: position.origin ?? origin,
						works: "unknown",
						condition: "",
					},
		wayRound: "",
		evidence: [],
	}));
}

const numbered = (number: number): string => `p${String(number).padStart(2, "0")}`;
