// How soon a page of the bench shows on a slow phone: first words on the screen with the processor slowed down four times,
// beside a page that asks nothing. Needs the built pages (`npm test` makes them).

import { existsSync } from "node:fs";
import type { BrowserContext } from "playwright-core";
import { benchShop } from "@/tests/browser/benchShop";
import { sayWho } from "@/tests/support/browserHands";
import { openBrowser, openContext, openPage, PHONE } from "@/tests/support/browserPage";
import { serveShop } from "@/tests/support/browserServer";
import { report } from "./timing";

const SLOWER = 4;
const TIMES = 9;
const PAGES = ["/machines/21/bench", "/machines/21/take-out/p05", "/store/move"];

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
		const bare = await shownAfter(context, `${shop.base}/people/me`);
		for (const address of PAGES)
			report(`${address} shown, processor ${SLOWER}x slower`, await shownAfter(context, shop.base + address), bare, null);
	} finally {
		await browser.close();
		await shop.remove();
		made.remove();
	}
}

/** Milliseconds to the first words on the screen, sorted. */
async function shownAfter(context: BrowserContext, address: string): Promise<number[]> {
	const taken: number[] = [];
	for (let at = -1; at < TIMES; at++) {
		const { page } = await openPage(context);
		const devtools = await context.newCDPSession(page);
		await devtools.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
		await page.goto(address, { waitUntil: "load" });
		const shown = await page.waitForFunction(() => performance.getEntriesByName("first-contentful-paint")[0]?.startTime ?? null);
		const millis = await shown.jsonValue();
		// The first fills the browser's own store, as the first visit of a phone does.
		if (at >= 0 && millis !== null) taken.push(millis);
		await page.close();
	}
	return taken.sort((a, b) => a - b);
}
