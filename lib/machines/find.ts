// Finding a thing by tag, number or word, from anywhere.

import { homesOf, lyingFixing } from "@/lib/bags/lying";
import type { Reader } from "@/lib/db/store";
import { formatFixing } from "@/lib/fixings/fixingWords";
import { readTag } from "@/lib/tags/readTag";

export { tagsMeant } from "@/lib/store/scanned";

/** How many of each kind one page shows; more words find fewer. */
export const MOST_FOUND = 20;
/** Longer than any name; the rest is left off. */
const LONGEST_QUERY = 200;
const MOST_WORDS = 8;

/** Where what was typed leads: straight to a tag or a machine, or to a list. */
export type Wanted =
	| { readonly to: "tag"; readonly tag: string }
	| { readonly to: "machine"; readonly number: number }
	| { readonly to: "words"; readonly words: readonly string[] }
	| { readonly to: "nothing" };

/** Reads what was typed. A tag (also as scanned), a bare number of one to four digits, or words. Pure. */
export function wanted(query: string): Wanted {
	const typed = query.slice(0, LONGEST_QUERY).trim();
	if (typed === "") return { to: "nothing" };
	const tag = readTag(typed);
	if (tag.ok) return { to: "tag", tag: tag.value.tag };
	if (/^[1-9]\d{0,3}$/.test(typed)) return { to: "machine", number: Number(typed) };
	return { to: "words", words: typed.split(/\s+/).slice(0, MOST_WORDS) };
}

/** Machines, positions, parts, fixings, bags, steps and places of the shop in which every word occurs; a few of each, and whether there are more. */
export async function findByWords(read: Reader, words: readonly string[]) {
	const every = <Where>(columns: (word: string) => Where[]) => ({ AND: words.map((word) => ({ OR: columns(word) })) });
	const take = MOST_FOUND + 1;
	const has = (word: string) => ({ contains: word });
	// The middle of a tag is what stands on it the largest.
	const tagged = (word: string) => (/^\d{1,5}$/.test(word) ? [{ tag: { number: Number(word) } }] : []);
	const [machines, positions, parts, fixings, bags, steps, places] = await Promise.all([
		read.machine.findMany({
			where: every((word) => [{ name: has(word) }, { kind: has(word) }, { maker: has(word) }, { model: has(word) }, { serial: has(word) }]),
			orderBy: { number: "asc" },
			take,
			select: { id: true, number: true, name: true, kind: true, state: true },
		}),
		read.position.findMany({
			where: every((word) => [{ name: has(word) }, { mark: { equals: word } }, { area: has(word) }]),
			orderBy: [{ machine: { number: "desc" } }, { rank: "asc" }],
			take,
			select: { id: true, mark: true, name: true, area: true, machine: { select: { number: true, name: true } } },
		}),
		read.part.findMany({
			where: {
				...every((word) => [{ name: has(word) }, { maker: has(word) }, { type: has(word) }, ...tagged(word)]),
				place: { not: "void" },
			},
			orderBy: [{ machine: { number: "desc" } }, { id: "asc" }],
			take,
			select: {
				id: true,
				name: true,
				count: true,
				origin: true,
				place: true,
				bagId: true,
				locationId: true,
				tag: { select: { id: true } },
				machine: { select: { number: true, name: true } },
			},
		}),
		read.fixing.findMany({
			where: {
				...every((word) => [{ thread: has(word) }, { length: has(word) }, { head: has(word) }, { drive: has(word) }, { note: has(word) }]),
				place: { not: "scrapped" },
			},
			orderBy: [{ machine: { number: "desc" } }, { id: "asc" }],
			take,
			select: {
				...lyingFixing,
				place: true,
				bag: { select: { id: true, tag: { select: { id: true } } } },
				machine: { select: { number: true, name: true } },
			},
		}),
		read.bag.findMany({
			where: { ...every((word) => [{ words: has(word) }, { caution: has(word) }, ...tagged(word)]), place: { not: "void" } },
			orderBy: { id: "desc" },
			take,
			select: {
				id: true,
				words: true,
				role: true,
				tag: { select: { id: true } },
				_count: { select: { parts: true, fixings: true, bags: true } },
			},
		}),
		read.step.findMany({
			where: every((word) => [{ title: has(word) }, { words: has(word) }]),
			orderBy: [{ machine: { number: "desc" } }, { number: "asc" }],
			take,
			select: { id: true, number: true, title: true, state: true, machine: { select: { number: true, name: true } } },
		}),
		read.location.findMany({
			// "rack B shelf 2" is a shelf in a rack.
			where: every((word) => [{ name: has(word) }, { parent: { name: has(word) } }, { parent: { parent: { name: has(word) } } }]),
			orderBy: [{ name: "asc" }, { id: "asc" }],
			take,
			select: { id: true, name: true, kind: true, tag: { select: { id: true } } },
		}),
	]);
	return {
		machines: bounded(machines),
		positions: bounded(positions),
		parts: bounded(parts),
		fixings: bounded(fixings.map(({ holds, ...fixing }) => ({ ...fixing, words: formatFixing(fixing), homes: homesOf(holds) }))),
		bags: bounded(bags.map(({ _count, ...bag }) => ({ ...bag, isEmpty: _count.parts + _count.fixings + _count.bags === 0 }))),
		steps: bounded(steps),
		places: bounded(places),
	};
}

const bounded = <Row>(rows: readonly Row[]): { readonly rows: readonly Row[]; readonly more: boolean } => ({
	rows: rows.slice(0, MOST_FOUND),
	more: rows.length > MOST_FOUND,
});
