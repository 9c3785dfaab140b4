import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { sayWho } from "@/tests/support/browserHands";
import { DESK, openBrowser, openContext, openPage } from "@/tests/support/browserPage";
import { Frontier } from "@/tests/support/browserPages";
import { type ServedShop, serveShop } from "@/tests/support/browserServer";
import { attackForm, Book, EMPTY, formsOn, NONSENSE, TOO_LONG, unfolded } from "./formAttacks";
import { type SmallShop, smallShop } from "./smallShop";

let browser: Browser;
let small: SmallShop;
let shop: ServedShop;
let book: Book;
let context: BrowserContext;

beforeAll(async () => {
	[browser, small] = await Promise.all([openBrowser(), smallShop()]);
	shop = await serveShop(small.folder);
	book = new Book(small.folder);
	context = await openContext(browser, { size: DESK });
	const { page } = await openPage(context);
	await sayWho(page, shop.base);
	await page.close();
});
afterAll(async () => {
	book.close();
	await browser.close();
	await shop.remove();
	small.remove();
});

const ATTACKS = [TOO_LONG, NONSENSE, EMPTY];
/** In a plain run each form gets one of the three, in turn, and so every kind of field gets them all; ASFOUND_ATTACKS=all gives each form all. */
const attacksOn = (turn: number) => (process.env.ASFOUND_ATTACKS === "all" ? ATTACKS : [ATTACKS[turn % ATTACKS.length] ?? TOO_LONG]);

/** Attacks every form of the page that is open and unfolded, each once; `done` are those that were attacked elsewhere. */
async function attackPage(page: Page, address: string, done: Set<string>, at: Book): Promise<string[]> {
	const problems: string[] = [];
	for (const key of await formsOn(page)) {
		if (done.has(key)) continue;
		done.add(key);
		for (const attack of attacksOn(done.size)) {
			if (!(await formsOn(page)).includes(key)) break; // what was recorded before left no such form
			const outcome = await attackForm(page, key, attack, at);
			problems.push(...outcome.problems.map((problem) => `${new URL(address).pathname} ${key}, given ${attack.name}: ${problem}`));
			if (outcome.recorded || outcome.problems.length > 0) await unfolded(page, address);
		}
	}
	return problems;
}

describe("whatever is typed", () => {
	it("every form says beside the field what to do, keeps what was typed, and records nothing that it cannot read", {
		timeout: 400_000,
	}, async () => {
		const most = (kind: string) => (kind === "/t/TAG" ? 9 : kind.includes("MARK") ? 3 : 1);
		const frontier = new Frontier(shop.base, most, ["/", ...small.addresses, "/machines/8/build"]);
		const done = new Set<string>();
		const problems: string[] = [];
		const wrongs: string[] = [];
		for (let at = frontier.next(); at !== null; at = frontier.next()) {
			// A tab of its own: one that has seen a hundred pages answers ever more slowly.
			const { page, wrongs: ofPage } = await openPage(context);
			await unfolded(page, shop.base + at.address);
			await frontier.follow(page);
			problems.push(...(await attackPage(page, shop.base + at.address, done, book)));
			await page.close();
			wrongs.push(...ofPage);
		}
		expect(problems).toEqual([]);
		expect(wrongs).toEqual([]);
		// Every form that the program has, but the one that opens a book.
		expect(done.size).toBeGreaterThan(45);
	});

	it("so does the form that opens a book", async () => {
		const empty = await serveShop();
		const there = new Book(empty.folder);
		const { page, wrongs } = await openPage(context);
		await unfolded(page, `${empty.base}/welcome`);
		expect(await attackPage(page, `${empty.base}/welcome`, new Set(), there)).toEqual([]);
		expect(wrongs).toEqual([]);
		await page.close();
		there.close();
		await empty.remove();
	});
});
