// The queue as a page runs it, with a shop that answers as each test has it. Node has no IndexedDB: what is kept is kept in
// memory, by the same rules.

import { afterEach, describe, expect, it, vi } from "vitest";
import type { Waiting } from "@/lib/outbox/queue";
import { aDeed } from "@/tests/outbox/aDeed";

type Said = { readonly url: string; readonly body: Record<string, unknown> };
type Shop = (said: Said) => Promise<{ readonly status: number; readonly value: unknown }>;

const item = (deed: string, more: Partial<Waiting> = {}): Omit<Waiting, "refused" | "sent"> => {
	const { refused: _, sent: __, ...queued } = aDeed(deed, { input: { part: deed }, ...more });
	return queued;
};
const done = (value: Record<string, unknown> = {}) => ({ status: 200, value: { ok: true, value } });
const refusal = (code: string) => ({ status: 200, value: { ok: false, error: { code, say: "No." } } });

const pages: typeof import("@/app/outbox/outbox")[] = [];

/** A page of its own: the module anew, over a phone that keeps nothing yet. */
async function openedPage(shop: Shop) {
	const asked: Said[] = [];
	vi.resetModules();
	vi.stubGlobal("window", { addEventListener: () => undefined });
	vi.stubGlobal("document", { addEventListener: () => undefined, visibilityState: "visible" });
	vi.stubGlobal("fetch", async (url: string, { body }: { body: unknown }) => {
		const said = { url, body: typeof body === "string" ? (JSON.parse(body) as Record<string, unknown>) : {} };
		asked.push(said);
		const { status, value } = await shop(said);
		return { status, headers: new Headers(), json: async () => value };
	});
	vi.spyOn(console, "info").mockImplementation(() => undefined);
	const outbox = await import("@/app/outbox/outbox");
	pages.push(outbox);
	return { ...outbox, asked, kept: async () => (await outbox.phone()).read() };
}

// What still waits would be tried again when another test has the floor.
afterEach(async () => {
	for (const page of pages.splice(0)) for (const { deed } of (await (await page.phone()).read()).waiting) await page.leaveOut(deed);
	vi.unstubAllGlobals();
	vi.restoreAllMocks();
});

describe("the queue of a phone", () => {
	it("calls sent what was sent, as soon as it goes: then it cannot be left out any more", async () => {
		const page = await openedPage(() => Promise.reject(new TypeError("reset")));
		await page.queue(item("a"));
		expect((await page.outcomeOf("a", 1000)).kind).toBe("waits");
		expect(await page.leaveOutUnsent("a")).toBe(false);
		expect((await page.kept()).waiting.map(({ deed, sent }) => [deed, sent])).toEqual([["a", { part: "a" }]]);
	});

	it("leaves out what was never sent", async () => {
		let answer = (_: unknown) => {};
		const page = await openedPage(() => new Promise((resolve) => (answer = () => resolve(done()))));
		await page.queue(item("a"));
		await page.queue(item("b"));
		expect(await page.leaveOutUnsent("b")).toBe(true);
		answer(null);
		await vi.waitFor(async () => expect((await page.kept()).waiting).toEqual([]));
		expect(page.asked.map(({ body }) => body.part)).toEqual(["a"]);
	});

	it("does not take two deeds under one id for one", async () => {
		const page = await openedPage(() => Promise.reject(new TypeError("reset")));
		await page.queue(item("a"));
		await page.queue(item("a"));
		await expect(page.queue(item("a", { input: { part: "another" } }))).rejects.toThrow("Two deeds under one id");
		expect((await page.kept()).waiting).toHaveLength(1);
	});

	it("goes on when the shop's printer is slow, and asks it once for each deed", async () => {
		let printer = (_: unknown) => {};
		const page = await openedPage(({ url }) =>
			url === "/api/print" ? new Promise((resolve) => (printer = () => resolve(done()))) : Promise.resolve(done({ bagTag: "12-0201-B" })),
		);
		await page.queue(item("a", { wantsLabel: true, input: { into: { kind: "new-bag" } } }));
		await page.queue(item("b"));
		expect((await page.outcomeOf("a", 1000)).kind).toBe("done");
		expect((await page.outcomeOf("b", 1000)).kind).toBe("done");
		const left = page.labelsLeft("a");
		printer(null);
		expect(await left).toEqual([]);
		expect(page.asked.filter(({ url }) => url === "/api/print")).toHaveLength(1);
	});

	it("leaves labels to be printed by hand, under the id that the printer was asked with", async () => {
		const page = await openedPage(async ({ url }) => (url === "/api/print" ? refusal("no-printer") : done({ bagTag: "12-0201-B" })));
		await page.queue(item("a", { wantsLabel: true, input: { into: { kind: "new-bag" } } }));
		await page.outcomeOf("a", 1000);
		expect(await page.labelsLeft("a")).toEqual(["12-0201-B"]);
		const print = (await page.kept()).done[0]?.print;
		expect(page.asked.find(({ url }) => url === "/api/print")?.body.deed).toBe(print);
		expect(print).toMatch(/^[0-9a-f-]{36}$/);
	});

	it("says it in words when the phone's storage is full, and goes on when there is room", async () => {
		vi.useFakeTimers();
		try {
			vi.spyOn(console, "error").mockImplementation(() => undefined);
			const page = await openedPage(async () => done());
			const store = await page.phone();
			const full = vi.spyOn(store, "saySent").mockRejectedValueOnce(new Error("QuotaExceededError"));
			await page.queue(item("a"));
			const outcome = await page.outcomeOf("a", 1000);
			expect(outcome).toMatchObject({ kind: "waits", say: expect.stringContaining("storage may be full") });
			await vi.advanceTimersByTimeAsync(3000);
			expect((await page.outcomeOf("a", 1000)).kind).toBe("done");
			expect(full).toHaveBeenCalledTimes(2);
		} finally {
			vi.useRealTimers();
		}
	});

	it("tries anew, with what has come since, only what the shop refused", async () => {
		let answers = [refusal("bag-closed"), done()];
		const page = await openedPage(async ({ url }) =>
			url.startsWith("/api/upload") ? done({ captureId: "c1" }) : (answers.shift() ?? done()),
		);
		await page.queue(item("a", { photos: ["p"] }));
		await vi.waitFor(async () => expect((await page.kept()).waiting[0]?.refused?.code).toBe("bag-closed"));
		await page.queue(item("p", { kind: "photo", input: {}, file: { type: "image/jpeg", name: "p.jpg" } }), new ArrayBuffer(3));
		expect((await page.outcomeOf("p", 1000)).kind).toBe("done");
		await page.tryAgain("a");
		expect((await page.outcomeOf("a", 1000)).kind).toBe("done");
		expect(page.asked.filter(({ url }) => url === "/api/deeds").map(({ body }) => body.captureIds)).toEqual([undefined, ["c1"]]);
		answers = [];
	});
});

describe("the shop's clock on a phone", () => {
	it("is the phone's less what that is ahead, and is taken anew only when one of them was set", async () => {
		vi.resetModules();
		const { hearShopTime, shopTime } = await import("@/app/outbox/shopTime");
		const at = (millis: number) => new Date(millis).toISOString();
		expect(shopTime(1_000_000)).toBe(at(1_000_000));
		hearShopTime(at(400_000), 1_000_000);
		expect(shopTime(1_000_000)).toBe(at(400_000));
		// Heard a little late: no two deeds change places for that.
		hearShopTime(at(500_000), 1_102_000);
		expect(shopTime(1_102_000)).toBe(at(502_000));
		hearShopTime(at(600_000), 700_000);
		expect(shopTime(700_000)).toBe(at(600_000));
		hearShopTime("no time");
		hearShopTime(null);
		expect(shopTime(700_000)).toBe(at(600_000));
	});
});
