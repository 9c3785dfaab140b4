import { whatIsIn, whereBagIs } from "@/lib/bags/queries";
import { titleOf } from "@/lib/bags/title";
import { dayOf } from "@/lib/core/days";
import type { Instant } from "@/lib/core/instants";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import { fixingSize } from "@/lib/fixings/fixingWords";
import { codeText, type LabelAddress } from "@/lib/labels/address";
import { type BagContents, type ContentsLine, type ListTools, LONGEST_LIST, listPages, listStrip } from "@/lib/labels/contentsList";
import { labelFonts } from "@/lib/labels/labelFonts";
import { type PaperPage, paperPdf } from "@/lib/labels/paper";
import { addressOnLabels } from "@/lib/labels/printQueries";
import { qrModules } from "@/lib/labels/qrModules";
import { A4, LETTER, type Stock } from "@/lib/labels/stock";
import { nudgeOf } from "@/lib/labels/stockQueries";
import { requireShop } from "@/lib/shop/queries";
import type { Tag } from "@/lib/tags/tag";

/** Most bags in one print-out of lists: a game taken to the board has 60 to 120. */
export const MOST_LISTS = 150;

/** What is in the bags of these tags, in the order given; a tag that hangs on no bag is left out. */
export async function bagContents(read: Reader, tags: readonly Tag[]): Promise<BagContents[]> {
	const rows = await read.tag.findMany({
		where: { id: { in: tags.slice(0, MOST_LISTS) }, bagId: { not: null } },
		select: {
			id: true,
			bag: { select: { id: true, words: true, kind: true, role: true, caution: true, machine: { select: { number: true, name: true } } } },
		},
	});
	const known = new Map(rows.map(({ id, bag }) => [id, bag]));
	const lists: BagContents[] = [];
	// One after the other: the reads of a hundred bags at once would keep everybody else waiting.
	for (const tag of tags) {
		const bag = known.get(tag);
		if (!bag) continue;
		const [inIt, where] = await Promise.all([whatIsIn(read, bag.id), whereBagIs(read, bag.id)]);
		lists.push({
			tag,
			words: titleOf(bag.words, inIt.parts),
			kind: `${bag.role} ${bag.kind}`,
			machine: bag.machine ? `${bag.machine.number} ${bag.machine.name}` : "",
			caution: bag.caution,
			where: where.words,
			pieces: inIt.pieces,
			lines: [...inIt.parts.map(lineOfPart), ...inIt.fixings.map(lineOfFixing), ...inIt.bags.map(lineOfBag)],
			more: inIt.more,
		});
	}
	return lists;
}

type InBag = Awaited<ReturnType<typeof whatIsIn>>;
const homeWords = (homes: readonly { name: string; mark: string }[]): string =>
	homes.map(({ name, mark }) => `${name} (${mark})`).join(" and ");
const said = (...notes: readonly (string | null | false)[]): string[] =>
	notes.filter((note): note is string => typeof note === "string" && note !== "");

const lineOfPart = (part: InBag["parts"][number]): ContentsLine => ({
	count: String(part.count),
	words: [part.tag, part.name].filter(Boolean).join(" "),
	notes: said(
		part.home && `for ${homeWords([part.home])}`,
		[part.origin === "unknown" ? "" : part.origin, part.works === "faulty" ? "faulty" : ""].filter(Boolean).join(", "),
	),
});

const lineOfFixing = (fixing: InBag["fixings"][number]): ContentsLine => ({
	count: String(fixing.count),
	words: fixingSize(fixing),
	notes: said(
		fixing.homes.length > 0 && `for ${homeWords(fixing.homes)}`,
		[fixing.tightness, fixing.differs, fixing.note].filter(Boolean).join(", "),
	),
});

const lineOfBag = (bag: InBag["bags"][number]): ContentsLine => ({
	count: "",
	words: [bag.tag, bag.words].filter(Boolean).join(" "),
	notes: said(
		`${bag.role} ${bag.kind} in it, ${bag.things === 0 ? "empty" : `${bag.things} ${bag.things === 1 ? "line" : "lines"}`}`,
		bag.caution,
	),
});

type ListsAsked = { readonly tags: readonly Tag[]; readonly paper?: "roll" | "a4" | "letter" | undefined };

/** Where lists go unless said otherwise: on the roll in the printer, if it is one that is cut to length; else on A4, or Letter where that is in use. */
export function paperFor(stock: Stock): "roll" | "a4" | "letter" {
	if (stock.kind === "continuous") return "roll";
	return stock.kind === "sheet" && stock.pageWidth === LETTER.pageWidth ? "letter" : "a4";
}

/**
 * The lists as a PDF: each a strip of the roll, or several to a page. Refused when a list is longer than a roll is cut, and
 * when none of the tags hangs on a bag.
 */
export async function listsOnPaper(
	read: Reader,
	{ tags, paper }: ListsAsked,
	stock: Stock,
	by: { readonly at: Instant; readonly initials: string },
): Promise<Result<{ pdf: Buffer; pages: number }>> {
	const [shop, bags] = await Promise.all([requireShop(read), bagContents(read, tags)]);
	if (bags.length === 0) return refuse("no-bags", "None of these tags hangs on a bag. Choose bags.");
	const tools = listTools(addressOnLabels(shop.address));
	const made = { day: dayOf(by.at, shop.timeZone), initials: by.initials };
	const title = bags.length === 1 ? `In ${bags[0]?.tag}` : `In ${bags.length} bags`;
	if ((paper ?? paperFor(stock)) === "roll" && stock.kind === "continuous") {
		const strips = bags.map((bag) => listStrip(bag, stock.width, made, tools));
		const long = bags[strips.findIndex(({ height }) => height > LONGEST_LIST)];
		if (long) {
			return refuse("list-too-long", `The list of ${long.tag} would be longer than ${LONGEST_LIST} mm. Print it on A4 or US Letter.`);
		}
		const nudge = await nudgeOf(read, stock.id);
		const pages = strips.map((drawing): PaperPage => {
			const height = Math.max(stock.shortest, drawing.height);
			return { width: stock.width, height, drawings: [{ x: nudge.nudgeX, y: nudge.nudgeY, drawing }] };
		});
		return ok({ pdf: await paperPdf(pages, title, by.at), pages: pages.length });
	}
	const pages = listPages(bags, (paper ?? paperFor(stock)) === "letter" ? LETTER : A4, made, tools);
	return ok({ pdf: await paperPdf(pages, title, by.at), pages: pages.length });
}

/** The fonts and codes that lists are set with. */
export const listTools = (address: LabelAddress | null): ListTools => ({
	type: labelFonts(),
	codeOf: (tag) => {
		const text = codeText(tag, address);
		const modules = qrModules(text);
		return modules === null ? null : { text, modules };
	},
});
