import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import type { AxeResults, RunOptions } from "axe-core";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { demoFolder } from "@/tests/support/browserDemo";
import { sayWho } from "@/tests/support/browserHands";
import { DESK, openBrowser, openContext, openPage, PHONE, type WatchedPage } from "@/tests/support/browserPage";
import { Frontier } from "@/tests/support/browserPages";
import { type ServedShop, serveShop } from "@/tests/support/browserServer";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const RULES: RunOptions = {
	runOnly: { type: "tag", values: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"] },
	resultTypes: ["violations"],
};

/** What goes with the light and the room alone: names, roles and structure were judged on the same page a moment before. */
const BY_EYE: RunOptions = {
	...RULES,
	runOnly: {
		type: "rule",
		values: ["color-contrast", "link-in-text-block", "target-size", "scrollable-region-focusable", "css-orientation-lock"],
	},
};
/** At a desk the frame is another one, the same on every page: it is judged whole on these. */
const WHOLE_AT_DESK = ["/", "/machines/N", "/t/TAG", "/labels"];

/** How many pages of one kind are looked at: a part or a bag may be in many states, and so may a step. */
const MOST: Readonly<Record<string, number>> = { "/t/TAG": 4, "/machines/N/work/N": 2, "/machines/N/build/MARK": 2, "/machines/N": 2 };

let browser: Browser;
let demo: Awaited<ReturnType<typeof demoFolder>>;
let shop: ServedShop;
let watch: WatchedPage;
const kinds = new Set<string>();
const violations: string[] = [];
const sideways: string[] = [];
const failed: string[] = [];

beforeAll(async () => {
	[browser, demo] = await Promise.all([openBrowser(), demoFolder()]);
	shop = await serveShop(demo.folder);
	const context = await openContext(browser, { size: PHONE });
	await context.addInitScript(AXE);
	watch = await openPage(context);
	await sayWho(watch.page, shop.base);
	await lookAtAll(watch.page);
}, 400_000);
afterAll(async () => {
	await browser.close();
	await shop.stop();
	demo.remove();
});

async function lookAtAll(page: Page) {
	const frontier = new Frontier(shop.base, (kind) => MOST[kind] ?? 1, seeds());
	for (let at = frontier.next(); at !== null; at = frontier.next()) {
		kinds.add(at.kind.split(" ")[0] ?? "");
		await page.setViewportSize(PHONE);
		await page.emulateMedia({ colorScheme: "light" });
		const answer = await page.goto(shop.base + at.address, { waitUntil: "load" });
		if (!answer?.ok()) failed.push(`${at.address}: ${answer?.status()}`);
		await frontier.follow(page);
		// What is folded away is part of the page, too.
		await page.evaluate(() => {
			for (const fold of document.querySelectorAll("details")) fold.open = true;
		});
		// Contrast goes with the light and crowding with the size: two looks see all that four would.
		await look(page, at.address, "360 light", RULES);
		await page.emulateMedia({ colorScheme: "dark" });
		await page.setViewportSize(DESK);
		await look(page, at.address, "1440 dark", WHOLE_AT_DESK.includes(at.kind) ? RULES : BY_EYE);
	}
}

async function look(page: Page, address: string, how: string, rules: RunOptions) {
	const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
	if (wide > 0) sideways.push(`${address} at ${how}: ${wide} px too wide`);
	const found = await page.evaluate(
		async (options) => {
			const { axe } = window as typeof window & { axe: { run: (options: unknown) => Promise<AxeResults> } };
			const { violations: all } = await axe.run(options);
			return all.map(({ id, help, nodes }) => ({
				id,
				help,
				count: nodes.length,
				first: nodes[0]?.html.slice(0, 200),
				why: nodes[0]?.failureSummary,
			}));
		},
		rules as unknown as Record<string, never>,
	);
	for (const { id, help, count, first, why } of found)
		violations.push(`${address} at ${how}: ${id} (${help}) x${count}, first ${first} ${why}`);
}

/** Pages that no link leads to from the first page, or not soon. */
const seeds = (): string[] => [
	"/",
	"/machines/14/take-out",
	"/machines/14/put-in",
	"/machines/14/changes",
	"/machines/14/money/owner",
	"/machines/12/changes/1",
	"/machines/12/reversal/1",
	"/labels/contents?tags=12-0208-Q",
	"/labels/wires?machine=12",
	"/labels/stock/a4-21",
	"/machines/12/papers/pins",
	"/phone",
	"/find?q=lamp",
	"/find?q=12",
];

/** Every page of the program, by the files that make them. */
function routes(): string[] {
	const app = path.resolve("app");
	return readdirSync(app, { recursive: true, encoding: "utf8" })
		.filter((file) => /(^|\/)page\.tsx$/.test(file.replaceAll("\\", "/")))
		.map((file) => `/${path.dirname(file).replaceAll("\\", "/")}`)
		.map((route) => (route === "/." ? "/" : route))
		.map((route) => route.replace(/\/\([^)]+\)/g, ""))
		.map((route) =>
			route
				.replace("[tag]", "TAG")
				.replace("[mark]", "MARK")
				.replace(/\[(capture|place|paper)\]/, "ID")
				.replace(/\[\w+\]/g, "N"),
		)
		.sort();
}

it("every page of the shop is looked at", () => {
	// An open shop has no book to open.
	const seen = [...kinds, "/welcome"].sort();
	expect(routes().filter((route) => !seen.includes(route))).toEqual([]);
	expect(failed).toEqual([]);
});

it("no page breaks WCAG 2.2 A or AA, on a phone or at a desk, in the light or in the dark", () => {
	expect(violations).toEqual([]);
});

it("no page scrolls sideways", () => {
	expect(sideways).toEqual([]);
});

it("no page fails in the console or against its own policy", () => {
	expect(watch.wrongs).toEqual([]);
});

it("the server has nothing to complain of", () => {
	expect(
		shop
			.said()
			.split("\n")
			.filter((line) => /error|warn/i.test(line)),
	).toEqual([]);
});
