// How soon a page of the bench shows on a slow phone: the thing to press is on the screen, with the processor slowed down
// four times, beside a page that asks nothing. Once in a tab that shows the shop already, as a link or a reload opens it,
// and once in a new tab, as a scanned tag does. Needs the built pages (`npm test` makes them).

import { existsSync } from "node:fs";
import type { BrowserContext, Page } from "playwright-core";
import { benchShop } from "@/tests/browser/benchShop";
import { sayWho } from "@/tests/support/browserHands";
import { openBrowser, openContext, openPage, PHONE } from "@/tests/support/browserPage";
import { serveShop } from "@/tests/support/browserServer";
import { report } from "./timing";

const SLOWER = 4;
const TIMES = 9;
const BARE = { address: "/people/me", what: "main h1" };
/** Each with what has to stand there. */
const PAGES = [
	{ address: "/machines/21/bench", what: ".af-bench-pick strong" },
	{ address: "/machines/21/take-out/p05", what: ".af-photo-field .af-button" },
	{ address: "/store/move", what: "main .af-label" },
];

export async function benchPages(): Promise<void> {
	if (!existsSync(".next/BUILD_ID")) {
		console.log("pages of the bench: not built, so not measured");
		return;
	}
	const made = await benchShop(60);
	const shop = await serveShop(made.folder);
	const browser = await openBrowser();
	try {
		const context = await openContext(browser, { size: PHONE, touch: true });
		const { page } = await openPage(context);
		await sayWho(page, shop.base);
		await page.close();
		for (const [where, isNew] of [
			["", false],
			[", new tab", true],
		] as const) {
			const bare = await shownAfter(context, shop.base, BARE, isNew);
			for (const one of PAGES)
				report(`${one.address} shown, processor ${SLOWER}x slower${where}`, await shownAfter(context, shop.base, one, isNew), bare, null);
		}
	} finally {
		await browser.close();
		await shop.remove();
		made.remove();
	}
}

/** Milliseconds until what is asked for was painted, sorted. */
async function shownAfter(context: BrowserContext, base: string, page: typeof BARE, isNew: boolean): Promise<number[]> {
	const taken: number[] = [];
	let tab = await slowTab(context, page.what);
	for (let at = -1; at < TIMES; at++) {
		if (isNew) {
			await tab.close();
			tab = await slowTab(context, page.what);
		} else await tab.goto(`${base}/phone`, { waitUntil: "networkidle" });
		await tab.goto(base + page.address, { waitUntil: "networkidle" });
		const shown = await tab.waitForFunction(() => performance.getEntriesByName("shown")[0]?.startTime);
		const millis = await shown.jsonValue();
		// The first fills the browser's own store, as the first visit of a phone does.
		if (at >= 0 && millis !== undefined) taken.push(millis);
	}
	await tab.close();
	return taken.sort((a, b) => a - b);
}

/** A tab that has the browser say when what is asked for was painted. */
async function slowTab(context: BrowserContext, what: string): Promise<Page> {
	const { page } = await openPage(context);
	const devtools = await context.newCDPSession(page);
	await devtools.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
	await page.addInitScript((selector) => {
		const watch = new MutationObserver(() => {
			const thing = document.querySelector(selector);
			if (!thing) return;
			watch.disconnect();
			thing.setAttribute("elementtiming", "shown");
		});
		watch.observe(document, { childList: true, subtree: true });
		new PerformanceObserver((list) => {
			for (const entry of list.getEntries()) performance.mark("shown", { startTime: entry.startTime });
		}).observe({ type: "element", buffered: true });
	}, what);
	return page;
}
