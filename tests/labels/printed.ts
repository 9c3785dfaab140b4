// What the tests of labels share: example labels, and readers and renderers that are not ours.

import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import path from "node:path";
import jsQRModule from "jsqr";
import sharp from "sharp";
import { prepareZXingModule, readBarcodes } from "zxing-wasm/reader";
import { day } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import type { Result } from "@/lib/core/result";
import { type LabelAddress, labelAddress } from "@/lib/labels/address";
import { type LabelPrinting, printSettingsSchema } from "@/lib/labels/labelPdf";
import type { LabelContent } from "@/lib/labels/labelText";
import { type Stock, stockOf } from "@/lib/labels/stock";
import { formatTag } from "@/lib/tags/tag";

/** The value of a result that the test expects to be good. */
export function good<T>(result: Result<T>): T {
	if (!result.ok) throw new Error(result.error.say);
	return result.value;
}

export const stock = (id: string): Stock => good(stockOf(id));
export const SHOP_ADDRESS: LabelAddress = good(labelAddress("http://192.168.178.20:3443"));

export const printing = (changes: Partial<LabelPrinting> = {}): LabelPrinting => ({
	...printSettingsSchema.parse({}),
	stock: stock("roll-62x29"),
	address: null,
	madeAt: instant("2026-03-04T08:00:00.000Z"),
	...changes,
});

const on = day("2026-03-04");

export const GEARMOTOR: LabelContent = {
	tag: formatTag(12, 208),
	words: "AC gearmotor",
	machine: "Skerry Light",
	position: "motor on drive plate",
	thisWayUp: true,
	count: 1,
	fate: "original",
	deed: "out",
	day: on,
	initials: "IM",
};
export const TRIM_SCREWS: LabelContent = {
	tag: formatTag(12, 205),
	words: "Trim screws 4BA x 1/2 oval",
	machine: "Skerry Light",
	position: "corner trim",
	side: "left",
	count: 5,
	counted: "screws",
	fate: "holding",
	day: on,
	initials: "IM",
};
export const TUBE: LabelContent = {
	tag: formatTag(12, 216),
	words: "Fluorescent tube 15 W",
	machine: "Skerry Light",
	position: "sign box",
	count: 1,
	fate: "keeping",
	hazard: "Mercury: do not break",
	day: on,
	initials: "IM",
};
export const OVERFULL: LabelContent = {
	tag: formatTag(12, 220),
	words: "Upper left-hand coin return chute bracket with its felt strips and the long shouldered screw",
	machine: "The Extraordinarily Long Named Harbour Lighthouse and Tin Ship Novelty",
	position: "third rail from the back, behind the transformer, under the fish paper",
	side: "left",
	thisWayUp: true,
	wayRound: "maker's stamp towards the coin door and the bent lug uppermost",
	count: 1234,
	counted: "little brass pieces",
	also: "3 washers",
	fate: "holding",
	hazard: "Asbestos cord inside: do not open, do not abrade, keep wet",
	deed: "taken out",
	day: on,
	initials: "WXYZ",
};

/** `count` different labels of machine 12. */
export const manyLabels = (count: number): LabelContent[] =>
	["1", "2", "3", "4", "5", "6", "7", "8", "9"]
		.flatMap((thousand) => Array.from({ length: 999 }, (_, number) => Number(thousand) * 1000 + number))
		.flatMap((number) => {
			try {
				return [{ ...GEARMOTOR, tag: formatTag(12, number) }];
			} catch {
				return [];
			}
		})
		.slice(0, count);

/** Runs a program of the system; a missing one fails the test and says how to get it. */
function run(program: "pdftoppm" | "pdfinfo" | "pdffonts" | "pdftotext" | "zbarimg", args: readonly string[]): string {
	const from = program === "zbarimg" ? "zbar-tools" : "poppler-utils";
	try {
		return execFileSync(program, args, { encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] });
	} catch (error) {
		if (error instanceof Error && "code" in error && error.code === "ENOENT") {
			throw new Error(
				`${program} is not on this computer. Install it with: apt-get install -y ${from} (macOS: brew install ${from.replace("-utils", "").replace("-tools", "")}).`,
			);
		}
		throw error;
	}
}

/** A folder for the length of `work`. */
async function inFolder<T>(work: (folder: string) => Promise<T> | T): Promise<T> {
	const folder = mkdtempSync(path.join(tmpdir(), "labels-"));
	try {
		return await work(folder);
	} finally {
		rmSync(folder, { recursive: true });
	}
}

/** Grey pixels, row by row. */
export type Pixels = { readonly data: Buffer; readonly width: number; readonly height: number };

/** The pages of a PDF as poppler draws them; all, or only one, counted from 1. Unpacked: packing takes ten times as long as drawing. */
export const pixelPagesOf = (pdf: Buffer, dpi: number, only?: number): Promise<Pixels[]> =>
	inFolder((folder) => {
		const file = path.join(folder, "labels.pdf");
		writeFileSync(file, pdf);
		const range = only === undefined ? [] : ["-f", String(only), "-l", String(only)];
		run("pdftoppm", ["-r", String(dpi), "-gray", ...range, file, path.join(folder, "page")]);
		return readdirSync(folder)
			.filter((name) => name.endsWith(".pgm"))
			.sort()
			.map((name) => {
				const bytes = readFileSync(path.join(folder, name));
				const [header = "", width = "", height = ""] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 60).toString("latin1")) ?? [];
				return { data: bytes.subarray(header.length), width: Number(width), height: Number(height) };
			});
	});

/** The same as pictures in a file's form. */
export const pagesOf = async (pdf: Buffer, dpi: number, only?: number): Promise<Buffer[]> =>
	Promise.all((await pixelPagesOf(pdf, dpi, only)).map(pngOf));

export const pngOf = ({ data, width, height }: Pixels): Promise<Buffer> =>
	sharp(data, { raw: { width, height, channels: 1 } })
		.png({ compressionLevel: 0 })
		.toBuffer();

/** What poppler says of a PDF. */
export const askPoppler = (program: "pdfinfo" | "pdffonts" | "pdftotext", pdf: Buffer, options: readonly string[] = []): Promise<string> =>
	inFolder((folder) => {
		const file = path.join(folder, "labels.pdf");
		writeFileSync(file, pdf);
		return run(program, [...options, file, ...(program === "pdftotext" ? ["-"] : [])]);
	});

/** Dark or light of every pixel of a picture. */
export async function pixelsOf(png: Buffer): Promise<{ width: number; height: number; isDark: (x: number, y: number) => boolean }> {
	const { data, info } = await sharp(png).flatten({ background: "white" }).greyscale().raw().toBuffer({ resolveWithObject: true });
	return { width: info.width, height: info.height, isDark: (x, y) => (data[y * info.width + x] ?? 255) < 128 };
}

// Under vitest the default export of this CommonJS package may arrive wrapped once more.
const jsQR = (typeof jsQRModule === "function" ? jsQRModule : (jsQRModule as { default: typeof jsQRModule }).default) as typeof jsQRModule;

const wasm = readFileSync(createRequire(import.meta.url).resolve("zxing-wasm/reader/zxing_reader.wasm"));
prepareZXingModule({ overrides: { wasmBinary: wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.byteLength) as ArrayBuffer } });

/** What two readers that are not ours read in the grey pixels of a picture; null for one that finds nothing. */
export async function readInPixels({ data, width, height }: Pixels): Promise<{ jsqr: string | null; zxing: string | null }> {
	const rgba = new Uint8ClampedArray(data.length * 4);
	for (let at = 0; at < data.length; at++) rgba.fill(data[at] ?? 255, at * 4, at * 4 + 3).fill(255, at * 4 + 3, at * 4 + 4);
	const [zxing] = await readBarcodes({ data: rgba, width, height, colorSpace: "srgb" } as ImageData, {
		formats: ["QRCode"],
		maxNumberOfSymbols: 1,
	});
	return { jsqr: jsQR(rgba, width, height, { inversionAttempts: "dontInvert" })?.data ?? null, zxing: zxing?.text ?? null };
}
/** All that zbarimg reads in a picture, or null where it is not installed. */
export const readAllByZbar = (png: Buffer): Promise<string[] | null> =>
	inFolder((folder) => {
		const file = path.join(folder, "sheet.png");
		writeFileSync(file, png);
		try {
			return execFileSync("zbarimg", ["--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", file], {
				encoding: "utf8",
				stdio: ["ignore", "pipe", "ignore"],
			})
				.trim()
				.split("\n");
		} catch (error) {
			if (error instanceof Error && "code" in error && error.code === "ENOENT") return null;
			throw error;
		}
	});

/** What three readers, none of them ours, read in a picture; null for one that finds nothing. */
export async function readByOthers(png: Buffer): Promise<{ jsqr: string | null; zxing: string | null; zbar: string | null }> {
	const flat = await sharp(png).flatten({ background: "white" }).png().toBuffer();
	const { data, info } = await sharp(flat).ensureAlpha().raw().toBuffer({ resolveWithObject: true });
	const zxing = await readBarcodes(new Uint8Array(flat), { formats: ["QRCode"] });
	return {
		jsqr: jsQR(new Uint8ClampedArray(data), info.width, info.height)?.data ?? null,
		zxing: zxing[0]?.text ?? null,
		zbar: await readByZbar(flat),
	};
}

const readByZbar = (png: Buffer): Promise<string | null> =>
	inFolder((folder) => {
		const file = path.join(folder, "label.png");
		writeFileSync(file, png);
		try {
			return run("zbarimg", ["--quiet", "--raw", "-Sdisable", "-Sqrcode.enable", file]).trim();
		} catch (error) {
			// Exit code 4 is zbar's "no symbol found".
			if (error instanceof Error && "status" in error && error.status === 4) return null;
			throw error;
		}
	});
