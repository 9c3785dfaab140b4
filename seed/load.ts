// Fills the demo shop's folder through the same functions that the forms call, deed by deed, in the order of time.

import { openStore } from "@/lib/db/store";
import { registerFile } from "@/lib/files/changes";
import { setPortrait } from "@/lib/machines/changes";
import { tagPlaces } from "@/lib/store/changes";
import { docksideMagpie } from "@/seed/data/docksideMagpie";
import { hairpinRidge } from "@/seed/data/hairpinRidge";
import { meteorMinnow } from "@/seed/data/meteorMinnow";
import { plannedAfterOfS43 } from "@/seed/data/skerry/steps";
import { skerryLight } from "@/seed/data/skerryLight";
import type { Instant, Machine } from "@/seed/data/types";
import { at } from "@/seed/data/write";
import { emptyBook, emptyShopBook, type MachineBook, type ShopBook } from "@/seed/load/book";
import { conversions, decisions, sale, tests } from "@/seed/load/changes";
import { type Diary, done, later, openDiary } from "@/seed/load/diary";
import { asFoundStep, laterKnowledge, takeIn } from "@/seed/load/intake";
import type { Books } from "@/seed/load/moves";
import { dealings } from "@/seed/load/owner";
import { drawPictures } from "@/seed/load/pictures";
import { otherCosts, purchases, wantedThings } from "@/seed/load/purchases";
import { openTheShop } from "@/seed/load/shop";
import { disposals, doStep, planWork } from "@/seed/load/work";

/** What cannot be read off a machine's own data: when its conversions were named, and what its plan was before it grew. */
type Story = {
	readonly machine: Machine;
	readonly conversionsNamed: Instant;
	readonly plannedAfter?: ReadonlyMap<string, string>;
	readonly added?: { readonly at: Instant; readonly why: string };
};

const stories: readonly Story[] = [
	{
		machine: skerryLight,
		conversionsNamed: at("2026-03-06", "10:12"),
		plannedAfter: new Map([["S43", plannedAfterOfS43]]),
		added: { at: at("2026-04-09", "13:48"), why: "The soak failed at play 131: the coupling slips on the worn shaft" },
	},
	{
		machine: meteorMinnow,
		conversionsNamed: at("2026-04-20", "08:50"),
		added: { at: at("2026-05-20", "13:46"), why: "Wet cleaning showed the seat board rotten under the cushion" },
	},
	{ machine: docksideMagpie, conversionsNamed: at("2026-05-20", "15:00") },
	{ machine: hairpinRidge, conversionsNamed: at("2026-05-07", "10:40") },
];

export type LoadedDemo = {
	readonly shop: ShopBook;
	/** By machine number: what the data's keys became. */
	readonly machines: ReadonlyMap<number, MachineBook>;
};

/** Loads the demo into a migrated, empty data folder. The same every time, but for the shop's own key pair. */
export async function loadDemo(folder: string): Promise<LoadedDemo> {
	const store = await openStore(folder);
	try {
		const diary = openDiary(store);
		const shop = emptyShopBook();
		const pictures = await drawPictures(
			folder,
			stories.map(({ machine }) => machine),
		);
		await openTheShop(diary, shop);
		const machines = new Map<number, MachineBook>();
		for (const story of stories) {
			const book = emptyBook(story.machine);
			machines.set(story.machine.number, book);
			writeDown(diary, { book, shop, pictures }, story);
		}
		// Last of all, so that no other number of the shop's own moves.
		diary.note(at("2026-05-21", "17:30"), "A", "the places get their tags", async (env) => {
			done(await tagPlaces({ locationIds: [...shop.locations.values()] }, env));
		});
		await diary.carryOut(shop.persons);
		return { shop, machines };
	} finally {
		await store.close();
	}
}

function writeDown(diary: Diary, books: Books, { machine, conversionsNamed, plannedAfter = new Map(), added }: Story): void {
	const { book, pictures } = books;
	diary.note(machine.received, "A", `machine ${machine.number} comes in`, takeIn(book), "plan");
	planWork(diary, books, plannedAfter, added ?? null);
	const [portrait] = asFoundStep(machine).sessions;
	if (portrait !== undefined) {
		const moment = later(portrait.start, 0.25);
		diary.note(moment, portrait.person, "the portrait's file", async (env) => {
			done(await registerFile({ file: pictures.portrait(machine.number), machineId: book.machineId }, env));
		});
		diary.note(moment, portrait.person, "the portrait", async (env) => {
			done(await setPortrait({ machineId: book.machineId, fileSha: pictures.portrait(machine.number).sha }, env));
		});
	}
	tests(diary, books);
	conversions(diary, books, conversionsNamed);
	for (const step of machine.steps) doStep(diary, books, step);
	laterKnowledge(diary, book, books.shop);
	decisions(diary, books);
	wantedThings(diary, books);
	purchases(diary, books);
	otherCosts(diary, books);
	disposals(diary, books);
	dealings(diary, books);
	sale(diary, books);
}
