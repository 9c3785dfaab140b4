// What of a build is shown, and in which order, as the address says it. Pure.

import type { BuildRow } from "@/lib/positions/build";

export const SHOWS = ["all", "out", "not-original", "unknown", "lost", "unseen", "altered", "made"] as const;
export type Shows = (typeof SHOWS)[number];

/** The filter in words, for the choice and for what was found nothing of. */
export const SHOWS_WORDS: Readonly<Record<Shows, string>> = {
	all: "every position",
	out: "empty, or original out",
	"not-original": "not original",
	unknown: "of an origin not known",
	lost: "original lost",
	unseen: "not seen yet",
	altered: "altered",
	made: "made by the work",
};

export const SORTS = ["build", "mark", "name", "holds", "behind"] as const;
export type Sort = (typeof SORTS)[number];

export const SORTS_WORDS: Readonly<Record<Sort, string>> = {
	build: "as it is built",
	mark: "by mark",
	name: "by name",
	holds: "by what they hold",
	behind: "by what they are behind",
};

export type BuildView = {
	readonly shows: Shows;
	readonly word: string;
	readonly area: string;
	readonly sort: Sort;
	readonly down: boolean;
};

type Asked = Readonly<Record<string, string | readonly string[] | undefined>>;

/** The view that an address asks for; what it does not know is left as the plain tree. */
export function viewAsked(asked: Asked): BuildView {
	const one = (name: string): string => [asked[name] ?? ""].flat()[0] ?? "";
	return {
		shows: SHOWS.find((shows) => shows === one("show")) ?? "all",
		word: one("word").trim().slice(0, 80),
		area: one("area").slice(0, 80),
		sort: SORTS.find((sort) => sort === one("sort")) ?? "build",
		down: one("down") === "1",
	};
}

/** Whether the view shows the tree as it is built: nothing left out, nothing sorted. */
export const isWholeTree = (view: BuildView): boolean =>
	view.shows === "all" && view.word === "" && view.area === "" && view.sort === "build";

const SHOWN: Readonly<Record<Shows, (row: BuildRow) => boolean>> = {
	all: () => true,
	out: (row) => row.kind === "seat" && row.part === null,
	"not-original": (row) => row.part !== null && row.state !== "original" && row.state !== "unseen" && row.state !== "unknown",
	unknown: (row) => row.state === "unknown",
	lost: (row) => row.state === "lost",
	unseen: (row) => row.state === "unseen",
	altered: (row) => row.altered !== null,
	made: (row) => !row.asFound,
};

/** The rows of the view. Sorted or filtered they stand side by side, without their depth. */
export function rowsShown(rows: readonly BuildRow[], view: BuildView): BuildRow[] {
	const words = view.word.toLowerCase().split(/\s+/).filter(Boolean);
	const kept = rows.filter((row) => {
		const text = `${row.mark} ${row.name} ${row.part?.name ?? ""} ${row.part?.tag ?? ""} ${row.area}`.toLowerCase();
		return SHOWN[view.shows](row) && (view.area === "" || row.area === view.area) && words.every((word) => text.includes(word));
	});
	if (isWholeTree(view)) return kept;
	const flat = kept.map((row) => ({ ...row, depth: 0, hosts: false }));
	if (view.sort === "build") return flat;
	const key = KEYS[view.sort];
	const way = view.down ? -1 : 1;
	// Equal keys keep building order either way, since sorting is stable.
	return flat.sort((a, b) => way * compared(key(a), key(b)));
}

const KEYS: Readonly<Record<Exclude<Sort, "build">, (row: BuildRow) => string>> = {
	mark: (row) => row.mark,
	name: (row) => row.name,
	holds: (row) => `${row.part === null ? "~" : row.part.origin} ${row.part?.tag ?? row.says}`,
	behind: (row) => row.behind.flatMap(({ parts }) => parts.map((part) => part.name)).join(", ") || "~",
};

// Marks and tags sort by their numbers: k9 before k10.
const order = new Intl.Collator("en", { numeric: true, sensitivity: "base" });
const compared = (a: string, b: string): number => order.compare(a, b);
