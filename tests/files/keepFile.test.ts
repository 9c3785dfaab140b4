import { createHash } from "node:crypto";
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { Readable } from "node:stream";
import sharp from "sharp";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { type Incoming, keepFile, shownName, sweepIncoming } from "@/lib/files/keepFile";
import { smallPicture } from "@/lib/files/smallPicture";
import { incomingFolder, smallPath, storedPath } from "@/lib/files/storedPath";

let folder: string;
beforeEach(() => {
	folder = mkdtempSync(path.join(tmpdir(), "asfound-files-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const picture = (width = 40, height = 30) => sharp({ create: { width, height, channels: 3, background: "#884422" } });
/** With enough in it that a cut takes something away. */
const photo = () =>
	sharp({ create: { width: 400, height: 300, channels: 3, noise: { type: "gaussian", mean: 128, sigma: 30 }, background: "#000" } })
		.jpeg()
		.toBuffer();
const body = (bytes: Buffer, pieces = 3) => {
	const size = Math.max(1, Math.ceil(bytes.length / pieces));
	const chunks = [];
	for (let at = 0; at < bytes.length; at += size) chunks.push(bytes.subarray(at, at + size));
	return Readable.from(chunks);
};
const send = (bytes: Buffer, more: Partial<Incoming> = {}) =>
	keepFile(folder, { body: body(bytes), name: "IMG_1.jpg", announced: bytes.length, ...more });
const left = () => (existsSync(incomingFolder(folder)) ? readdirSync(incomingFolder(folder)) : []);
const kept = () =>
	(existsSync(path.join(folder, "files")) ? readdirSync(path.join(folder, "files"), { recursive: true }).map(String) : []).filter(
		(name) => name.length > 60,
	);

const PDF = Buffer.from("%PDF-1.7\n1 0 obj\n<<>>\nendobj\ntrailer\n<<>>\n%%EOF\n");

describe("a file that comes in", () => {
	it("is kept under the digest of its bytes, which are not changed", async () => {
		const bytes = await picture().jpeg().toBuffer();
		const sha = createHash("sha256").update(bytes).digest("hex");
		expect(await send(bytes)).toEqual({ ok: true, value: { sha, bytes: bytes.length, mediaType: "image/jpeg", name: "IMG_1.jpg" } });
		expect(readFileSync(storedPath(folder, sha)).equals(bytes)).toBe(true);
		expect(storedPath(folder, sha)).toBe(path.join(folder, "files", sha.slice(0, 2), sha));
		expect(left()).toEqual([]);
	});

	it("that comes twice is kept once", async () => {
		const bytes = await picture().png().toBuffer();
		await send(bytes);
		expect(await send(bytes, { name: "again.png" })).toMatchObject({ ok: true, value: { name: "again.png" } });
		expect(kept()).toHaveLength(1);
		expect(left()).toEqual([]);
	});

	it.each([
		["cut short", (bytes: Buffer) => bytes.subarray(0, 100)],
		["of the right length with one bit turned", (bytes: Buffer) => Buffer.concat([bytes.subarray(0, -1), Buffer.from([0x01])])],
		["empty", () => Buffer.alloc(0)],
	])("that comes again heals the one on the disk, when that was damaged: %s", async (_, damaged) => {
		const bytes = await photo();
		const sha = createHash("sha256").update(bytes).digest("hex");
		await send(bytes);
		writeFileSync(storedPath(folder, sha), damaged(bytes));
		expect(await send(bytes)).toMatchObject({ ok: true, value: { sha } });
		expect(readFileSync(storedPath(folder, sha)).equals(bytes)).toBe(true);
		expect(left()).toEqual([]);
	});

	it.each([
		["a JPEG", () => picture().jpeg().toBuffer(), "image/jpeg"],
		["a PNG", () => picture().png().toBuffer(), "image/png"],
		["a WebP", () => picture().webp().toBuffer(), "image/webp"],
		["a PDF", async () => PDF, "application/pdf"],
		["a text", async () => Buffer.from("Found under the cash box: a ticket, Ångström & čšž.\r\n\tNo. 7\n"), "text/plain"],
	])("is known for what it is by its bytes, whatever it is called: %s", async (_, bytes, mediaType) => {
		expect(await send(await bytes(), { name: "letter.exe" })).toMatchObject({ ok: true, value: { mediaType } });
	});
});

describe("a file is refused, and nothing of it is kept,", () => {
	const heic = Buffer.concat([Buffer.from([0, 0, 0, 24]), Buffer.from("ftypheic\0\0\0\0mif1heic"), Buffer.alloc(64)]);
	it.each([
		["when it is empty", async () => Buffer.alloc(0), "file-empty"],
		["in a phone's own format, with the way to have it otherwise", async () => heic, "phone-format"],
		["when it is a program", async () => Buffer.concat([Buffer.from("\x7fELF"), Buffer.alloc(200, 1)]), "type-not-kept"],
		[
			"when it is a drawing that may hold scripts",
			async () => Buffer.from('<?xml version="1.0"?><svg xmlns="http://www.w3.org/2000/svg"/>'),
			"type-not-kept",
		],
		["when it is text in another encoding", async () => Buffer.from([0x47, 0x72, 0xfc, 0xdf, 0x65]), "type-not-kept"],
		["when it is text with control characters", async () => Buffer.from("a\u0001b"), "type-not-kept"],
		["when a picture ends within its head", async () => (await picture().jpeg().toBuffer()).subarray(0, 100), "picture-broken"],
		["when a picture is cut off half-way", async () => (await photo()).subarray(0, 3000), "picture-broken"],
		["when a PDF ends too early", async () => PDF.subarray(0, 30), "paper-broken"],
		["when it claims more pixels than any camera makes", async () => pixelBomb(), "picture-too-large"],
	])("%s", async (_, bytes, code) => {
		expect(await send(await bytes())).toMatchObject({ ok: false, error: { code } });
		expect(kept()).toEqual([]);
		expect(left()).toEqual([]);
	});

	it("when more was announced than came", async () => {
		expect(await send(Buffer.from("half"), { announced: 8 })).toMatchObject({ ok: false, error: { code: "file-cut" } });
		expect(kept()).toEqual([]);
	});

	it("when it is larger than allowed, whether or not that was announced", async () => {
		const bytes = Buffer.alloc(70 * 1024, "a");
		for (const announced of [bytes.length, null])
			expect(await send(bytes, { announced, mostBytes: 64 * 1024 })).toMatchObject({ ok: false, error: { code: "file-too-large" } });
		expect(await send(bytes.subarray(0, 64 * 1024), { mostBytes: 64 * 1024 })).toMatchObject({ ok: true });
		expect(left()).toEqual([]);
	});

	it("when the sender goes away half-way", async () => {
		async function* broken() {
			yield Buffer.from("half");
			throw Object.assign(new Error("aborted"), { code: "ECONNRESET" });
		}
		expect(await keepFile(folder, { body: broken(), name: "x", announced: null })).toMatchObject({
			ok: false,
			error: { code: "file-cut" },
		});
		expect(kept()).toEqual([]);
		expect(left()).toEqual([]);
	});

	it("when it cannot be put in its place: the error is told, and nothing is left half-way", async () => {
		const bytes = await picture().jpeg().toBuffer();
		const sha = createHash("sha256").update(bytes).digest("hex");
		mkdirSync(path.dirname(path.dirname(storedPath(folder, sha))), { recursive: true });
		writeFileSync(path.dirname(storedPath(folder, sha)), "a file where the folder should be");
		await expect(send(bytes)).rejects.toThrow();
		expect(left()).toEqual([]);
	});
});

describe("a program or a sound for a device", () => {
	it("is kept as bytes, and what is a picture or a paper still by its type", async () => {
		expect(await send(Buffer.from([0, 1, 2, 0xff]), { anyType: true })).toMatchObject({
			ok: true,
			value: { mediaType: "application/octet-stream" },
		});
		expect(await send(PDF, { anyType: true })).toMatchObject({ ok: true, value: { mediaType: "application/pdf" } });
	});
});

describe("the smaller picture", () => {
	it("is upright, small, without the camera's notes, and the original stays as it came", async () => {
		const bytes = await picture(1600, 1200)
			.withExif({ IFD0: { Make: "Cam" }, IFD3: { GPSLatitudeRef: "N", GPSLatitude: "51/1 30/1 3230/100" } })
			.withMetadata({ orientation: 6 })
			.jpeg()
			.toBuffer();
		const file = await send(bytes);
		if (!file.ok) throw new Error(file.error.say);
		const small = await smallPicture(folder, file.value.sha);
		expect(small).toBe(smallPath(folder, file.value.sha));
		const { width, height, exif, orientation, format } = await sharp(small).metadata();
		expect({ width, height, exif, orientation, format }).toEqual({
			width: 960,
			height: 1280,
			exif: undefined,
			orientation: undefined,
			format: "jpeg",
		});
		expect(readFileSync(storedPath(folder, file.value.sha)).equals(bytes)).toBe(true);
	});

	it("is made once, however many ask at the same time", async () => {
		const file = await send(await picture(300, 200).png().toBuffer());
		if (!file.ok) throw new Error(file.error.say);
		const paths = await Promise.all(Array.from({ length: 8 }, () => smallPicture(folder, file.value.sha)));
		expect(new Set(paths).size).toBe(1);
		expect(readdirSync(path.dirname(paths[0] ?? ""))).toHaveLength(1);
	});

	it("is not made of a picture that was damaged on the disk, and leaves nothing half-way", async () => {
		const sha = "a".repeat(64);
		mkdirSync(path.dirname(storedPath(folder, sha)), { recursive: true });
		writeFileSync(storedPath(folder, sha), (await photo()).subarray(0, 3000));
		await expect(smallPicture(folder, sha)).rejects.toThrow();
		expect(readdirSync(path.dirname(smallPath(folder, sha)))).toEqual([]);
	});
});

describe("names of files", () => {
	it.each([
		["../../etc/passwd", "passwd"],
		["C:\\Photos\\IMG_1.jpg", "IMG_1.jpg"],
		["a\u202Egpj.exe", "agpj.exe"],
		["line\nbreak", "linebreak"],
		["", "without a name"],
		["/", "without a name"],
		["x".repeat(400), "x".repeat(120)],
		["ü.jpg".normalize("NFD"), "ü.jpg"],
	])("%j is shown as %j", (name, shown) => {
		expect(shownName(name)).toBe(shown);
	});
});

it("what a killed server left half-way is swept up at the next start", async () => {
	mkdirSync(incomingFolder(folder), { recursive: true });
	writeFileSync(path.join(incomingFolder(folder), "x.part"), "half");
	expect(await sweepIncoming(folder)).toBe(1);
	expect(left()).toEqual([]);
});

it("a digest that is none leads nowhere", () => {
	for (const sha of ["../../x", "A".repeat(64), "0".repeat(63), ""]) expect(() => storedPath(folder, sha)).toThrow();
});

/** A PNG of a few hundred bytes that says it has 20,000 by 20,000 pixels. */
function pixelBomb(): Buffer {
	const chunk = (type: string, data: Buffer) => {
		const head = Buffer.alloc(8);
		head.writeUInt32BE(data.length, 0);
		head.write(type, 4, "latin1");
		const sum = Buffer.alloc(4);
		sum.writeUInt32BE(crc32(Buffer.concat([head.subarray(4), data])), 0);
		return Buffer.concat([head, data, sum]);
	};
	const ihdr = Buffer.alloc(13);
	ihdr.writeUInt32BE(20_000, 0);
	ihdr.writeUInt32BE(20_000, 4);
	ihdr.set([8, 2, 0, 0, 0], 8);
	return Buffer.concat([
		Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
		chunk("IHDR", ihdr),
		chunk("IDAT", Buffer.from([0x78, 0x9c, 0x63, 0, 0, 0, 0x0a, 0, 0x01])),
		chunk("IEND", Buffer.alloc(0)),
	]);
}

/** CRC of PNG chunks, by its definition in the PNG standard, annex D. */
function crc32(bytes: Buffer): number {
	let crc = 0xffffffff;
	for (const byte of bytes) {
		crc ^= byte;
		for (let bit = 0; bit < 8; bit++) crc = crc & 1 ? (crc >>> 1) ^ 0xedb88320 : crc >>> 1;
	}
	return (crc ^ 0xffffffff) >>> 0;
}
