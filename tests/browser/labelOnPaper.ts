// A label as it comes out of a label printer, read as a phone's camera reads it.

import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import jsQR from "jsqr";
import sharp from "sharp";

/** What label printers print. */
const DOTS_PER_INCH = 203;

/** What the code on each sheet of the PDF says; null where none can be read. */
export async function codesOn(pdf: Buffer): Promise<(string | null)[]> {
	const folder = mkdtempSync(path.join(tmpdir(), "asfound-label-"));
	try {
		const file = path.join(folder, "labels.pdf");
		writeFileSync(file, pdf);
		execFileSync("pdftoppm", ["-r", String(DOTS_PER_INCH), "-png", file, path.join(folder, "sheet")]);
		const sheets = readdirSync(folder)
			.filter((name) => name.endsWith(".png"))
			.sort();
		return await Promise.all(sheets.map((name) => codeIn(path.join(folder, name))));
	} finally {
		rmSync(folder, { recursive: true, force: true });
	}
}

async function codeIn(picture: string): Promise<string | null> {
	const { data, info } = await sharp(picture).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
	return jsQR(new Uint8ClampedArray(data), info.width, info.height)?.data ?? null;
}
