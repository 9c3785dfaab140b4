// Two tabs that say different things of the same, and files that are not what they are called.

import { createHash } from "node:crypto";
import type { Browser, BrowserContext } from "playwright-core";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Hands, keys, type Picked, sayWho } from "@/tests/support/browserHands";
import { DESK, openBrowser, openContext, openPage } from "@/tests/support/browserPage";
import { type ServedShop, serveShop } from "@/tests/support/browserServer";
import { Book, unfolded } from "./formAttacks";
import { plainPhoto } from "./photos";
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

/** A tab of its own on the page, awake, with the hands of a keyboard. */
async function tab(address: string): Promise<Hands> {
	const { page } = await openPage(context);
	await unfolded(page, shop.base + address);
	return keys(page);
}
const problemOf = (hands: Hands) => hands.page.locator("main [role=alert] > *").first();
const motor = () => small.addresses.find((address) => address.startsWith("/machines/7/take-out/")) ?? "";

describe("two tabs at once", () => {
	it("correct the same: the second is told at the field, keeps what was typed, and may write it over the first", async () => {
		const [first, second] = [await tab("/machines/7/about"), await tab("/machines/7/about")];
		await first.write("Condition", "Dry, complete.");
		await first.press("Record what is said of it");
		await first.page.waitForURL(`${shop.base}/machines/7`);
		const before = book.entries();

		await second.write("Condition", "Damp at the foot.");
		await second.write("Hazards", "A loaded spring.");
		await second.press("Record what is said of it");
		await problemOf(second).waitFor();
		const condition = second.page.getByLabel("Condition");
		expect(await problemOf(second).textContent()).toMatch(/^Somebody else changed the same .+ press again to write it over theirs/);
		expect(await condition.getAttribute("aria-invalid")).toBe("true");
		expect(await second.page.locator(`#${(await condition.getAttribute("id")) ?? ""}-error`).textContent()).toMatch(
			/^Somebody else changed/,
		);
		expect(await condition.evaluate((field) => field === document.activeElement)).toBe(true);
		expect(await condition.inputValue()).toBe("Damp at the foot.");
		expect(await second.page.getByLabel("Hazards").inputValue()).toBe("A loaded spring.");
		expect(book.entries()).toBe(before);

		await second.press("Record what is said of it");
		await second.page.waitForURL(`${shop.base}/machines/7`);
		expect(book.entries()).toBe(before + 1);
		await second.page.goto(`${shop.base}/machines/7/about`);
		expect(await condition.inputValue()).toBe("Damp at the foot.");
	});

	it("take out the same part: it is out once, and the second is told and keeps what was typed", async () => {
		const [first, second] = [await tab(motor()), await tab(motor())];
		const out = async (hands: Hands) => {
			await hands.write("Another fixing", "4 x M6 x 20 hex");
			await hands.press("Add it");
			await hands.write("Another fixing", "1 x a clip");
			await hands.press("Out, no label");
		};
		const before = book.entries();
		await out(first);
		await first.page
			.getByText(/is out of/)
			.first()
			.waitFor();
		expect(book.entries()).toBe(before + 1);
		await out(second);
		await problemOf(second).waitFor();
		expect(await problemOf(second).textContent()).toMatch(/\S \S.*[.]$/);
		expect(await second.page.getByLabel("Another fixing").inputValue()).toBe("1 x a clip");
		expect(await second.page.getByText("M6").count()).toBeGreaterThan(0);
		expect(book.entries()).toBe(before + 1);
	});
});

describe("a file that is not what it is called", () => {
	it("is told from its bytes: refused by name with what to do, or kept and served as what it is", async () => {
		const hands = await tab("/machines/7/papers");
		const html = Buffer.from("<!doctype html><script>document.title = 'ran'</script>");
		// The head of a photo in a phone's own format: a box of the type "ftyp" and the brand "heic" (ISO 14496-12, ISO 23008-12).
		const heic = Buffer.concat([
			Buffer.from([0, 0, 0, 24]),
			Buffer.from("ftypheic"),
			Buffer.alloc(4),
			Buffer.from("mif1heic"),
			Buffer.alloc(200),
		]);
		const png = await sharp({ create: { width: 40, height: 40, channels: 3, background: "#59625f" } })
			.png()
			.toBuffer();
		const photo = await plainPhoto("whole.jpg");
		const files: Picked[] = [
			{ name: "page.jpg", mimeType: "image/jpeg", buffer: html },
			{ name: "phone.jpg", mimeType: "image/jpeg", buffer: heic },
			{ name: "program.jpg", mimeType: "image/jpeg", buffer: Buffer.from([0x7f, 0x45, 0x4c, 0x46, 2, 1, 1, 0, ...Array(200).fill(7)]) },
			{ name: "half.jpg", mimeType: "image/jpeg", buffer: photo.buffer.subarray(0, photo.buffer.length / 2) },
			{ name: "nothing.jpg", mimeType: "image/jpeg", buffer: Buffer.alloc(0) },
			{ name: "drawn.jpg", mimeType: "image/jpeg", buffer: png },
		];
		await hands.attach("Choose photos", files);
		await hands.page.getByText("1 of 6 kept, 5 not.").waitFor({ state: "attached" });
		const said = async (name: string) =>
			(await hands.page.getByRole("listitem").filter({ hasText: name }).locator("[role=alert]").textContent()) ?? "";
		expect(await said("page.jpg")).toBe("This is a document and no picture. Keep it as a paper.");
		expect(await said("phone.jpg")).toMatch(/"most compatible" \(JPEG\)/);
		expect(await said("program.jpg")).toMatch(/Choose a photo/);
		expect(await said("half.jpg")).toMatch(/damaged/);
		expect(await said("nothing.jpg")).toMatch(/\S \S.*[.]$/);
		const kept = await hands.page.request.get(`${shop.base}/files/${createHash("sha256").update(png).digest("hex")}`);
		expect(kept.headers()["content-type"]).toBe("image/png");
		expect(kept.headers()["x-content-type-options"]).toBe("nosniff");
	});
});
