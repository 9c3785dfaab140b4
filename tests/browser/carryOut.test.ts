// A reversal is begun and carried out on a phone, operation by operation, to its end.

import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { openStore } from "@/lib/db/store";
import { converted } from "@/tests/reversal/convertedLamp";
import { fingers, sayWho } from "@/tests/support/browserHands";
import { openBrowser, openContext, openPage, PHONE, type WatchedPage } from "@/tests/support/browserPage";
import { type ServedShop, serveShop } from "@/tests/support/browserServer";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";

let browser: Browser;
let book: FreshShop;
let machine: Awaited<ReturnType<typeof converted>>;
let shop: ServedShop;
let watch: WatchedPage;

beforeAll(async () => {
	[browser, book] = await Promise.all([openBrowser(), freshShop()]);
	machine = await converted(book, 0);
	shop = await serveShop(book.folder);
	watch = await openPage(await openContext(browser, { size: PHONE, touch: true }));
	await sayWho(watch.page, shop.base);
}, 100_000);
afterAll(async () => {
	await browser.close();
	await shop.stop();
	await book.close();
});

/** Position to part, from the book itself. */
async function build(): Promise<Record<string, string>> {
	const store = await openStore(book.folder);
	try {
		const fitted = await store.read.part.findMany({
			where: { place: "fitted" },
			select: { id: true, position: { select: { mark: true } } },
		});
		return Object.fromEntries(fitted.map(({ id, position }) => [position?.mark ?? "", id]));
	} finally {
		await store.close();
	}
}

const BUTTONS = { out: "Out, no label", in: /^Put in the /, undo: "It is undone", end: "The reversal is carried out" } as const;

/** What the page asks to be done, by its one main button. */
async function wanted(page: Page): Promise<keyof typeof BUTTONS> {
	const main = page.getByRole("main");
	await main
		.getByRole("button", { name: /^(Out, no label|Put in the .*|It is undone|The reversal is carried out)$/ })
		.first()
		.waitFor();
	for (const kind of ["out", "in", "undo", "end"] as const)
		if ((await main.getByRole("button", { name: BUTTONS[kind] }).count()) > 0) return kind;
	throw new Error("no such button");
}

it("each operation is ticked by its own deed, the plan is made anew, and what was opened only to reach the rest is in again", async () => {
	const { page } = watch;
	const hands = fingers(page);
	const begun = await build();
	await page.goto(`${shop.base}/machines/${machine.number}/reversal`);
	await hands.press("Carry it out");
	await page.waitForURL(/\/reversal\/1$/);
	await hands.write("Proved dead with", "two-pole tester");
	await hands.press("It is isolated and proved dead");
	const ticked: string[] = [];
	for (let kind = await wanted(page); kind !== "end"; kind = await wanted(page)) {
		const heading = await page.getByRole("main").locator("[data-next]").textContent();
		ticked.push(`${kind} ${(heading ?? "").split(",")[0]}`);
		expect(ticked.length).toBeLessThan(12);
		if (kind === "undo") {
			await hands.press("It is undone");
			await page.getByRole("button", { name: "It is undone" }).waitFor({ state: "detached" });
			continue;
		}
		await hands.press(BUTTONS[kind]);
		await hands.press("Go on with the reversal");
	}
	expect(ticked.slice(0, 1)).toEqual(["out rear panel"]);
	expect([...ticked].sort()).toEqual([
		"in lamp",
		"in plastic lens",
		"in rear panel",
		"out LED lamp",
		"out plastic lens",
		"out rear panel",
		"undo seat drilled",
	]);
	await hands.write("What the checks showed", "turns freely by hand");
	await hands.press("The reversal is carried out");
	await page.getByText("Carried out", { exact: true }).waitFor();
	expect(await build()).toEqual({ ...begun, p02: machine.part("p02") });
	expect(watch.wrongs).toEqual([]);
}, 120_000);
