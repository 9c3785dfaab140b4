// Tells what a file is from its bytes; what its name or its sender says counts for nothing.

import { createReadStream } from "node:fs";
import { open } from "node:fs/promises";
import { fileTypeFromFile } from "file-type";
import sharp from "sharp";
import { ok, type Result, refuse } from "@/lib/core/result";
import { ANY_BYTES, MOST_PIXELS, PICTURES } from "@/lib/files/mediaTypes";

const PHONE_FORMATS = ["image/heic", "image/heif", "image/heic-sequence", "image/heif-sequence", "image/avif"];

const NOT_KEPT =
	"This kind of file is not kept as a photo or a paper. Choose a photo (JPEG, PNG or WebP), a PDF or a plain text; a program or a sound goes with its device, under digital items.";

/** The media type of a photo or a paper, or why it is not kept. */
export async function tellType(file: string): Promise<Result<string>> {
	const found = (await fileTypeFromFile(file))?.mime;
	const picture = PICTURES.find((type) => type === found);
	if (picture) return readablePicture(file, picture);
	if (found !== undefined && PHONE_FORMATS.includes(found)) {
		return refuse(
			"phone-format",
			'This photo is in the phone\'s own format (HEIC), which cannot be kept for others to see. Set the camera to "most compatible" (JPEG), or take the photo with the button on this page.',
		);
	}
	if (found === "application/pdf") return wholePdf(file);
	if (found === undefined && (await isPlainText(file))) return ok("text/plain");
	return refuse("type-not-kept", NOT_KEPT);
}

/** The media type of a file that belongs to a device: known when it is a picture or a paper, otherwise bytes. */
export async function tellAnyType(file: string): Promise<string> {
	const told = await tellType(file);
	return told.ok ? told.value : ANY_BYTES;
}

async function readablePicture(file: string, mediaType: string): Promise<Result<string>> {
	try {
		const { width, height, pages = 1 } = await sharp(file, { limitInputPixels: MOST_PIXELS }).metadata();
		if (width * height * pages > MOST_PIXELS) return tooManyPixels();
		// Read to its end, very small: a picture that is cut off half-way has a sound head.
		await sharp(file, { limitInputPixels: MOST_PIXELS, failOn: "error" }).resize(32, 32, { fit: "inside" }).raw().toBuffer();
		return ok(mediaType);
	} catch (error) {
		if (error instanceof Error && /pixel limit/i.test(error.message)) return tooManyPixels();
		return refuse("picture-broken", "This picture is damaged and cannot be read. Take it again, or choose another.");
	}
}

const tooManyPixels = () =>
	refuse("picture-too-large", "This picture has more pixels than any camera makes. Choose another, or make it smaller first.");

/** A PDF says so at its beginning, and at its end that it is whole. */
async function wholePdf(file: string): Promise<Result<string>> {
	const handle = await open(file, "r");
	try {
		const { size } = await handle.stat();
		const tail = Buffer.alloc(Math.min(size, 2048));
		await handle.read(tail, 0, tail.length, size - tail.length);
		if (tail.includes("%%EOF")) return ok("application/pdf");
		return refuse("paper-broken", "This PDF is cut off before its end. Open it to see whether it is whole, then send it again.");
	} finally {
		await handle.close();
	}
}

/** UTF-8 without control characters other than tab, line feed, form feed and carriage return. */
async function isPlainText(file: string): Promise<boolean> {
	const decoder = new TextDecoder("utf-8", { fatal: true });
	try {
		let any = false;
		for await (const bytes of createReadStream(file)) {
			any = true;
			if (hasControl(bytes as Buffer)) return false;
			decoder.decode(bytes as Buffer, { stream: true });
		}
		decoder.decode();
		return any;
	} catch (error) {
		if (error instanceof TypeError) return false; // not UTF-8
		throw error;
	}
}

const hasControl = (bytes: Buffer): boolean =>
	bytes.some((byte) => byte === 0x7f || (byte < 0x20 && ![0x09, 0x0a, 0x0c, 0x0d].includes(byte)));
