// Smaller pictures for the screens and the papers, made on demand and kept beside the originals, which stay as they came.

import { randomUUID } from "node:crypto";
import { mkdir, rename, rm, stat } from "node:fs/promises";
import path from "node:path";
import sharp from "sharp";
import { MOST_PIXELS } from "@/lib/files/mediaTypes";
import { smallPath, storedPath } from "@/lib/files/storedPath";

/** Longest side in pixels: fills a phone held upright, and 10 cm of paper at 300 dpi. */
const LONGEST = 1280;
/** How many are made at a time; more would take the memory and the server's breath. */
const AT_ONCE = 2;

const making = new Map<string, Promise<string>>();
let running = 0;
const waiting: (() => void)[] = [];

/**
 * The path of the smaller picture, made now if it was not yet: upright by its own orientation mark, and without the
 * camera's notes (which may hold where it was taken). JPEG, since papers cannot hold WebP. Requires a stored picture;
 * throws when it cannot be read.
 */
export async function smallPicture(folder: string, sha: string): Promise<string> {
	const target = smallPath(folder, sha);
	if (await stat(target).catch(() => null)) return target;
	const key = `${folder}/${sha}`;
	const underWay = making.get(key);
	if (underWay) return underWay;
	const made = inTurn(() => make(storedPath(folder, sha), target)).finally(() => making.delete(key));
	making.set(key, made);
	return made;
}

async function make(original: string, target: string): Promise<string> {
	await mkdir(path.dirname(target), { recursive: true });
	const part = `${target}.${randomUUID()}.part`;
	try {
		await sharp(original, { limitInputPixels: MOST_PIXELS, failOn: "error" })
			.autoOrient()
			.resize({ width: LONGEST, height: LONGEST, fit: "inside", withoutEnlargement: true })
			.flatten({ background: "#ffffff" })
			.jpeg({ quality: 80, mozjpeg: true })
			.toFile(part);
		await rename(part, target);
		return target;
	} finally {
		await rm(part, { force: true });
	}
}

async function inTurn<T>(work: () => Promise<T>): Promise<T> {
	if (running >= AT_ONCE) await new Promise<void>((go) => waiting.push(go));
	running += 1;
	try {
		return await work();
	} finally {
		running -= 1;
		waiting.shift()?.();
	}
}
