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

/** `files/small/ab/abcdef....webp`: a smaller picture that was made from the file and can be made again. */
export const smallPath = (folder: string, sha: string): string =>
	path.join(path.dirname(path.dirname(storedPath(folder, sha))), "small", sha.slice(0, 2), `${sha}.webp`);
