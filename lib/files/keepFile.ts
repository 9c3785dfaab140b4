// Brings a file into the data folder: whole or not at all, under the name of its own SHA-256, its bytes never changed.

import { createHash, randomUUID } from "node:crypto";
import { createReadStream } from "node:fs";
import { mkdir, open, readdir, rename, rm, stat } from "node:fs/promises";
import path from "node:path";
import type { Readable } from "node:stream";
import { ok, type Result, refuse } from "@/lib/core/result";
import { MOST_BYTES } from "@/lib/files/mediaTypes";
import { incomingFolder, storedPath } from "@/lib/files/storedPath";
import { tellAnyType, tellType } from "@/lib/files/tellType";

/** A file that lies in the data folder; not yet in the ledger. */
export type KeptFile = {
	/** SHA-256 of its bytes, which is its id. */
	readonly sha: string;
	readonly bytes: number;
	readonly mediaType: string;
	/** The name it came with, without a path. */
	readonly name: string;
};

export type Incoming = {
	readonly body: AsyncIterable<Uint8Array> | Readable;
	readonly name: string;
	/** How many bytes were announced; null when nobody said. */
	readonly announced: number | null;
	/** Also take what is neither photo nor paper: a program, a sound. */
	readonly anyType?: boolean;
	readonly mostBytes?: number;
};

/**
 * Streams a file to disk and gives its digest and type. When it returns `ok`, the bytes are on the disk, whole. A file that
 * no entry mentions does no harm; so this comes before the deed that mentions it.
 */
export async function keepFile(folder: string, incoming: Incoming): Promise<Result<KeptFile>> {
	const most = incoming.mostBytes ?? MOST_BYTES;
	if (incoming.announced !== null && incoming.announced > most) return tooLarge(most);
	await mkdir(incomingFolder(folder), { recursive: true });
	const part = path.join(incomingFolder(folder), `${randomUUID()}.part`);
	try {
		const written = await streamTo(part, incoming.body, most);
		if (!written.ok) return written;
		const { sha, bytes } = written.value;
		if (bytes === 0) return refuse("file-empty", "The file is empty. Choose it again; if it stays empty, take the photo anew.");
		if (incoming.announced !== null && incoming.announced !== bytes) {
			return refuse("file-cut", "Only a part of the file arrived. Nothing was kept; send it again.");
		}
		const type = incoming.anyType ? ok(await tellAnyType(part)) : await tellType(part);
		if (!type.ok) return type;
		await moveIntoPlace(part, storedPath(folder, sha), written.value);
		return ok({ sha, bytes, mediaType: type.value, name: shownName(incoming.name) });
	} catch (error) {
		if (isFull(error)) return refuse("disk-full", "The shop's disk is full. Nothing was kept; make room and send it again.");
		throw error;
	} finally {
		await rm(part, { force: true });
	}
}

async function streamTo(file: string, body: AsyncIterable<Uint8Array>, most: number): Promise<Result<{ sha: string; bytes: number }>> {
	const hash = createHash("sha256");
	let bytes = 0;
	const handle = await open(file, "wx");
	try {
		for await (const chunk of body) {
			bytes += chunk.length;
			if (bytes > most) return tooLarge(most);
			hash.update(chunk);
			await handle.writeFile(chunk);
		}
		await handle.sync();
	} catch (error) {
		if (wasBrokenOff(error)) return refuse("file-cut", "Only a part of the file arrived. Nothing was kept; send it again.");
		throw error;
	} finally {
		await handle.close();
	}
	return ok({ sha: hash.digest("hex"), bytes });
}

/**
 * Renames, then flushes the folder, so that the name itself survives a power cut. What lies there under the name is
 * believed only when it is read: a file that was damaged on the disk is replaced by the good one in hand.
 */
async function moveIntoPlace(part: string, target: string, good: { sha: string; bytes: number }): Promise<void> {
	if (await isWhole(target, good)) return; // the same bytes came before
	await mkdir(path.dirname(target), { recursive: true });
	await rename(part, target);
	await flushFolder(path.dirname(target));
	await flushFolder(path.dirname(path.dirname(target)));
}

/** Whether the file is there with every byte that it should have. One that cannot be read is not. */
async function isWhole(file: string, good: { sha: string; bytes: number }): Promise<boolean> {
	const there = await stat(file).catch(() => null);
	if (!there?.isFile() || there.size !== good.bytes) return false;
	const hash = createHash("sha256");
	try {
		for await (const chunk of createReadStream(file)) hash.update(chunk);
	} catch {
		return false;
	}
	return hash.digest("hex") === good.sha;
}

async function flushFolder(folder: string): Promise<void> {
	if (process.platform === "win32") return; // folders cannot be opened there, and need not be
	const handle = await open(folder, "r");
	try {
		await handle.sync();
	} finally {
		await handle.close();
	}
}

/** Removes what was left half-way by a server that was killed. For the start of the program, before anything comes in. */
export async function sweepIncoming(folder: string): Promise<number> {
	const left = await readdir(incomingFolder(folder)).catch(() => []);
	for (const name of left) await rm(path.join(incomingFolder(folder), name), { force: true });
	return left.length;
}

const tooLarge = (most: number) =>
	refuse("file-too-large", `The file is larger than ${Math.floor(most / (1024 * 1024))} MB. Nothing was kept; send a smaller one.`);

const codeOf = (error: unknown): unknown => (typeof error === "object" && error !== null && "code" in error ? error.code : undefined);
const isFull = (error: unknown): boolean => codeOf(error) === "ENOSPC" || codeOf(error) === "EDQUOT";
/** The sender went away: the stream ends with one of these. */
const wasBrokenOff = (error: unknown): boolean =>
	["ECONNRESET", "ERR_STREAM_PREMATURE_CLOSE", "ABORT_ERR"].some((code) => codeOf(error) === code) ||
	(error instanceof Error && (error.name === "AbortError" || error.message === "aborted" || error.name === "ResponseAborted"));

/** The last part of whatever the sender called it, without signs that only confuse. */
export function shownName(name: string): string {
	const last = name.normalize("NFC").split(/[\\/]/).at(-1) ?? "";
	const plain = [...last]
		.filter((sign) => !/[\p{Cc}\p{Cf}\p{Cs}\p{Co}\p{Cn}]/u.test(sign))
		.join("")
		.trim();
	return [...plain].slice(0, 120).join("") || "without a name";
}
