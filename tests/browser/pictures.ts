// Pictures of every page, to be looked at side by side: `npx tsx tests/browser/pictures.ts OUTDIR [BASE_URL]`.
// On a phone and at a desk, in the light and in the dark, and printed on A4. Without a base address it shows the demo shop.

import { execFileSync } from "node:child_process";
import { mkdirSync, rmSync } from "node:fs";
import path from "node:path";
import type { Page } from "playwright-core";
import { sayWho } from "@/tests/support/browserHands";
import { DESK, openBrowser, openContext, openPage, PHONE } from "@/tests/support/browserPage";
import { Frontier } from "@/tests/support/browserPages";
import { serveShop } from "@/tests/support/browserServer";

const [out, given] = process.argv.slice(2);
if (out === undefined) {
	process.stderr.write("Say where the pictures go: npx tsx tests/browser/pictures.ts OUTDIR [BASE_URL]\n");
	process.exit(2);
}

const SIZES = { 360: PHONE, 1440: DESK } as const;
/** Sheets of one print that are drawn; a long list goes on alike. */
const MOST_SHEETS = 3;
const DOTS_PER_INCH = 72;

const nameOf = (address: string): string => address.replace(/^\//, "").replace(/[^A-Za-z0-9-]+/g, "_") || "shop";

/** A picture further down waits until somebody scrolls to it. */
async function everyPicture(page: Page): Promise<void> {
	await page.evaluate(async () => {
		const pictures = [...document.images];
		for (const picture of pictures) picture.loading = "eager";
		await Promise.all(pictures.map((picture) => picture.decode().catch(() => undefined)));
	});
}

async function photograph(page: Page, name: string, folder: string): Promise<void> {
	await everyPicture(page);
	for (const [width, size] of Object.entries(SIZES)) {
		await page.setViewportSize(size);
		for (const scheme of ["light", "dark"] as const) {
			await page.emulateMedia({ colorScheme: scheme });
			await page.screenshot({ path: path.join(folder, `${name}-${width}-${scheme}.png`), fullPage: true });
		}
	}
}

async function print(page: Page, name: string, folder: string): Promise<void> {
	const pdf = path.join(folder, `${name}-print.pdf`);
	await page.emulateMedia({ colorScheme: "light", media: "print" });
	await page.pdf({ path: pdf, format: "A4", printBackground: false });
	await page.emulateMedia({ media: null });
	execFileSync("pdftoppm", ["-r", String(DOTS_PER_INCH), "-l", String(MOST_SHEETS), "-png", pdf, path.join(folder, `${name}-print`)]);
	rmSync(pdf);
}

const folder = path.resolve(out);
mkdirSync(folder, { recursive: true });
const demo = given === undefined ? await import("@/tests/support/browserDemo").then(({ demoFolder }) => demoFolder()) : null;
const shop = demo === null ? null : await serveShop(demo.folder);
const base = (given ?? shop?.base ?? "").replace(/\/$/, "");
const browser = await openBrowser();
try {
	const { page, wrongs } = await openPage(await openContext(browser, { size: PHONE }));
	await sayWho(page, base);
	// Every machine's first page; of what is under them, two of a kind.
	const frontier = new Frontier(base, (kind) => (kind === "/machines/N" ? 20 : kind === "/t/TAG" ? 6 : 2));
	for (let at = frontier.next(); at !== null; at = frontier.next()) {
		await page.setViewportSize(PHONE);
		await page.goto(base + at.address, { waitUntil: "networkidle" });
		await frontier.follow(page);
		await photograph(page, nameOf(at.address), folder);
		await print(page, nameOf(at.address), folder);
		process.stdout.write(`${at.address}\n`);
	}
	for (const wrong of wrongs) process.stdout.write(`wrong: ${wrong}\n`);
} finally {
	await browser.close();
	await shop?.stop();
	demo?.remove();
}
