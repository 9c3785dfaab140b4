import { Readable } from "node:stream";
import sharp from "sharp";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { addCapture, sayWords, withdrawCapture } from "@/lib/captures/changes";
import { laterPage } from "@/lib/captures/laterQueries";
import { captureById, capturesCounted, papersOf, photosOf } from "@/lib/captures/queries";
import { addDigitalItem } from "@/lib/digital/changes";
import { digitalItemsOf } from "@/lib/digital/queries";
import { registerFile } from "@/lib/files/changes";
import { type KeptFile, keepFile } from "@/lib/files/keepFile";
import { historyOf } from "@/lib/ledger/historyQueries";
import { verifyLedger } from "@/lib/ledger/verify";
import { type LampShop, lampShop } from "@/tests/ledger/lampShop";

let shop: LampShop;
beforeEach(async () => {
	shop = await lampShop();
});
afterEach(async () => {
	expect(await verifyLedger(shop.folder, { files: true })).toMatchObject({ flaws: [] });
	await shop.close();
});

async function kept(bytes: Buffer, name: string, anyType = false): Promise<KeptFile> {
	const file = await keepFile(shop.folder, { body: Readable.from([bytes]), name, announced: bytes.length, anyType });
	if (!file.ok) throw new Error(file.error.say);
	return file.value;
}
const aPhoto = async (shade = 100) =>
	kept(
		await sharp({ create: { width: 8, height: 8, channels: 3, background: { r: shade, g: 0, b: 0 } } })
			.jpeg()
			.toBuffer(),
		"IMG_1.jpg",
	);
const photo = async (more: Partial<Parameters<typeof addCapture>[0]> = {}, deed?: string) =>
	addCapture({ machineId: shop.machine, kind: "photo", file: await aPhoto(), ...more }, shop.env(deed));
const need = <T>(result: { ok: true; value: T } | { ok: false; error: { say: string } }): T => {
	if (!result.ok) throw new Error(result.error.say);
	return result.value;
};
const waiting = async () => (await laterPage(shop.store.read, { machineId: shop.machine }, { take: 10 })).captures;
const lastSentence = async () => (await historyOf(shop.store.read, shop.machine, { take: 1 })).entries[0]?.say;

describe("a photo", () => {
	it("is kept with its file, what it shows and when it was taken, in one deed", async () => {
		const { captureId, sha } = need(
			await photo({ positionId: shop.lampSeat, partId: shop.lamp, takenAt: "2026-03-01T10:00:00.000Z", words: "Scorched at the top." }),
		);
		expect(await photosOf(shop.store.read, { positionId: shop.lampSeat }, { take: 10 })).toMatchObject([
			{
				id: captureId,
				kind: "photo",
				takenAt: "2026-03-01T10:00:00.000Z",
				words: "Scorched at the top.",
				file: { id: sha, mediaType: "image/jpeg", name: "IMG_1.jpg" },
				position: { mark: "k02" },
				part: { name: "Lens carriage", tag: "12-0147-K" },
			},
		]);
		expect(await lastSentence()).toBe("Took a photo of Lens carriage (12-0147-K), Coin door lamp (k02): Scorched at the top.");
	});

	it("sent again with the same deed is kept once", async () => {
		const deed = shop.newId();
		const first = need(await photo({}, deed));
		expect(need(await photo({}, deed))).toEqual(first);
		expect(await photosOf(shop.store.read, { machineId: shop.machine }, { take: 10 })).toHaveLength(1);
	});

	it("of the same bytes twice is two photos of one file", async () => {
		need(await photo());
		need(await photo({ partId: shop.door }));
		expect(await shop.store.read.storedFile.count()).toBe(1);
		expect(await photosOf(shop.store.read, { machineId: shop.machine }, { take: 10 })).toHaveLength(2);
	});

	it("by a phone whose clock is ahead was taken now, not later", async () => {
		const { captureId } = need(await photo({ takenAt: "2036-01-01T00:00:00.000Z" }));
		expect((await captureById(shop.store.read, captureId))?.takenAt).toBe(shop.now());
	});

	it("waits for its words, and keeps both times when they come", async () => {
		const { captureId } = need(await photo({ takenAt: "2026-03-01T10:00:00.000Z" }));
		expect((await waiting()).map(({ id }) => id)).toEqual([captureId]);
		expect(await capturesCounted(shop.store.read, shop.machine)).toEqual({ photos: 1, papers: 0, withoutWords: 1 });
		shop.setClock("2026-03-05T17:00:00.000Z");
		need(await sayWords({ captureId, words: "The lamp before cleaning", partId: shop.lamp }, shop.env()));
		expect(await captureById(shop.store.read, captureId)).toMatchObject({
			takenAt: "2026-03-01T10:00:00.000Z",
			wordsAt: "2026-03-05T17:01:00.000Z",
			words: "The lamp before cleaning",
			part: { id: shop.lamp },
		});
		expect(await waiting()).toEqual([]);
	});

	it("comes in pages, newest first, none twice", async () => {
		for (let at = 0; at < 5; at++) need(await photo({ file: await aPhoto(at), takenAt: `2026-03-01T10:0${at}:00.000Z` }));
		const first = await photosOf(shop.store.read, { machineId: shop.machine }, { take: 3 });
		const second = await photosOf(shop.store.read, { machineId: shop.machine }, { take: 3, after: first.at(-1)?.id ?? "" });
		expect([...first, ...second].map(({ takenAt }) => takenAt.slice(14, 16))).toEqual(["04", "03", "02", "01", "00"]);
	});

	it("that is withdrawn leaves the lists, and stays in the book with the reason", async () => {
		const { captureId } = need(await photo());
		need(await withdrawCapture({ captureId, why: "Shows another machine" }, shop.env()));
		expect(await photosOf(shop.store.read, { machineId: shop.machine }, { take: 10 })).toEqual([]);
		expect(await captureById(shop.store.read, captureId)).toMatchObject({ stands: "no", file: { name: "IMG_1.jpg" } });
		expect(await lastSentence()).toBe("Withdrew a photo: Shows another machine.");
	});
});

describe("a capture is refused", () => {
	it.each([
		["as a photo when it is a document", async () => ({ file: await kept(Buffer.from("a letter"), "letter.txt") }), "not-a-picture"],
		["without a picture", async () => ({ file: null }), "no-file"],
		["of a machine that is not known", async () => ({ machineId: shop.newId() }), "no-machine"],
		["of a position that is not known", async () => ({ positionId: shop.newId() }), "no-position"],
		[
			"under another machine than the position that it shows",
			async () => ({ machineId: null, positionId: shop.lampSeat }),
			"of-another-machine",
		],
		["when its file never arrived", async () => ({ file: { ...(await aPhoto()), sha: "b".repeat(64) } }), "file-not-here"],
		["as a tag that was not read", async () => ({ kind: "tag" as const, file: null }), "no-tag"],
		["with a tag whose check character is wrong", async () => ({ kind: "tag" as const, file: null, tag: "12-0147-L" }), "unreadable"],
	])("%s", async (_, more, code) => {
		expect(await photo(await more())).toMatchObject({ ok: false, error: { code } });
		expect(await shop.store.read.capture.count()).toBe(0);
	});

	it("when it was withdrawn already, or has no reason to be", async () => {
		const { captureId } = need(await photo());
		expect(await withdrawCapture({ captureId, why: " " }, shop.env())).toMatchObject({ ok: false, error: { code: "unreadable" } });
		need(await withdrawCapture({ captureId, why: "Blurred" }, shop.env()));
		expect(await withdrawCapture({ captureId, why: "Blurred" }, shop.env())).toMatchObject({
			ok: false,
			error: { code: "capture-withdrawn" },
		});
		expect(await sayWords({ captureId, words: "x" }, shop.env())).toMatchObject({ ok: false, error: { code: "capture-withdrawn" } });
	});
});

it("a scanned tag is a capture without a file", async () => {
	need(await photo({ kind: "tag", file: null, tag: "12-0147-K", bagId: shop.bag }));
	expect(await lastSentence()).toBe("Scanned a tag 12-0147-K at bag 12-0201-J.");
});

it("a paper is listed apart from the photos", async () => {
	need(await photo({ kind: "paper", file: await kept(Buffer.from("Sold as seen.\n"), "bill.txt"), words: "The bill of sale" }));
	expect(await photosOf(shop.store.read, { machineId: shop.machine }, { take: 10 })).toEqual([]);
	expect(await papersOf(shop.store.read, { machineId: shop.machine }, { take: 10 })).toMatchObject([{ file: { mediaType: "text/plain" } }]);
	expect(await lastSentence()).toBe("Kept a paper bill.txt: The bill of sale.");
});

describe("a digital item", () => {
	const form = async () => {
		const file = await kept(Buffer.from([1, 2, 3, 0xff]), "lamp.bin", true);
		need(await registerFile({ file, machineId: shop.machine }, shop.env()));
		return {
			machineId: shop.machine,
			partId: shop.lamp,
			name: "Lamp program",
			version: "1.0",
			fileSha: file.sha,
			pins: "D2: lamp",
			loading: "By the six-pin header",
		};
	};

	it("is kept with the device that needs it, its version, its digest, its pins and how to load it", async () => {
		const input = await form();
		need(await addDigitalItem(input, shop.env()));
		expect(await digitalItemsOf(shop.store.read, shop.machine, 10)).toMatchObject([
			{
				name: "Lamp program",
				version: "1.0",
				pins: "D2: lamp",
				file: { id: input.fileSha, mediaType: "application/octet-stream" },
				part: { id: shop.lamp },
			},
		]);
		expect(await lastSentence()).toBe("Kept Lamp program, version 1.0, for the Lens carriage (12-0147-K).");
	});

	it.each([
		["without a word on how it is loaded", { loading: " " }, "unreadable"],
		["for a device that is not in the machine", { partId: "00000000-0000-7000-8000-999999999999" }, "no-part"],
		["whose file never arrived", { fileSha: "c".repeat(64) }, "file-not-here"],
	])("is refused %s", async (_, more, code) => {
		expect(await addDigitalItem({ ...(await form()), ...more }, shop.env())).toMatchObject({ ok: false, error: { code } });
	});
});
