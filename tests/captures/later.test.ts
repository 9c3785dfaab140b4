import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { addCapture, fileUnder, sayLater, sayWords, withdrawCapture, withdrawSeveral } from "@/lib/captures/changes";
import { laterCounted, laterPage } from "@/lib/captures/laterQueries";
import { offersNear } from "@/lib/captures/nearInTime";
import { captureById } from "@/lib/captures/queries";
import { readShows, writeShows } from "@/lib/captures/shows";
import { instant } from "@/lib/core/instants";
import { historyOf } from "@/lib/ledger/historyQueries";
import { add } from "@/lib/ledger/rows";
import { verifyLedger } from "@/lib/ledger/verify";
import { formatTag } from "@/lib/tags/tag";
import { type LampShop, lampShop } from "@/tests/ledger/lampShop";

let shop: LampShop;
beforeEach(async () => {
	shop = await lampShop();
	shop.setClock("2026-03-02T09:00:00.000Z");
});
afterEach(async () => {
	expect(await verifyLedger(shop.folder)).toMatchObject({ flaws: [] });
	await shop.close();
});

function must<T>(done: { ok: true; value: T } | { ok: false; error: { say: string } }): T {
	if (!done.ok) throw new Error(done.error.say);
	return done.value;
}
/** A scanned tag: a capture that needs no file. */
const scan = async (more: Partial<Parameters<typeof addCapture>[0]> = {}) =>
	must(await addCapture({ machineId: shop.machine, kind: "tag", tag: "12-0147-K", file: null, ...more }, shop.env())).captureId;
const page = async (of = {}, take = 20, after?: string) =>
	(await laterPage(shop.store.read, of, { take, ...(after ? { after } : {}) })).captures;
const sentences = async (take: number) => (await historyOf(shop.store.read, shop.machine, { take })).entries.map(({ say }) => say);

describe("captures that wait for their words", () => {
	it("are photos and scanned tags alike, the oldest first, each with who took it and what its tag hangs on", async () => {
		const second = await scan({ takenAt: "2026-03-02T08:40:00.000Z" });
		const first = await scan({ takenAt: "2026-03-02T08:30:00.000Z", tag: formatTag(12, 777), machineId: null });
		await scan({ words: "Has its words" });
		expect(await page()).toMatchObject([
			{ id: first, by: "Tester", tagOf: null, machine: null },
			{ id: second, by: "Tester", tagOf: "Lens carriage", machine: { number: 12 } },
		]);
		expect(await laterCounted(shop.store.read, {})).toBe(2);
		expect((await page({ machineId: shop.machine })).map(({ id }) => id)).toEqual([second]);
	});

	it("come in pages, none twice and none left out, even when the last of a page has its words by now", async () => {
		const ids: string[] = [];
		for (let at = 0; at < 5; at++) ids.push(await scan({ takenAt: `2026-03-02T08:0${at}:00.000Z` }));
		const first = (await page({}, 2)).map(({ id }) => id);
		must(await sayLater({ captureIds: [ids[1] ?? ""], words: "The lamp" }, shop.env()));
		const second = (await page({}, 2, first.at(-1))).map(({ id }) => id);
		const third = (await page({}, 2, second.at(-1))).map(({ id }) => id);
		expect([...first, ...second, ...third]).toEqual(ids);
	});

	it("are of whoever took them, whoever filed them under a machine since", async () => {
		const id = await scan({ machineId: null });
		const other = shop.newId();
		await shop.write([
			{
				machine: null,
				action: "person.added",
				subject: { table: "Person", id: other },
				facts: { say: "Added a person." },
				rows: [add("Person", { id: other, name: "Second", initials: "S", skills: "", state: "here" })],
			},
		]);
		must(await fileUnder({ captureIds: [id], machineId: shop.machine }, { ...shop.env(), actor: other }));
		expect(await page()).toMatchObject([{ id, by: "Tester", machine: { number: 12 } }]);
	});

	it("are offered the part that came out next to them and the step that ran then", async () => {
		const step = shop.newId();
		await shop.write([
			{
				machine: shop.machine,
				action: "step.planned",
				subject: { table: "Step", id: step },
				facts: { say: "Planned and began a step." },
				rows: [
					add("Step", {
						id: step,
						machineId: shop.machine,
						number: 4,
						kind: "takeout",
						title: "Open the door",
						state: "doing",
						lowMinutes: 5,
						likelyMinutes: 10,
						highMinutes: 20,
						waitMinutes: 0,
						waitLowMinutes: null,
						waitHighMinutes: null,
						waitWhy: "",
						addedWhy: "",
						words: "",
						caution: "",
						skill: null,
						conversionId: null,
						positionId: null,
						partId: null,
						startedAt: "2026-03-02T09:00:00.000Z",
						doneAt: null,
					}),
					add("Work", {
						id: shop.newId(),
						machineId: shop.machine,
						stepId: step,
						personId: shop.person,
						startedAt: "2026-03-02T09:00:00.000Z",
						endedAt: "2026-03-02T09:20:00.000Z",
						minutes: 20,
						how: "timed",
						note: "",
					}),
				],
			},
		]);
		shop.setClock("2026-03-02T09:30:00.000Z");
		await shop.takeOutLamp();
		shop.setClock("2026-03-02T18:00:00.000Z");
		await scan({ takenAt: "2026-03-02T09:10:00.000Z" });
		await scan({ takenAt: "2026-03-02T09:40:00.000Z" });
		await scan({ takenAt: "2026-03-02T17:00:00.000Z" });
		const offers = (await page()).map((capture) => capture.offers.map(({ label }) => label));
		expect(offers).toEqual([
			[expect.stringMatching(/^Lens carriage of the Coin door lamp \(k02\), out 2\d min later$/), "step 4 Open the door, under way then"],
			[expect.stringMatching(/^Lens carriage of the Coin door lamp \(k02\), out \d+ min before$/)],
			[],
		]);
	});
});

describe("words said in the evening", () => {
	it("are kept for several at once, with both times, and with an entry for each", async () => {
		const ids = [await scan({ takenAt: "2026-03-02T08:30:00.000Z", bagId: shop.bag }), await scan({ takenAt: "2026-03-02T08:31:00.000Z" })];
		shop.setClock("2026-03-02T19:00:00.000Z");
		const shows = writeShows({ positionId: shop.lampSeat, partId: shop.lamp });
		expect(must(await sayLater({ captureIds: ids, words: "Scorched.", shows }, shop.env()))).toEqual({ count: 2 });
		expect(await captureById(shop.store.read, ids[0] ?? "")).toMatchObject({
			takenAt: "2026-03-02T08:30:00.000Z",
			wordsAt: "2026-03-02T19:01:00.000Z",
			words: "Scorched.",
			position: { mark: "k02" },
			part: { tag: "12-0147-K" },
			bag: { tag: "12-0201-J" },
		});
		expect(await sentences(2)).toEqual([
			"Said what a scanned tag of Lens carriage (12-0147-K), Coin door lamp (k02) shows: Scorched.",
			"Said what a scanned tag of Lens carriage (12-0147-K), Coin door lamp (k02), bag 12-0201-J shows: Scorched.",
		]);
		expect(await page()).toEqual([]);
	});

	it("do not go over what somebody else said meanwhile: all of them, or none", async () => {
		const [one, two] = [await scan(), await scan()];
		must(await sayWords({ captureId: two, words: "Said by another" }, shop.env()));
		expect(await sayLater({ captureIds: [one, two], words: "Both" }, shop.env())).toMatchObject({
			ok: false,
			error: { code: "has-words", say: "Somebody said meanwhile what it shows: Said by another. Load the page again." },
		});
		expect((await page()).map(({ id }) => id)).toEqual([one]);
	});

	it("are refused where they are empty, of a withdrawn one, or show what is not there", async () => {
		const id = await scan();
		const say = (more: object) => sayLater({ captureIds: [id], words: "x", ...more }, shop.env());
		expect(await say({ words: " " })).toMatchObject({ error: { fields: { words: "Write what it shows." } } });
		expect(await say({ captureIds: [] })).toMatchObject({ error: { code: "unreadable" } });
		expect(await say({ shows: "shelf=1" })).toMatchObject({ error: { fields: { shows: "Choose from the list." } } });
		expect(await say({ shows: `positionId=${shop.newId()}` })).toMatchObject({
			error: { code: "no-position", fields: { shows: "Choose another." } },
		});
		const stray = await scan({ machineId: null });
		expect(await say({ captureIds: [stray], shows: `positionId=${shop.lampSeat}` })).toMatchObject({
			error: { code: "of-another-machine", fields: { shows: expect.any(String) } },
		});
		must(await withdrawCapture({ captureId: id, why: "Nothing" }, shop.env()));
		expect(await say({})).toMatchObject({ error: { code: "capture-withdrawn" } });
	});
});

it("a capture of no machine is filed under one, once, and is then in that machine's history", async () => {
	const id = await scan({ machineId: null });
	expect(await fileUnder({ captureIds: [id], machineId: shop.newId() }, shop.env())).toMatchObject({
		error: { code: "no-machine", fields: { machineId: "Choose another." } },
	});
	must(await fileUnder({ captureIds: [id], machineId: shop.machine }, shop.env()));
	expect(await sentences(1)).toEqual(["Filed a scanned tag under machine 12."]);
	expect(await fileUnder({ captureIds: [id], machineId: shop.machine }, shop.env())).toMatchObject({ error: { code: "has-machine" } });
});

it("what shows nothing is withdrawn together, for one reason, and stays in the book", async () => {
	const ids = [await scan(), await scan()];
	expect(must(await withdrawSeveral({ captureIds: ids, why: "Shows the floor." }, shop.env()))).toEqual({ count: 2 });
	expect(await page()).toEqual([]);
	expect(await sentences(1)).toEqual(["Withdrew a scanned tag: Shows the floor."]);
	expect(await captureById(shop.store.read, ids[0] ?? "")).toMatchObject({ stands: "no" });
});

describe("what is offered", () => {
	const out = (at: string, mark: string) => ({
		at: instant(at),
		positionId: mark,
		mark,
		position: "Drive motor",
		partId: `part ${mark}`,
		part: "Drive motor",
	});
	it("is the nearer take-out first, and none of another part of the day", () => {
		const at = instant("2026-03-02T12:00:00.000Z");
		const offers = offersNear(
			at,
			[],
			[out("2026-03-02T11:30:00.000Z", "k01"), out("2026-03-02T12:10:00.000Z", "k02"), out("2026-03-02T16:01:00.000Z", "k03")],
		);
		expect(offers).toEqual([
			{ value: "positionId=k02&partId=part k02", label: "Drive motor (k02), out 10 min later" },
			{ value: "positionId=k01&partId=part k01", label: "Drive motor (k01), out 30 min before" },
		]);
		expect(offersNear(at, [], [out("2026-03-02T12:00:20.000Z", "k04")])[0]?.label).toBe("Drive motor (k04), out then");
	});

	it("reads as it was written, and nothing else is read", () => {
		expect(readShows(writeShows({ positionId: "a", stepId: "b" }))).toEqual({ positionId: "a", stepId: "b" });
		expect(readShows("")).toEqual({});
		for (const text of ["positionId=", "words=x", "positionId=a&positionId=b", "positionId", "positionId=a=b"])
			expect(readShows(text)).toBeNull();
	});
});
