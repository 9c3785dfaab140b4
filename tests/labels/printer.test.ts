// The printer is a program of the test's own, started as the shop's would be.

import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { instant } from "@/lib/core/instants";
import type { Result } from "@/lib/core/result";
import { takeOut } from "@/lib/fittings/changes";
import { printLabels, recordPrint, sayNudge } from "@/lib/labels/changes";
import { sendToPrinter } from "@/lib/labels/printer";
import { labelsOnPaper } from "@/lib/labels/printQueries";
import type { Tag } from "@/lib/tags/tag";
import { aMachine } from "@/tests/fittings/aMachine";
import { type FreshShop, freshShop } from "@/tests/support/freshShop";
import { pagesDrawn } from "./contentStream";
import { askPoppler, good, stock } from "./printed";

const PROGRAM = `
import { spawn } from "node:child_process";
import { appendFileSync, writeFileSync } from "node:fs";
const [how, folder, ...words] = process.argv.slice(2);
const taken = [];
for await (const chunk of process.stdin) taken.push(chunk);
appendFileSync(folder + "/asked", JSON.stringify(words) + "\\n");
if (how === "fails") { console.error("The printer labels\\n is out of paper."); process.exit(3); }
const start = (script) => spawn("sh", ["-c", script, "sh", folder], { stdio: ["ignore", "inherit", "inherit"] }).unref();
if (how === "leaves one") start("sleep 6");
if (how === "hangs") {
	start('while [ -d "$1" ]; do echo >> "$1/ticks"; sleep 0.05; done');
	setInterval(() => undefined, 1000);
}
writeFileSync(folder + "/printed.pdf", Buffer.concat(taken));
`;

describe("labels straight to the printer", { timeout: 30_000 }, () => {
	let shop: FreshShop;
	let folder: string;
	let tag: Tag;
	beforeEach(async () => {
		shop = await freshShop();
		folder = mkdtempSync(path.join(tmpdir(), "printer-"));
		writeFileSync(path.join(folder, "printer.mjs"), PROGRAM);
		const machine = await aMachine(shop, { lamp: {} });
		good(await takeOut({ machineId: machine.id, positionId: machine.position("lamp"), into: { kind: "new-bag", bag: {} } }, shop.env()));
		const bag = await shop.store.read.tag.findFirstOrThrow({ where: { bagId: { not: null } } });
		tag = bag.id as Tag;
	});
	afterEach(async () => {
		await shop.close();
		rmSync(folder, { recursive: true });
	});
	const printer = (how: string, ...words: string[]) => [process.execPath, path.join(folder, "printer.mjs"), how, folder, ...words];
	const jobs = (): string[] =>
		existsSync(path.join(folder, "asked")) ? readFileSync(path.join(folder, "asked"), "utf8").trim().split("\n") : [];
	const inBook = () => shop.store.read.labelPrint.count();
	const codeOf = (result: Result<unknown>): string => (result.ok ? "done" : result.error.code);

	it("gives it the PDF, and puts the print in the book when it has taken it", async () => {
		const done = good(await printLabels({ tags: [tag], stock: "roll-62x29", copies: 2 }, shop.env(), printer("works")));
		expect(done).toEqual({ printed: [{ tag, times: 1 }] });
		const pdf = readFileSync(path.join(folder, "printed.pdf"));
		expect(pagesDrawn(pdf)).toHaveLength(2);
		expect(await askPoppler("pdftotext", pdf)).toContain(tag);
		expect(await shop.store.read.labelPrint.findMany({ select: { tag: true, stock: true, copies: true } })).toEqual([
			{ tag, stock: "roll-62x29", copies: 2 },
		]);
	});

	it("says 2nd print on the second, in the PDF and in the book", async () => {
		good(await printLabels({ tags: [tag] }, shop.env(), printer("works")));
		expect(await askPoppler("pdftotext", readFileSync(path.join(folder, "printed.pdf")))).not.toContain("print");
		expect(good(await printLabels({ tags: [tag] }, shop.env(), printer("works")))).toEqual({ printed: [{ tag, times: 2 }] });
		expect(await askPoppler("pdftotext", readFileSync(path.join(folder, "printed.pdf")))).toContain("2nd print");
	});

	it("prints a deed once, however often and how soon after each other it is asked for", async () => {
		const env = shop.env();
		const both = await Promise.all([
			printLabels({ tags: [tag] }, env, printer("works")),
			printLabels({ tags: [tag] }, env, printer("works")),
		]);
		const later = await printLabels({ tags: [tag] }, env, printer("works"));
		expect([...both, later].map((done) => good(done))).toEqual(Array(3).fill({ printed: [{ tag, times: 1 }] }));
		expect(jobs()).toHaveLength(1);
		expect(await inBook()).toBe(1);
	});

	it("does not take the same deed with other labels for a repeat, also while the first still prints", async () => {
		const env = shop.env();
		const first = printLabels({ tags: [tag] }, { ...env, asked: "one" }, printer("works"));
		expect(codeOf(await printLabels({ tags: [tag], copies: 3 }, { ...env, asked: "three" }, printer("works")))).toBe("recorded-otherwise");
		good(await first);
		expect(jobs()).toHaveLength(1);
	});

	it("counts two deeds at once one after the other", async () => {
		const both = await Promise.all([1, 2].map(() => printLabels({ tags: [tag] }, shop.env(), printer("works"))));
		expect(both.flatMap((done) => good(done).printed.map(({ times }) => times))).toEqual([1, 2]);
	});

	it("puts nothing in the book when it fails, and says so in the printer's own words", async () => {
		const failed = await printLabels({ tags: [tag] }, shop.env(), printer("fails"));
		expect(failed).toMatchObject({ ok: false, error: { code: "printer-failed" } });
		expect(failed.ok ? "" : failed.error.say).toContain("The printer says: The printer labels is out of paper.");
		expect(codeOf(await printLabels({ tags: [tag] }, shop.env(), [path.join(folder, "nowhere")]))).toBe("printer-missing");
		expect(codeOf(await printLabels({ tags: [tag] }, shop.env(), null))).toBe("no-printer");
		expect(codeOf(await printLabels({ tags: [] }, shop.env(), printer("works")))).toBe("unreadable");
		expect(await inBook()).toBe(0);
	});

	it("waits for it only so long, and then ends it with all that it started", async () => {
		const late = await sendToPrinter(Buffer.from("%PDF"), printer("hangs"), 1200);
		expect(late).toMatchObject({ ok: false, error: { code: "printer-late", say: expect.stringContaining("Nothing is put in the book") } });
		const ticks = () => readFileSync(path.join(folder, "ticks"), "utf8").length;
		const then = ticks();
		await new Promise((resolve) => setTimeout(resolve, 300));
		expect(ticks()).toBe(then);
	});

	it("does not wait for what the program leaves running", async () => {
		expect(await sendToPrinter(Buffer.from("%PDF"), printer("leaves one"), 4000)).toEqual({ ok: true, value: null });
	});

	it("hands it its words as they are: no shell reads them", async () => {
		const words = ["$HOME", "; touch pwned", "`id`", "> out", "two words"];
		good(await sendToPrinter(Buffer.from("%PDF"), printer("works", ...words)));
		expect(jobs()).toEqual([JSON.stringify(words)]);
	});

	it("is not stopped by a program that does not read", async () => {
		expect(await sendToPrinter(Buffer.alloc(5_000_000), [process.execPath, "-e", "process.exit(0)"])).toEqual({ ok: true, value: null });
	});

	it("is moved by the nudge of its stock, and the same deed again says the same print", async () => {
		good(await sayNudge({ stock: "roll-62x29", right: 7, down: -4 }, shop.env()));
		const madeAt = instant("2026-03-04T08:00:00.000Z");
		const paper = async (deed: string | null) =>
			good(
				await labelsOnPaper(shop.store.read, {
					tags: [tag],
					stock: stock("roll-62x29"),
					startAt: 1,
					copies: 1,
					outlines: true,
					deed,
					madeAt,
				}),
			);
		const [page] = pagesDrawn((await paper(null)).pdf);
		const edges = page?.paths.find(({ how }) => how === "stroke")?.box;
		expect(edges?.left).toBeCloseTo(0.7, 2);
		expect(edges?.top).toBeCloseTo(-0.4, 2);
		const [first, second] = [shop.env(), shop.env()];
		good(await recordPrint({ tags: [tag], stock: "roll-62x29" }, first));
		good(await recordPrint({ tags: [tag], stock: "roll-62x29" }, second));
		expect([...(await paper(first.deed)).prints.values()]).toEqual([1]);
		expect([...(await paper(second.deed)).prints.values()]).toEqual([2]);
		expect([...(await paper(null)).prints.values()]).toEqual([3]);
	});
});
