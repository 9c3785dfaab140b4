// Where a file of a given digest lies in the data folder. Pure.

import path from "node:path";

const SHA = /^[0-9a-f]{64}$/;

/** Whether the text is a SHA-256 in lower-case hex, the only form in which one is ever written here. */
export const isSha = (text: string): boolean => SHA.test(text);

/** `files/ab/abcdef...`. Requires a SHA-256; anything else is a bug, and could lead out of the folder. */
export function storedPath(folder: string, sha: string): string {
	if (!isSha(sha)) throw new Error("not a SHA-256");
	return path.join(folder, "files", sha.slice(0, 2), sha);
}

/** `files/small/ab/abcdef....jpg`: the smaller picture of a stored one; it can be made again at any time. */
export function smallPath(folder: string, sha: string): string {
	if (!isSha(sha)) throw new Error("not a SHA-256");
	return path.join(folder, "files", "small", sha.slice(0, 2), `${sha}.jpg`);
}

/** Where a file lies while it comes in; on the same disk, so that it can be moved into place whole. */
export const incomingFolder = (folder: string): string => path.join(folder, "files", "incoming");
