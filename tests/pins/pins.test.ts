import { Readable } from "node:stream";
import sharp from "sharp";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { addCapture, withdrawCapture } from "@/lib/captures/changes";
import { keepFile } from "@/lib/files/keepFile";
import { smallPicture } from "@/lib/files/smallPicture";
import { historyOf } from "@/lib/ledger/historyQueries";
import { add, change } from "@/lib/ledger/rows";
import { verifyLedger } from "@/lib/ledger/verify";
import { addPin, changePin, takeOffPin } from "@/lib/pins/changes";
import { thingChoices } from "@/lib/pins/choices";
import { photosPinnedAt, photosPinnedOf, photosWithPins, pinsOf } from "@/lib/pins/queries";
import { aFitting, aPart, type LampShop, lampShop } from "@/tests/ledger/lampShop";

let shop: LampShop;
let photo: string;
const TAKEN = "2026-03-02T08:10:00.000Z";

beforeEach(async () => {
	shop = await lampShop();
	shop.setClock("2026-03-02T09:00:00.000Z");
	photo = await aPhoto();
});
afterEach(async () => {
	expect(await verifyLedger(shop.folder)).toMatchObject({ flaws: [] });
	await shop.close();
});

async function aPhoto(takenAt = TAKEN, machineId: string | null = shop.machine) {
	const bytes = await sharp({ create: { width: 8, height: 8, channels: 3, background: "#888" } })
		.jpeg()
		.toBuffer();
	const file = must(await keepFile(shop.folder, { body: Readable.from([bytes]), name: "a.jpg", announced: bytes.length }));
	return must(await addCapture({ machineId, kind: "photo", file, takenAt }, shop.env())).captureId;
}
function must<T>(done: { ok: true; value: T } | { ok: false; error: { say: string } }): T {
	if (!done.ok) throw new Error(done.error.say);
	return done.value;
}
const at = (x: number, y: number) => ({ captureId: photo, x, y });
const onLamp = () => ({ thing: `position:${shop.lampSeat}` });
const pins = (of = photo, takenAt = TAKEN) => pinsOf(shop.store.read, { id: of, takenAt }, "Europe/Amsterdam");
const lastSentence = async () => (await historyOf(shop.store.read, shop.machine, { take: 1 })).entries[0]?.say;

/** A wire and three screws at the lamp. */
async function wired() {
	const [wire, fixing] = [shop.newId(), shop.newId()];
	await shop.write([
		{
			machine: shop.machine,
			action: "fitting.described",
			subject: { table: "Fitting", id: shop.lampFitting },
			facts: { say: "Described the lamp." },
			rows: [
				add("Connection", {
					id: wire,
					machineId: shop.machine,
					fittingId: shop.lampFitting,
					from: "lamp",
					to: "block 7",
					colour: "BK",
					base: "",
					tracer: "",
					gauge: "",
					tagFrom: "",
					tagTo: "",
					state: "connected",
					note: "",
					conversionId: null,
				}),
				add("Fixing", {
					id: fixing,
					machineId: shop.machine,
					count: 3,
					thread: "4BA",
					length: "1/2",
					head: "cheese",
					drive: "slotted",
					tightness: "",
					differs: "",
					note: "",
					place: "home",
					bagId: null,
				}),
				add("Hold", { id: shop.newId(), fixingId: fixing, fittingId: shop.lampFitting }),
			],
		},
	]);
	return { wire, fixing };
}

describe("pins on a photo", () => {
	it("mark a position with what is in it, a wire, a fixing, or what their words say", async () => {
		const { wire, fixing } = await wired();
		must(await addPin({ ...at(1250, 4000), ...onLamp() }, shop.env()));
		must(await addPin({ ...at(2000, 4000), thing: `wire:${wire}` }, shop.env()));
		must(await addPin({ ...at(3000, 4000), thing: `fixing:${fixing}`, words: "the longest at the top" }, shop.env()));
		must(await addPin({ ...at(4000, 4000), words: "A pencil mark" }, shop.env()));
		expect(await pins()).toMatchObject([
			{ number: 1, x: 1250, y: 4000, name: "Coin door lamp", mark: "k02", tag: "12-0147-K", opens: "12-0147-K", now: "in its place" },
			{ number: 2, name: "BK from lamp to block 7", mark: "k02", now: "connected at the Coin door lamp" },
			{ number: 3, name: "3 x 4BA x 1/2, cheese slotted", mark: "k02", words: "the longest at the top" },
			{ number: 4, name: "A pencil mark", mark: null, opens: null, gone: false },
		]);
		expect(await lastSentence()).toBe("Put pin 4 on a photo: A pencil mark.");
	});

	it("put on by two phones at once both stay, each with a number of its own", async () => {
		const both = await Promise.all([
			addPin({ ...at(1000, 1000), words: "left phone" }, shop.env()),
			addPin({ ...at(2000, 2000), words: "right phone" }, shop.env()),
		]);
		expect(both.map((done) => done.ok)).toEqual([true, true]);
		expect((await pins()).map(({ number, words }) => `${number} ${words}`).sort()).toEqual(["1 left phone", "2 right phone"]);
	});

	it("keep their number when they are moved or said anew, and it is not given out again when they come off", async () => {
		const one = must(await addPin({ ...at(1000, 1000), words: "one" }, shop.env()));
		const two = must(await addPin({ ...at(2000, 2000), words: "two" }, shop.env()));
		must(await changePin({ pinId: two.pinId, x: 2500, y: 2000, words: "second" }, shop.env()));
		expect(await lastSentence()).toBe("Pin 2 of a photo: second, moved to 25 % from the left, 20 % from the top.");
		must(await takeOffPin({ pinId: two.pinId, why: "Wrong side." }, shop.env()));
		expect(await lastSentence()).toBe("Took pin 2 off a photo: Wrong side.");
		expect(must(await addPin({ ...at(0, 10_000), words: "three" }, shop.env())).number).toBe(3);
		expect((await pins()).map(({ id, number }) => [id === one.pinId, number])).toEqual([
			[true, 1],
			[false, 3],
		]);
	});

	it("moved on one page and renamed on another are both: and where both moved it, the second is told", async () => {
		const { pinId } = must(await addPin({ ...at(1000, 1000), words: "bulb" }, shop.env()));
		const seen = { seen: (await shop.store.read.pin.findUniqueOrThrow({ where: { id: pinId } })).entry, told: null };
		must(await changePin({ pinId, x: 1500, y: 1000, words: "bulb" }, { ...shop.env(), seen }));
		must(await changePin({ pinId, x: 1000, y: 1000, words: "bulb, blue" }, { ...shop.env(), seen }));
		expect(await pins()).toMatchObject([{ x: 1500, words: "bulb, blue" }]);
		expect(await changePin({ pinId, x: 9000, y: 1000, words: "bulb" }, { ...shop.env(), seen })).toMatchObject({
			ok: false,
			error: { fields: { x: expect.any(String) } },
		});
	});

	it("are refused outside the picture, of another machine's things, on what was withdrawn, and once they are off", async () => {
		for (const [x, y] of [
			[-1, 0],
			[10_001, 0],
			[0.5, 0],
		] as const)
			expect(await addPin({ ...at(x, y), words: "x" }, shop.env())).toMatchObject({ ok: false, error: { code: "unreadable" } });
		expect(await addPin({ ...at(1, 1), thing: `position:${shop.newId()}` }, shop.env())).toMatchObject({ error: { code: "no-thing" } });
		expect(await addPin({ ...at(1, 1) }, shop.env())).toMatchObject({ error: { code: "says-nothing" } });
		const stray = await aPhoto(TAKEN, null);
		expect(await addPin({ ...at(1, 1), captureId: stray, words: "x" }, shop.env())).toMatchObject({ error: { code: "no-machine" } });
		const { pinId } = must(await addPin({ ...at(1, 1), words: "x" }, shop.env()));
		must(await withdrawCapture({ captureId: photo, why: "Blurred" }, shop.env()));
		expect(await addPin({ ...at(1, 1), words: "x" }, shop.env())).toMatchObject({ error: { code: "capture-withdrawn" } });
		expect(await changePin({ pinId, x: 2, y: 2, words: "x" }, shop.env())).toMatchObject({ error: { code: "capture-withdrawn" } });
		must(await takeOffPin({ pinId, why: "Blurred" }, shop.env()));
		expect(await takeOffPin({ pinId, why: "Blurred" }, shop.env())).toMatchObject({ error: { code: "pin-off" } });
	});
});

describe("a photo with pins as a way into the machine", () => {
	it("says of a part that came out since where it is, and opens its place", async () => {
		must(await addPin({ ...at(1000, 1000), ...onLamp() }, shop.env()));
		await shop.takeOutLamp();
		expect(await pins()).toMatchObject([
			{ tag: "12-0147-K", part: "Lens carriage", opens: null, gone: true, now: "in 12-0201-J · on the bench; its place is empty" },
		]);
	});

	it("says that a wire was replaced, a fixing lost, and a place carried away with its assembly", async () => {
		const { wire, fixing } = await wired();
		must(await addPin({ ...at(1, 1), thing: `wire:${wire}` }, shop.env()));
		must(await addPin({ ...at(2, 2), thing: `fixing:${fixing}` }, shop.env()));
		must(await addPin({ ...at(3, 3), ...onLamp() }, shop.env()));
		const { read } = shop.store;
		await shop.write([
			{
				machine: shop.machine,
				action: "part.taken-out",
				subject: { table: "Part", id: shop.door },
				facts: { say: "Took out the door." },
				rows: [
					change("Connection", await read.connection.findUniqueOrThrow({ where: { id: wire } }), { state: "removed" }),
					change("Fixing", await read.fixing.findUniqueOrThrow({ where: { id: fixing } }), { place: "lost" }),
					change("Part", await read.part.findUniqueOrThrow({ where: { id: shop.door } }), { place: "bench", positionId: null }),
					change("Fitting", await read.fitting.findUniqueOrThrow({ where: { id: shop.doorFitting } }), { untilAt: shop.now() }),
				],
			},
		]);
		const onDoor = "; its place is on the Door, on the bench, not put away";
		expect((await pins()).map(({ now, gone }) => [now, gone])).toEqual([
			[`removed from the Coin door lamp${onDoor}`, true],
			[`lost${onDoor}`, true],
			[`in its place${onDoor}`, true],
		]);
	});

	it("is found from the machine, the position and the part, the newest first, with the pins that are meant", async () => {
		const { wire } = await wired();
		const first = must(await addPin({ ...at(1, 1), ...onLamp() }, shop.env()));
		must(await addPin({ ...at(2, 2), words: "something else" }, shop.env()));
		const second = await aPhoto("2026-03-02T08:30:00.000Z");
		must(await addPin({ captureId: second, x: 5, y: 5, thing: `wire:${wire}` }, shop.env()));
		const { read } = shop.store;
		expect((await photosWithPins(read, shop.machine, { take: 9 })).map(({ id, pins: all }) => [id, all.length])).toEqual([
			[second, 1],
			[photo, 2],
		]);
		for (const found of [await photosPinnedAt(read, shop.lampSeat, 9), await photosPinnedOf(read, shop.lamp, 9)]) {
			expect(found.map(({ id, pins: own }) => [id, own.map(({ number }) => number)])).toEqual([
				[second, [1]],
				[photo, [1]],
			]);
		}
		expect(await photosPinnedAt(read, shop.doorSeat, 9)).toEqual([]);
		must(await takeOffPin({ pinId: first.pinId, why: "Wrong" }, shop.env()));
		must(await withdrawCapture({ captureId: second, why: "Blurred" }, shop.env()));
		expect(await photosPinnedAt(read, shop.lampSeat, 9)).toEqual([]);
	});

	it("of before or after the part was there does not show the part", async () => {
		const early = await aPhoto("2026-03-01T08:00:00.000Z");
		must(await addPin({ captureId: early, x: 1, y: 1, ...onLamp() }, shop.env()));
		await shop.takeOutLamp();
		shop.setClock("2026-03-05T08:00:00.000Z");
		const late = await aPhoto("2026-03-04T08:00:00.000Z");
		must(await addPin({ captureId: late, x: 1, y: 1, ...onLamp() }, shop.env()));
		expect(await photosPinnedOf(shop.store.read, shop.lamp, 9)).toEqual([]);
		expect(await photosPinnedAt(shop.store.read, shop.lampSeat, 9)).toHaveLength(2);
	});

	it("of the moment at which one part came out and another went in shows the one that came out; of when it was empty, none", async () => {
		await shop.takeOutLamp();
		const { untilAt } = await shop.store.read.fitting.findUniqueOrThrow({ where: { id: shop.lampFitting } });
		const [swap, led, empty] = [untilAt ?? "", shop.newId(), "2026-03-02T12:00:00.000Z"];
		const putIn = (fromAt: string, id: string) => ({ ...aFitting(id, shop.machine, led, shop.lampSeat), fromAt });
		const first = shop.newId();
		await shop.write([
			{
				machine: shop.machine,
				action: "part.put-in",
				subject: { table: "Part", id: led },
				facts: { say: "Put in the LED lamp, took it out again at ten, and put it in at two." },
				rows: [
					add("Part", aPart(led, shop.machine, "LED lamp", { place: "fitted", positionId: shop.lampSeat })),
					add("Fitting", { ...putIn(swap, first), untilAt: "2026-03-02T10:00:00.000Z" }),
					add("Fitting", putIn("2026-03-02T14:00:00.000Z", shop.newId())),
				],
			},
		]);
		shop.setClock("2026-03-05T08:00:00.000Z");
		const [ofSwap, ofEmpty] = [await aPhoto(swap), await aPhoto(empty)];
		for (const captureId of [ofSwap, ofEmpty]) must(await addPin({ captureId, x: 1, y: 1, ...onLamp() }, shop.env()));
		const { read } = shop.store;
		expect((await pins(ofSwap, swap)).map(({ part }) => part)).toEqual(["Lens carriage"]);
		expect((await photosPinnedOf(read, shop.lamp, 9)).map(({ id }) => id)).toEqual([ofSwap]);
		expect(await photosPinnedOf(read, led, 9)).toEqual([]);
		expect(await pins(ofEmpty, empty)).toMatchObject([{ part: null, now: "empty then; in its place now: LED lamp" }]);
	});
});

it("offers what the photo is of first, with what sits on it", async () => {
	await wired();
	const groups = await thingChoices(shop.store.read, shop.machine, { positionId: null, partId: shop.door });
	expect(groups.map(({ label, options }) => [label, options.map((option) => option.label)])).toEqual([
		[
			"What the photo is of",
			[
				"k01 Coin door: Door 12-0001-H",
				"k02 Coin door lamp: Lens carriage 12-0147-K",
				"k02 wire BK from lamp to block 7",
				"k02 3 x 4BA x 1/2, cheese slotted",
			],
		],
	]);
	expect((await thingChoices(shop.store.read, shop.machine, { positionId: null, partId: null })).map(({ label }) => label)).toEqual([
		"Positions",
		"Wires",
		"Fixings",
	]);
});

it("a picture that the camera marked as turned is shown upright, so that a pin's place is of what is seen", async () => {
	// 40 wide, 20 high, with a white stripe at its left edge; orientation 6: the camera was held a quarter turn clockwise.
	const stripe = await sharp({ create: { width: 8, height: 20, channels: 3, background: "#fff" } })
		.png()
		.toBuffer();
	const bytes = await sharp({ create: { width: 40, height: 20, channels: 3, background: "#000" } })
		.composite([{ input: stripe, left: 0, top: 0 }])
		.jpeg()
		.withMetadata({ orientation: 6 })
		.toBuffer();
	const file = must(await keepFile(shop.folder, { body: Readable.from([bytes]), name: "turned.jpg", announced: bytes.length }));
	const small = await smallPicture(shop.folder, file.sha);
	const { data, info } = await sharp(small).greyscale().raw().toBuffer({ resolveWithObject: true });
	expect([info.width, info.height]).toEqual([20, 40]);
	const shade = (x: number, y: number) => data[y * info.width + x] ?? -1;
	expect(shade(10, 2)).toBeGreaterThan(200);
	expect(shade(10, 30)).toBeLessThan(50);
});
