// The ten commonest tasks at the bench, carried out on a phone, each with what it asks of the hand, beside the same task by
// paper tag, phone photo and spreadsheet. Printed as a table; the tool is to be ahead on every row.

import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { makeBag, moveBag } from "@/lib/bags/changes";
import type { Result } from "@/lib/core/result";
import { openStore } from "@/lib/db/store";
import { sayFixing } from "@/lib/fittings/changes";
import { envNow } from "@/lib/ledger/edge";
import { planStep } from "@/lib/steps/changes";
import { planStepSchema } from "@/lib/steps/schema";
import { addLocation, tagPlaces } from "@/lib/store/changes";
import { fingers, type Hands, sayWho } from "@/tests/support/browserHands";
import { openBrowser, openContext, openPage, PHONE } from "@/tests/support/browserPage";
import { type ServedShop, serveShop } from "@/tests/support/browserServer";
import { benchShop, lampNamed } from "./benchShop";
import { and, type Effort, NOTHING, secondsOf, sumOf } from "./keystrokes";
import { PAPER } from "./paperWay";
import { plainPhoto } from "./photos";
import { barePage, scriptOf } from "./weights";

const MOST_TAPS = 6;
const MOST_KB = 60;

let made: Awaited<ReturnType<typeof benchShop>>;
let shop: ServedShop;
let browser: Browser;
let page: Page;
/** The bag that is made on the way, and a part of the machine, by their tags. */
let bag = "";
let part = "";
let shelf: { readonly id: string; readonly tag: string };
const rows: { readonly task: string; readonly tool: Effort; readonly paper: Effort }[] = [];

const got = <T>(result: Result<T>): T => {
	if (!result.ok) throw new Error(`${result.error.code}: ${result.error.say}`);
	return result.value;
};

beforeAll(async () => {
	[browser, made] = await Promise.all([openBrowser(), benchShop(12)]);
	const store = await openStore(made.folder);
	const { read } = store;
	const me = await read.person.findFirstOrThrow({ select: { id: true } });
	const env = () => envNow(store, me.id);
	const machine = await read.machine.findUniqueOrThrow({ where: { number: 21 }, select: { id: true } });
	const seat = async (number: number) =>
		(await read.position.findFirstOrThrow({ where: { machineId: machine.id, name: lampNamed(number) }, select: { id: true } })).id;
	for (const number of [3, 4]) {
		const fixing = { fixingId: null, positionIds: [await seat(number)], count: 2, thread: "M4", length: "10" };
		got(await sayFixing(fixing, env()));
	}
	const room = got(await addLocation({ parentId: null, kind: "room", name: "Back room" }, env())).locationId;
	const locationId = got(await addLocation({ parentId: room, kind: "shelf", name: "Shelf 1" }, env())).locationId;
	const [tagged] = got(await tagPlaces({ locationIds: [locationId] }, env())).tags;
	shelf = { id: locationId, tag: tagged?.tag ?? "" };
	for (const words of ["trims", "coils"]) {
		const { bagId } = got(await makeBag({ machineId: machine.id, words }, env()));
		got(await moveBag({ bagId, to: { kind: "location", locationId } }, env()));
	}
	got(await planStep(planStepSchema.parse({ machineId: machine.id, kind: "clean", title: "Clean the lamps" }), env()));
	part = (await read.tag.findFirstOrThrow({ where: { part: { name: lampNamed(6) } }, select: { id: true } })).id;
	await store.close();

	shop = await serveShop(made.folder);
	const context = await openContext(browser, { size: PHONE, touch: true });
	({ page } = await openPage(context));
	await sayWho(page, shop.base);
});
afterAll(async () => {
	await browser.close();
	await shop.remove();
	made.remove();
});

/** Hands that keep count. A label that opens in a tab of its own is looked at and closed by nobody here. */
class Counted {
	effort = NOTHING;
	readonly #hands: Hands = fingers(page);
	async #tap(target: Locator): Promise<void> {
		await target.waitFor();
		await target.tap();
		this.effort = and(this.effort, { taps: 1, minds: 1 });
	}
	button = (name: string | RegExp) => this.#tap(page.getByRole("button", { name }).first());
	link = (name: string | RegExp) => this.#tap(page.getByRole("main").getByRole("link", { name }).first());
	option = (name: RegExp) => this.#tap(page.getByRole("radio", { name }));
	box = (name: RegExp) => this.#tap(page.getByRole("checkbox", { name }));
	/** Pressed, aimed, taken, and accepted. */
	async photo(button: string): Promise<void> {
		await this.#hands.attach(button, [await plainPhoto("bench.jpg")]);
		this.effort = and(this.effort, { taps: 3, photos: 1, minds: 1 });
	}
	async photographTag(tag: string): Promise<void> {
		await this.#hands.attach("Photograph the label", [await labelPhoto(tag)]);
		this.effort = and(this.effort, { taps: 3, photos: 1, minds: 1 });
	}
	/** The phone's own camera: opened, aimed at the label, and its link tapped. */
	async scan(tag: string): Promise<void> {
		await page.goto(`${shop.base}/T/${tag}`);
		this.effort = and(this.effort, { taps: 2, photos: 1, minds: 1 });
	}
	async type(field: Locator, text: string): Promise<void> {
		await field.tap();
		await field.fill(text);
		await field.press("Enter");
		this.effort = and(this.effort, { taps: 1, typed: text.length + 1, minds: 1 });
	}
}

/** A label on the bench, as a phone photographs it: on its own paper, on a darker bench. */
async function labelPhoto(tag: string) {
	const [{ default: qrcode }, { default: sharp }] = await Promise.all([import("qrcode"), import("sharp")]);
	const code = await qrcode.toBuffer(tag, { scale: 8, margin: 4 });
	const buffer = await sharp({ create: { width: 1600, height: 1200, channels: 3, background: "#8a8272" } })
		.composite([{ input: code, left: 600, top: 400 }])
		.jpeg({ quality: 80 })
		.toBuffer();
	return { name: "label.jpg", mimeType: "image/jpeg", buffer };
}

const heading = (name: string | RegExp) => page.getByRole("heading", { name }).first().waitFor();
const bench = async () => {
	await page.goto(`${shop.base}/machines/21/bench`);
	await heading("What comes out?");
};
/** Carries a task out and keeps what it asked; `PAPER` has the other way under the same name. */
function task(name: string, work: (hands: Counted) => Promise<void>, ready: () => Promise<void> = async () => undefined): void {
	it(name, async () => {
		await ready();
		const hands = new Counted();
		await work(hands);
		const paper = PAPER[name];
		if (!paper) throw new Error(`no paper way is written out for ${name}`);
		rows.push({ task: name, tool: hands.effort, paper: sumOf(paper) });
		expect(secondsOf(hands.effort)).toBeLessThan(secondsOf(sumOf(paper)));
	});
}

/** The way to the label that the first take-out asked for. */
let label = "";

describe("the ten commonest tasks are quicker than by paper tag, photo and spreadsheet", () => {
	task(
		"take out, photo, new bag, label",
		async (hands) => {
			await hands.link(new RegExp(lampNamed(3)));
			await hands.photo("Take the photo");
			await hands.button("Out, with its label");
			await page.getByText(`The ${lampNamed(3)} is out`).waitFor();
			label = (await page.getByRole("link", { name: /^Print (the|2) labels?/ }).getAttribute("href")) ?? "";
			expect(hands.effort.taps).toBeLessThanOrEqual(MOST_TAPS);
			expect(hands.effort.typed).toBe(0);
			expect(hands.effort.photos).toBe(1);
		},
		bench,
	);
	task(
		"take out into the same bag, no label",
		async (hands) => {
			await hands.link(new RegExp(lampNamed(4)));
			await hands.photo("Take the photo");
			await hands.option(/the last bag/);
			await hands.button("Out, no label");
			await page.getByText(`The ${lampNamed(4)} is out`).waitFor();
		},
		bench,
	);
	task("find where a part is", async (hands) => {
		await hands.type(page.getByRole("searchbox", { name: "Find" }), lampNamed(3));
		const where = page
			.getByRole("main")
			.getByText(/in 21-\d{4}-\w/)
			.first();
		bag = /in (21-\d{4}-\w)/.exec((await where.textContent()) ?? "")?.[1] ?? "";
		expect(bag).not.toBe("");
	});
	task("what is in this bag", async (hands) => {
		await hands.scan(bag);
		await page.getByRole("main").getByText(lampNamed(4)).first().waitFor();
	});
	task("put a bag on a shelf", async (hands) => {
		await hands.scan(bag);
		await hands.link("Scan where it goes");
		await hands.photographTag(shelf.tag);
		await page.getByText(/lies on Back room · Shelf 1 now/).waitFor();
	});
	task("count a shelf of three", async (hands) => {
		await hands.scan(shelf.tag);
		await hands.link("Count it");
		for (const name of [/trims/, /coils/, new RegExp(bag)]) await hands.box(name);
		await hands.button("Record the count");
		await page.getByText("Counted", { exact: true }).waitFor();
	});
	task("print its label again", async (hands) => {
		await hands.scan(bag);
		await hands.link("Print again");
		const [pdf] = await Promise.all([page.context().waitForEvent("page"), hands.link(/^Print the label/)]);
		await pdf.close();
	});
	task("put it back in", async (hands) => {
		await hands.scan(bag);
		await hands.link(lampNamed(3));
		await hands.link("Put it in");
		await hands.button(/^Put in the/);
		await page.getByRole("heading", { name: "In", exact: true }).or(page.getByText("Take it out again")).first().waitFor();
	});
	task(
		"start the clock of a step, and stop it",
		async (hands) => {
			await hands.link("Clean the lamps");
			await hands.button("Start my clock");
			await hands.button("Stop my clock");
			await page.getByRole("button", { name: "Start my clock" }).waitFor();
		},
		async () => void (await page.goto(`${shop.base}/machines/21/work`)),
	);
	task(
		"only a photo now, words in the evening",
		async (hands) => {
			await hands.photo("Only a photo now, words later");
			await page.getByText("Photo 1: kept").waitFor();
			await page.goto(`${shop.base}/later`);
			await hands.type(page.getByRole("main").getByRole("textbox").first(), "burnt socket");
			await page.getByText("Everything has its words").waitFor();
		},
		bench,
	);

	afterAll(() => {
		const line = ({ task: name, tool, paper }: (typeof rows)[number]) => `${name.padEnd(42)}${cells(tool)}   ${cells(paper)}`;
		const cells = (effort: Effort) =>
			[effort.taps, effort.typed, effort.written, effort.photos].map((count) => String(count).padStart(5)).join("") +
			secondsOf(effort).toFixed(1).padStart(8);
		const head = `${"".padEnd(42)} taps  keys  pen photos    s     taps  keys  pen photos    s`;
		console.info([head, ...rows.map(line)].join("\n"));
		expect(rows).toHaveLength(10);
	});
});

it("the label that was asked for at the bench comes out, and is in the book once", async () => {
	await page.goto(shop.base + label);
	const address = await page.getByRole("link", { name: /^Print (the|2) labels?/ }).getAttribute("href");
	const tags = new URLSearchParams(label.split("?")[1]).get("tags")?.split(",") ?? [];
	const store = await openStore(made.folder);
	try {
		const before = await store.read.labelPrint.count({ where: { tag: { in: tags } } });
		for (let times = 0; times < 2; times++) {
			const answer = await page.request.get(shop.base + address);
			expect([answer.status(), answer.headers()["content-type"]]).toEqual([200, "application/pdf"]);
		}
		expect(tags.length).toBeGreaterThan(0);
		expect((await store.read.labelPrint.count({ where: { tag: { in: tags } } })) - before).toBe(tags.length);
	} finally {
		await store.close();
	}
});

describe(`pages of the bench bring at most ${MOST_KB} KB of script beyond a bare page`, () => {
	it("each of them", async () => {
		const base = barePage();
		expect(base).toBeGreaterThan(50);
		const pages = [
			"/machines/21/bench",
			"/machines/21/take-out/p05",
			"/machines/21/put-in/p04",
			`/t/${bag}`,
			`/t/${part}`,
			"/store/move",
			`/store/${shelf.id}/count`,
			"/phone",
		];
		const weights = [];
		for (const address of pages) weights.push({ address, more: (await scriptOf(page.context(), shop.base + address)) - base });
		console.info(
			[`a bare page: ${base.toFixed(1)} KB`, ...weights.map(({ address, more }) => `${address}: ${more.toFixed(1)} KB more`)].join("\n"),
		);
		for (const { more } of weights) expect(more).toBeGreaterThan(1);
		expect(weights.filter(({ more }) => more > MOST_KB)).toEqual([]);
	});
});
