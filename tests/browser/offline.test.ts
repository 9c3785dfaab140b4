// The network goes in the middle, answers are lost, the browser is killed, the shop's program is started anew: everything
// that was done at the bench is in the book once, in the order in which it was done.

import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import Database from "better-sqlite3";
import type { BrowserContext, Page } from "playwright-core";
import sharp from "sharp";
import { afterAll, beforeAll, expect, it } from "vitest";
import { databaseFile } from "@/lib/db/store";
import { verifyLedger } from "@/lib/ledger/verify";
import { sayWho } from "@/tests/support/browserHands";
import { openPhone } from "@/tests/support/browserPage";
import { type ServedShop, serveShop } from "@/tests/support/browserServer";
import { benchShop, lampNamed } from "./benchShop";

const LAMPS = 30;

let made: Awaited<ReturnType<typeof benchShop>>;
let shop: ServedShop;
let phone: BrowserContext;
let page: Page;
const keeps = mkdtempSync(path.join(tmpdir(), "asfound-phone-"));

beforeAll(async () => {
	made = await benchShop(LAMPS + 2);
	shop = await serveShop(made.folder);
	phone = await openPhone(keeps);
	page = await phone.newPage();
	page.setDefaultTimeout(15_000);
	await sayWho(page, shop.base);
	await page.goto(`${shop.base}/machines/21/bench`);
	await page.getByRole("heading", { name: "What comes out?" }).waitFor();
});
afterAll(async () => {
	await phone.close();
	await shop.remove();
	made.remove();
	rmSync(keeps, { recursive: true, force: true });
});

/** A small photo that looks like no other, so that each is a file of its own. */
const photoOf = async (number: number) => ({
	name: `${lampNamed(number)}.jpg`,
	mimeType: "image/jpeg",
	buffer: await sharp({ create: { width: 320, height: 240, channels: 3, background: { r: number * 8, g: 120, b: 255 - number * 8 } } })
		.jpeg()
		.toBuffer(),
});

/** From the part in the hand to the next one, as a person does it. */
async function takeOut(number: number): Promise<void> {
	await page.getByLabel("Find it").fill(lampNamed(number));
	await page.getByRole("link", { name: lampNamed(number) }).tap();
	await page.locator("input[type=file]").setInputFiles(await photoOf(number));
	await page.getByRole("list", { name: "Photos taken" }).getByRole("listitem").first().waitFor();
	await page.getByRole("button", { name: "Out, no label" }).tap();
	await page.getByRole("heading", { name: "What comes out?" }).waitFor();
}

/** The shop hears and does it, and its answers are lost: the phone must ask again, and it must not be done again. */
async function loseAnswers(): Promise<void> {
	for (const address of ["**/api/deeds", "**/api/upload?*"]) {
		await page.route(address, async (route) => {
			await route.fetch();
			await route.abort("connectionreset");
		});
	}
}

/** As a dead battery does it: no chance to write anything any more. */
function kill(folder: string): void {
	for (const pid of readdirSync("/proc").filter((name) => /^\d+$/.test(name))) {
		const words = commandOf(pid);
		if (words.includes(folder) && words.includes("chrom")) process.kill(Number(pid), "SIGKILL");
	}
}
function commandOf(pid: string): string {
	try {
		return readFileSync(`/proc/${pid}/cmdline`, "utf8");
	} catch {
		return ""; // it has ended meanwhile
	}
}

it("thirty take-outs with photos are in the book, once each and in order, whatever happened on the way", async () => {
	for (let number = 1; number <= 8; number++) await takeOut(number);

	await loseAnswers();
	for (let number = 9; number <= 11; number++) await takeOut(number);
	await page.unrouteAll({ behavior: "ignoreErrors" });

	await phone.setOffline(true);
	for (let number = 12; number <= LAMPS; number++) await takeOut(number);
	await page.getByText(/on this phone, not sent yet/).waitFor();
	// And one that was still being typed.
	await page.getByLabel("Find it").fill(lampNamed(LAMPS + 1));
	await page.getByRole("link", { name: lampNamed(LAMPS + 1) }).tap();
	await page.getByLabel("Another fixing").fill("2 x M3 x 6");
	await page.waitForTimeout(600);

	kill(keeps);
	await shop.stop();
	shop = await serveShop(made.folder, shop.port);
	phone = await openPhone(keeps);
	page = await phone.newPage();
	page.setDefaultTimeout(15_000);
	await page.goto(`${shop.base}/phone`);
	await page.getByText("Nothing waits on this phone").waitFor({ timeout: 60_000 });

	const book = new Database(databaseFile(made.folder), { readonly: true });
	const out = book
		.prepare(
			`SELECT "Part"."name" AS name, "Fitting"."untilAt" AS at, COUNT("Capture"."id") AS photos
			 FROM "Entry" JOIN "Fitting" ON "Entry"."subject" = 'Position/' || "Fitting"."positionId"
			 JOIN "Part" ON "Part"."id" = "Fitting"."partId" LEFT JOIN "Capture" ON "Capture"."partId" = "Part"."id"
			 WHERE "Entry"."action" = 'part.taken-out' GROUP BY "Entry"."seq" ORDER BY "Entry"."seq"`,
		)
		.all() as { name: string; at: string; photos: number }[];
	const captures = book.prepare(`SELECT COUNT(*) AS count, COUNT(DISTINCT "fileSha") AS files FROM "Capture"`).get();
	book.close();
	expect(out.map(({ name }) => name)).toEqual(Array.from({ length: LAMPS }, (_, at) => lampNamed(at + 1)));
	expect(out.map(({ photos }) => photos)).toEqual(Array(LAMPS).fill(1));
	expect(captures).toEqual({ count: LAMPS, files: LAMPS });
	// Both times are kept: when it was done at the bench, and by the entry's own when the book heard of it.
	const times = out.map(({ at }) => at);
	expect(times).toEqual(times.toSorted());
	expect((await verifyLedger(made.folder)).flaws).toEqual([]);

	await page.goto(`${shop.base}/machines/21/bench`);
	await page.getByRole("link", { name: lampNamed(LAMPS + 1) }).tap();
	await page.getByText("Typed on this phone before").waitFor();
	expect(await page.getByLabel("Another fixing").inputValue()).toBe("2 x M3 x 6");
});

it("what was put back before the shop's answer came is out and in again, once each", async () => {
	const name = lampNamed(LAMPS + 2);
	await page.goto(`${shop.base}/machines/21/bench`);
	await loseAnswers();
	await page.getByRole("link", { name }).tap();
	await page.getByRole("button", { name: "Out, no label" }).tap();
	await page.getByText("Out, and kept on this phone").waitFor();
	await page.getByRole("button", { name: "Put it back" }).tap();
	// It can be chosen again at once: by what this phone knows it is in its place.
	await page.getByRole("link", { name }).waitFor();
	await page.goto(`${shop.base}/phone`);
	await page
		.getByRole("main")
		.getByText(`${name} (p${LAMPS + 2}) back in`)
		.waitFor();
	await page.unrouteAll({ behavior: "ignoreErrors" });
	await page.reload();
	await page.getByText("Nothing waits on this phone").waitFor({ timeout: 60_000 });

	const book = new Database(databaseFile(made.folder), { readonly: true });
	const told = book
		.prepare(
			`SELECT "Entry"."action" AS action FROM "Entry" JOIN "Position" ON "Entry"."subject" = 'Position/' || "Position"."id"
			 WHERE "Position"."name" = ? AND "Entry"."action" LIKE 'part.%' ORDER BY "Entry"."seq"`,
		)
		.all(name) as { action: string }[];
	const seats = book.prepare(`SELECT COUNT(*) AS count FROM "Part" WHERE "name" = ? AND "positionId" IS NOT NULL`).get(name);
	book.close();
	expect(told.map(({ action }) => action)).toEqual(["part.taken-out", "part.put-back"]);
	expect(seats).toEqual({ count: 1 });
	expect((await verifyLedger(made.folder)).flaws).toEqual([]);
});

it("what was not on the list is named, and comes out in the same run", async () => {
	await page.goto(`${shop.base}/machines/21/bench`);
	await page.getByText("It is not on the list").tap();
	await page.getByLabel("What it is").fill("Coin guide");
	await page.getByRole("button", { name: "Add it, and take it out" }).tap();
	await page.getByRole("heading", { name: "Coin guide" }).waitFor();
	await page.getByRole("button", { name: "Out, no label" }).tap();
	await page.getByText("The Coin guide is out").waitFor();

	const book = new Database(databaseFile(made.folder), { readonly: true });
	const seats = book
		.prepare(
			`SELECT "Part"."positionId" AS now, "Part"."origin" AS origin, "Finding"."state" AS finding FROM "Position"
			 JOIN "Finding" ON "Finding"."positionId" = "Position"."id" JOIN "Fitting" ON "Fitting"."positionId" = "Position"."id" JOIN "Part" ON "Part"."id" = "Fitting"."partId"
			 WHERE "Position"."name" = 'Coin guide'`,
		)
		.all();
	book.close();
	// It was there when the machine came, whoever thought of it late.
	expect(seats).toEqual([{ now: null, origin: "unknown", finding: "there" }]);
});
