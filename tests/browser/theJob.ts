import { spawnSync } from "node:child_process";
import path from "node:path";
import Database from "better-sqlite3";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { databaseFile } from "@/lib/db/store";
import type { Operation } from "@/lib/reversal/plan";
import { carriedOut } from "@/tests/reversal/carryOut";
import { card, fingers, type Hands, keys } from "@/tests/support/browserHands";
import { openBrowser, openContext, openPage, SHOP_NAME, type WatchedPage } from "@/tests/support/browserPage";
import { type ServedShop, serveShop } from "@/tests/support/browserServer";
import { codesOn } from "./labelOnPaper";
import { lookedAt, photoOnItsSide, plainPhoto } from "./photos";
import { ADDED_BUILD, BOUGHT, BUILD, DRIVE_ORDER, GREASE, LIGHT_ORDER, RATES, SUMS, USED, WAY_BACK } from "./tinHeron";

export type Way = {
	readonly size: { readonly width: number; readonly height: number };
	/** Fingers, or nothing but keys. */
	readonly touch: boolean;
};

/** Where a picture of the page is left when a part of the job fails. */
const PICTURES = path.resolve("out/browser");

/**
 * The whole job of one machine, through the screens only, as one story: each part stands on the one before. To be called
 * where tests are declared.
 */
export function theWholeJob({ size, touch }: Way): void {
	let browser: Browser;
	let shop: ServedShop;
	let watch: WatchedPage;
	let hands: Hands;
	let broken = false;

	beforeAll(async () => {
		browser = await openBrowser();
		shop = await serveShop();
		const context = await openContext(browser, { size, touch });
		watch = await openPage(context);
		hands = touch ? fingers(watch.page) : keys(watch.page);
	});
	afterAll(async () => {
		await browser.close();
		await shop.remove();
	});

	/** One part of the job. What comes after a part that failed has nothing to stand on. */
	const stage = (name: string, work: () => Promise<void>) =>
		it(name, async (context) => {
			if (broken) context.skip("an earlier part of the job failed");
			broken = true;
			try {
				await work();
			} catch (error) {
				await watch.page.screenshot({ path: path.join(PICTURES, `the job, ${touch ? "touch" : "keys"}.png`), fullPage: true });
				throw error;
			}
			broken = false;
		});
	const heading = (name: string | RegExp) => watch.page.getByRole("heading", { name }).first().waitFor();
	const url = (path: RegExp) => watch.page.waitForURL((address) => path.test(address.pathname));
	const row = (words: string | RegExp) => watch.page.getByRole("row", { name: words });
	const seen = (words: string | RegExp) => watch.page.getByText(words).first().waitFor();

	stage("an empty book is opened", async () => {
		await watch.page.goto(shop.base);
		await heading("Open the shop's book");
		await hands.write("Name of the shop", "Quay Lane Works");
		await hands.write("Currency", "EUR");
		await hands.write("Time zone", "Europe/Amsterdam");
		await hands.write("Your name", "Wil Duin");
		await hands.write("Your initials", "WD");
		await hands.write("What you do", "mechanic");
		await hands.write("Address on labels", `${SHOP_NAME}:${shop.port}`);
		await hands.press("Open the book");
		await heading("In the shop");
	});

	stage("a second person comes, and both have a rate", async () => {
		await hands.follow("People");
		await heading("People");
		await hands.write("Name", "Fen Oker");
		await hands.write("Initials", "FO");
		await hands.write("What they do", "electrically skilled");
		await hands.press("Add");
		const rate = card(watch.page, "Set a rate");
		for (const [who, { cost, charge }] of [
			["Wil Duin", RATES.wil],
			["Fen Oker", RATES.fen],
		] as const) {
			await hands.choose("Who", who, rate);
			// Long ago, so that time that began before midnight has a rate, too.
			await hands.write("From", "2020-01-01", rate);
			await hands.write("Costs an hour", cost, rate);
			await hands.write("Charged an hour", charge, rate);
			await hands.press("Set the rate", rate);
			await row(new RegExp(`${who}.*${cost}`)).waitFor();
		}
	});

	stage("a machine is taken in", async () => {
		await hands.follow("Shop");
		await heading("In the shop");
		await hands.follow("Take in the first machine");
		await heading("Take in a machine");
		await hands.write("Name", "TIN HERON");
		await hands.write("Kind", "fortune dispenser");
		await hands.write("Maker", "Voskuil and Daughter");
		await hands.write("Made", "1957~");
		await hands.write("From whom", "A fairground family");
		await hands.write("Paid for it", BOUGHT.price);
		await hands.write("Carriage", BOUGHT.carriage);
		await hands.write("Hazards", "mains on the metal of the case");
		await hands.write("Number", "31");
		await hands.press("Take in the machine");
		await url(/\/machines\/31\/build$/);
		await heading("TIN HERON");
	});

	stage("its build is typed as a list", async () => {
		await hands.write("Positions", BUILD);
		await hands.press("Add 8 positions");
		await seen("Added 8 positions");
		await row(/level 2: Coin lever p03/).waitFor();
	});

	stage("two photos are kept as they came, and shown upright and without the place they were taken", async () => {
		const photos = [await photoOnItsSide("front.jpg"), await plainPhoto("plate.jpg")];
		await hands.follow("Papers", watch.page.getByRole("navigation", { name: "TIN HERON" }));
		await heading("Photos");
		await hands.attach("Choose photos", photos);
		await watch.page.getByText("2 of 2 kept.").waitFor({ state: "attached" });
		await expect.poll(() => watch.page.locator("figure img").count()).toBe(2);
		const get = async (address: string) => await (await watch.page.request.get(shop.base + address)).body();
		for (const photo of photos) expect(await get(`/files/${photo.sha}`)).toEqual(photo.buffer);
		const [front] = photos;
		expect(await lookedAt(await get(`/files/${front?.sha}/small`))).toEqual({ upright: true, saysMore: false, redCorner: true });
	});

	stage("as found is stamped", async () => {
		await hands.follow("Build", watch.page.getByRole("navigation", { name: "TIN HERON" }));
		await hands.press("Stamp as found", card(watch.page, "As found"));
		await seen("Close the as found record with 8 positions?");
		// A second press that comes at once is the same press bouncing.
		await watch.page.waitForTimeout(600);
		await hands.press("Stamp as found", card(watch.page, "As found"));
		await card(watch.page, "As found").waitFor({ state: "detached" });
	});

	/** What the book holds, read beside the running server. */
	const table = (query: string): unknown[] => {
		const book = new Database(databaseFile(shop.folder), { readonly: true });
		try {
			return book.prepare(query).all();
		} finally {
			book.close();
		}
	};

	const column = (query: string): string[] => table(query).map((one) => String(Object.values(one as object)[0]));

	/** Types a tag, a name or a word where everything is found. */
	const find = async (words: string) => {
		await hands.write("Find", words);
		await watch.page.keyboard.press("Enter");
	};

	type Out = {
		readonly mark: string;
		readonly name: string;
		readonly fixings: string;
		readonly bag: RegExp;
		readonly which?: RegExp;
		readonly first?: string;
		readonly wire?: { readonly from: string; readonly to: string; readonly colour: string; readonly tags: readonly [string, string] };
	};
	const takeOut = async ({ mark, name, fixings, bag, which, first, wire }: Out) => {
		await url(new RegExp(`/take-out/${mark}$`));
		await heading(name);
		await hands.write("Another fixing", fixings);
		await hands.press("Add it");
		await hands.pick(bag);
		if (which) await hands.choose("Which bag", which);
		if (wire) {
			await hands.unfold("Wires and hoses");
			await hands.press("Add a wire");
			await hands.write("From", wire.from);
			await hands.write("To", wire.to);
			await hands.write("Colour", wire.colour);
			await hands.write("Tag on the part's end", wire.tags[0]);
			await hands.write("Tag on the other end", wire.tags[1]);
		}
		if (first) {
			await hands.unfold("What had to come off first");
			await hands.tick(first);
		}
		await hands.press("Out, no label");
		await seen(`The ${name} is out of`);
	};

	stage("five parts come out into two bags, each with what held it", async () => {
		const build = row(/Back panel p08/);
		await hands.follow(/^31-\d{4}-.$/, build);
		await heading("Back panel");
		await hands.follow("Take it out");
		await takeOut({ mark: "p08", name: "Back panel", fixings: "6 x M5 x 16 hex", bag: /^New bag(?!,)/ });
		await hands.follow("The next one");
		await hands.follow("Motor");
		await takeOut({
			mark: "p06",
			name: "Motor",
			fixings: "4 x M6 x 20 hex",
			bag: /^New bag, kept/,
			first: "Back panel",
			wire: { from: "motor 1", to: "block 3", colour: "BK", tags: ["W1", "W2"] },
		});
		await hands.follow("The next one");
		await hands.follow("Glass panel");
		await takeOut({ mark: "p01", name: "Glass panel", fixings: "8 x No.6 wood x 3/4 round", bag: /^Another bag/, which: /holding/ });
		await hands.follow("The next one");
		await hands.follow("Lamp");
		await takeOut({
			mark: "p05",
			name: "Lamp",
			fixings: "1 x E10 lamp holder",
			bag: /^Another bag/,
			which: /keeping/,
			first: "Glass panel",
		});
		await hands.follow("The next one");
		await hands.follow("Coin mechanism");
		await takeOut({ mark: "p02", name: "Coin mechanism", fixings: "4 x M4 x 10 cheese, slotted", bag: /the last bag/ });
		expect(table("SELECT role, (SELECT count(*) FROM Part WHERE bagId = Bag.id) parts FROM Bag ORDER BY entry")).toEqual([
			{ role: "holding", parts: 2 },
			{ role: "keeping", parts: 3 },
		]);
		// 6 + 4 + 8 + 1 + 4 of them lie in the bags with what they held.
		expect(table("SELECT sum(count) fixings FROM Fixing WHERE place = 'bag'")).toEqual([{ fixings: 23 }]);
	});

	stage("its label is printed, and any phone's camera opens its page", async () => {
		const printing = watch.page.context().waitForEvent("page");
		await hands.follow("Print the label");
		const labels = await printing;
		const there = touch ? fingers(labels) : keys(labels);
		await labels.getByRole("heading", { name: "1 label" }).waitFor();
		const link = labels.getByRole("link", { name: "Print the label" });
		await expect.poll(() => link.getAttribute("href")).toContain("deed=");
		const href = await link.getAttribute("href");
		const paper = labels.context().waitForEvent("page");
		await there.follow("Print the label");
		await (await paper).close();
		const pdf = await (await labels.request.get(shop.base + href)).body();
		await labels.close();
		const [code, ...others] = await codesOn(pdf);
		expect(others).toEqual([]);
		const [tag] = column("SELECT Tag.id FROM Tag JOIN Part ON Part.id = Tag.partId WHERE Part.name = 'Coin mechanism'");
		expect(code).toBe(`HTTP://${SHOP_NAME.toUpperCase()}:${shop.port}/T/${tag}`);
		// However often it was fetched, it went to paper once.
		expect(column("SELECT tag FROM LabelPrint")).toEqual([tag]);
		const phone = await watch.page.context().newPage();
		await phone.goto(code ?? "");
		await phone.getByRole("heading", { name: "Coin mechanism", level: 1 }).waitFor();
		await phone.close();
	});

	const buy = async (order: typeof DRIVE_ORDER | typeof LIGHT_ORDER) => {
		// A page for the bench shows no other pages of the shop: the way there is over the shop's own.
		await hands.follow("Asfound");
		await heading("In the shop");
		await hands.follow("Buying");
		await heading("Buying");
		await hands.follow("Enter a purchase");
		await url(/\/buying\/new$/);
		await hands.write("Name of the new supplier", order.supplier);
		const today = await watch.page.getByLabel("Ordered").inputValue();
		await hands.write(/^Arrived/, today);
		for (const [index, line] of order.lines.entries()) {
			if (index > 0) await hands.press("Add a line");
			const fields = watch.page.getByRole("group", { name: `Line ${index + 1}` });
			await hands.write("What", line.what, fields);
			await hands.write("How many", line.count, fields);
			await hands.write("Unit", line.unit, fields);
			await hands.write("The whole line", line.net, fields);
		}
		if (order.discount) await hands.write("Discount", order.discount);
		await hands.write("Freight", order.freight);
		await hands.write("Tax", order.tax);
		await hands.write("Paid in all", order.paid);
		await seen(`It comes to ${order.paid}`);
		await hands.press("Enter the purchase");
		await url(/\/buying\/\d+$/);
		await heading(/^Purchase \d+$/);
		for (const [index, line] of order.lines.entries())
			await row(new RegExp(`${line.what}.*${order.landed[index]}`))
				.first()
				.waitFor();
	};
	const makePart = async (line: string): Promise<string> => {
		const use = card(watch.page, "Use some of it");
		await hands.choose("Line", new RegExp(`^${line}`), use);
		await hands.write("How many of the line", "1", use);
		await hands.press("Make it a part", use);
		const notice = use.getByText(/It is 31-\d{4}-. now/);
		await notice.waitFor();
		return /31-\d{4}-./.exec((await notice.textContent()) ?? "")?.[0] ?? "";
	};

	stage("two orders come in, and their lines become parts", async () => {
		await buy(DRIVE_ORDER);
		await makePart("Gear motor 24 V");
		await row(new RegExp(`Gear motor.*${USED.motor}`))
			.last()
			.waitFor();
		await makePart("Relay board");
		await buy(LIGHT_ORDER);
		await makePart("LED bulb E10");
		const use = card(watch.page, "Use some of it");
		await hands.pick(/^Used up/, use);
		await hands.choose("Line", /^Flex, black/, use);
		await hands.write("How many", "2", use);
		await hands.write("What for", "to the bulb", use);
		await hands.press("Use it", use);
		await row(new RegExp(`Flex, black.*${USED.flex}`))
			.last()
			.waitFor();
	});

	const toMachine = async (tab: string) => {
		await find("31");
		await heading("TIN HERON");
		await hands.follow(tab, watch.page.getByRole("navigation", { name: "TIN HERON" }));
	};

	stage("the work makes a new place", async () => {
		await toMachine("Build");
		await row(/Motor p06/).waitFor();
		await hands.unfold("Add positions");
		await hands.write("Positions", ADDED_BUILD);
		await hands.pick(/^No/);
		await hands.press("Add 1 position");
		await row(/Relay seat p09/).waitFor();
	});

	/** `instead`: not the part that sat there before, which is offered first. */
	const putIn = async (part: string, position: string, which: "the old one" | "instead" | "the first") => {
		await url(/\/put-in\/p\d\d$/);
		await heading(position);
		if (which === "instead") await hands.unfold("Another part");
		if (which !== "the old one") await hands.pick(new RegExp(`^${part}`));
		await hands.press(`Put in the ${part}`);
		await seen(new RegExp(`The ${part} is in ${position}\\.`));
	};
	const next = async (position: string) => {
		await hands.follow("Put in the next one");
		await hands.follow(position);
	};

	stage("what was bought goes in, and what covers it goes in again", async () => {
		await hands.follow("Motor");
		await heading("Motor");
		await hands.follow("Put a part in");
		await putIn("Gear motor 24 V", "Motor", "instead");
		await next("Lamp");
		await putIn("LED bulb E10", "Lamp", "instead");
		await next("Relay seat");
		await putIn("Relay board", "Relay seat", "the first");
		await next("Back panel");
		await putIn("Back panel", "Back panel", "the old one");
		await next("Glass panel");
		await putIn("Glass panel", "Glass panel", "the old one");
	});

	stage("two steps are planned, for one and for two people", async () => {
		await toMachine("Work");
		for (const { title, kind, crew, likely } of [
			{ title: "Fit the gear motor", kind: "put in", crew: ["Wil Duin", "Fen Oker"], likely: "1 h 30" },
			{ title: "Wire the bulb", kind: "alter", crew: ["Fen Oker"], likely: "40" },
		]) {
			await hands.follow("Plan a step");
			await url(/\/work\/new$/);
			await hands.write("What is to be done", title);
			await hands.pick(kind);
			await hands.write("likely", likely);
			for (const who of crew) await hands.tick(who);
			await hands.press("Plan the step");
			await url(/\/work\/\d+$/);
			await heading(title);
			await hands.follow("Work", watch.page.getByRole("navigation", { name: "TIN HERON" }));
			await row(new RegExp(title)).waitFor();
		}
	});

	stage("both work on it: a clock that is started and stopped, and time from memory", async () => {
		await hands.follow(/Fit the gear motor$/);
		await heading("Fit the gear motor");
		await hands.press("Start my clock");
		await seen(/^since /);
		await hands.press("Stop my clock");
		await row(/Wil Duin.*1 min.*timed/).waitFor();
		const add = card(watch.page, "Add time from memory");
		await hands.write("How long", "1 h 25", add);
		await hands.press("Add the time", add);
		await row(/Wil Duin.*1 h 25.*from memory/).waitFor();
		await hands.choose("Who", "Fen Oker", add);
		await hands.write("How long", "50", add);
		await hands.press("Add the time", add);
		await row(/Fen Oker.*50.*from memory/).waitFor();
		await hands.write("What happened", "Sits on its bracket, runs quietly.");
		await hands.press("It is done");
		await card(watch.page, "What happened").waitFor();
		await hands.follow("Work", watch.page.getByRole("navigation", { name: "TIN HERON" }));
		await hands.follow(/Wire the bulb$/);
		await heading("Wire the bulb");
		await hands.choose("Who", "Fen Oker", add);
		await hands.write("How long", "35", add);
		await hands.press("Add the time", add);
		await row(/Fen Oker.*35.*from memory/).waitFor();
	});

	stage("an alteration that leaves a trace", async () => {
		await hands.follow("Changes", watch.page.getByRole("navigation", { name: "TIN HERON" }));
		await hands.follow("Record an alteration");
		await url(/\/changes\/alter$/);
		await hands.choose("Position", /Motor/);
		await hands.write("What is done to it", "two 5 mm holes for the bracket");
		await hands.pick(/^leaves a trace/);
		await hands.write("How it is undone", "plugs of the same wood");
		await hands.write("low", "20");
		await hands.write("likely", "30");
		await hands.write("high", "45");
		await hands.press("Record it: leaves a trace");
		await url(/\/changes\/1$/);
		await seen(/two 5 mm holes/);
	});

	stage("three tests are held against their limits", async () => {
		const tests = [
			{
				name: "Protective earth, pin to case",
				kind: "at most",
				fill: { "At most": "0.3" },
				unit: "\u03a9",
				reading: "0.12",
				verdict: /kept|pass/,
			},
			{
				name: "Insulation, mains to case",
				kind: "at least",
				fill: { "At least": "1" },
				unit: "M\u03a9",
				reading: "0.6",
				verdict: /not kept|fail/,
			},
			{
				name: "Current, running",
				kind: "between two values",
				fill: { From: "0.4", To: "0.9" },
				unit: "A",
				reading: "0.72",
				verdict: /kept|pass/,
			},
		] as const;
		await hands.follow("Tests", watch.page.getByRole("navigation", { name: "TIN HERON" }));
		for (const { name, kind, fill, unit, reading } of tests) {
			await hands.follow("Set a test");
			await url(/\/tests\/new$/);
			await hands.write("What is tested", name);
			await hands.choose("Kind of limit", kind);
			for (const [label, value] of Object.entries(fill)) await hands.write(label, value);
			await hands.write("Unit", unit);
			await hands.write("Where the limit comes from", "own limit");
			await hands.press("Set the test");
			await url(/\/tests\/\d+$/);
			await heading(name);
			await hands.write(/^What was measured/, reading);
			await hands.write("Instrument", "multimeter, serial 4471");
			await hands.press("Record the reading");
			await row(new RegExp(`^${reading}`)).waitFor();
			await hands.follow("Tests", watch.page.getByRole("navigation", { name: "TIN HERON" }));
			await row(new RegExp(name.slice(0, 12))).waitFor();
		}
		expect(table("SELECT value, verdict FROM TestRun ORDER BY entry")).toEqual([
			{ value: "0.12", verdict: "pass" },
			{ value: "0.6", verdict: "fail" },
			{ value: "0.72", verdict: "pass" },
		]);
	});

	stage("a conversion gathers it all", async () => {
		await hands.follow("Changes", watch.page.getByRole("navigation", { name: "TIN HERON" }));
		await hands.follow("Name a conversion");
		await hands.write("What it is called", "Gear motor and LED light");
		await hands.pick("ordinary");
		await hands.press("Name it");
		await heading("Gear motor and LED light");
		const members = card(watch.page, "Tick what belongs to it");
		for (const member of [
			/^Motor, p06 .*until/,
			/^Lamp, p05 .*until/,
			/^Gear motor 24 V, p06/,
			/^LED bulb E10, p05/,
			/^Relay board, p09/,
			/two 5 mm holes/,
			/Fit the gear motor/,
			/Wire the bulb/,
			/Protective earth/,
			/Insulation/,
			/Current, running/,
		])
			await hands.tick(member, members);
		await hands.press("These belong to it", members);
		await seen("Kept: 11 joined.");
	});

	stage("its money adds up to the sum worked out by hand", async () => {
		await hands.follow("Money", watch.page.getByRole("navigation", { name: "TIN HERON" }));
		await heading("Cost of the restoration");
		await hands.write("What for", "Grease");
		await hands.write("Spent", GREASE);
		await hands.press("Add the cost");
		await row(/Grease.*4\.40/).waitFor();
		await row(new RegExp(`Wil Duin.*${SUMS.wilWorked}.*${SUMS.wil}.*${SUMS.wilCharged}`)).waitFor();
		await row(new RegExp(`Fen Oker.*${SUMS.fenWorked}.*${SUMS.fen}.*${SUMS.fenCharged}`)).waitFor();
		await row(new RegExp(`Parts and materials.*${SUMS.parts}`)).waitFor();
		await row(new RegExp(`In all.*${SUMS.spent}`)).waitFor();
		expect(await card(watch.page, "In the books").textContent()).toContain(`In the books for${SUMS.books}`);
	});

	stage("the list of its reversal can be carried out by hand, and ends as it was found", async () => {
		await hands.follow("Reversal", watch.page.getByRole("navigation", { name: "TIN HERON" }));
		await heading("Back to as found");
		const lines = await watch.page
			.getByRole("table", { name: "The reversal, operation by operation" })
			.locator("tbody tr")
			.evaluateAll((each) => each.map((line) => line.textContent ?? ""));
		const operations = lines.map(operationIn);
		const bench = carriedOut(WAY_BACK, operations);
		expect(Object.fromEntries(bench.build)).toEqual(WAY_BACK.target);
		expect([...bench.undone]).toEqual(["a1"]);
		expect(lines.filter((line) => line.includes("leaves a trace"))).toHaveLength(1);
	});

	stage("nothing went wrong on the way, and the book verifies", async () => {
		expect(watch.wrongs).toEqual([]);
		await shop.stop();
		const verified = spawnSync(process.execPath, ["lib/cli/asfound.mjs", "verify"], {
			encoding: "utf8",
			env: { ...process.env, ASFOUND_DATA: shop.folder },
		});
		expect(`${verified.stdout}${verified.stderr}`).toMatch(/sound|verif/i);
		expect(verified.status).toBe(0);
	});
}

/** A line of the checklist as what a hand does. */
function operationIn(line: string, index: number): Operation {
	const said = /^\s*\d+\s*(Make safe|Take out|Undo|Put in|Check)(.*)$/s.exec(line);
	if (!said) throw new Error(`line ${index + 1} says nothing that can be done: ${line}`);
	const [, deed = "", rest = ""] = said;
	const position = /p0\d/.exec(rest)?.[0];
	const part = WAY_BACK.parts.map(({ id }) => id).find((id) => rest.trim().startsWith(id));
	const kind = ({ "Make safe": "make-safe", "Take out": "take-out", Undo: "undo", "Put in": "put-in", Check: "check" } as const)[deed];
	if (!kind) throw new Error(`no such deed: ${deed}`);
	return {
		id: `${index + 1} ${deed} ${rest.slice(0, 20)}`,
		kind,
		after: [],
		minutes: { low: 0, likely: 0, high: 0 },
		...(position === undefined || kind === "make-safe" || kind === "check" ? {} : { position }),
		...(part === undefined || kind === "undo" ? {} : { part }),
		...(kind === "undo" ? { alteration: "a1" } : {}),
	};
}
