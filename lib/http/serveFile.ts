// Hands out a stored file so that a browser shows it or saves it, and never runs it.

import { createReadStream } from "node:fs";
import { stat } from "node:fs/promises";
import { Readable } from "node:stream";
import { isShown } from "@/lib/files/mediaTypes";

export type Served = { readonly file: string; readonly mediaType: string; readonly name: string; readonly tag: string };

/** Sandboxed, whatever it is. A PDF is only kept from loading anything, since browsers show none in a sandbox. */
const POLICY = { sandboxed: "default-src 'none'; style-src 'unsafe-inline'; sandbox", pdf: "default-src 'none'; object-src 'self'" };

/** The answer with the bytes of a file. What is named by its digest never changes, so a browser may keep it for ever. */
export async function serveFile(request: Request, { file, mediaType, name, tag }: Served): Promise<Response> {
	const etag = `"${tag}"`;
	const headers = new Headers({
		"content-type": mediaType === "text/plain" ? "text/plain; charset=utf-8" : mediaType,
		"content-disposition": `${isShown(mediaType) ? "inline" : "attachment"}; filename*=UTF-8''${encoded(name)}`,
		"content-security-policy": mediaType === "application/pdf" ? POLICY.pdf : POLICY.sandboxed,
		"x-content-type-options": "nosniff",
		"cross-origin-resource-policy": "same-origin",
		"cache-control": "private, max-age=31536000, immutable",
		etag,
	});
	if (request.headers.get("if-none-match") === etag) return new Response(null, { status: 304, headers });
	const { size } = await stat(file);
	headers.set("content-length", String(size));
	return new Response(Readable.toWeb(createReadStream(file)) as ReadableStream, { headers });
}

/** RFC 8187: everything but a few signs in per cent. */
const encoded = (name: string): string =>
	encodeURIComponent(name).replace(/['()*!]/g, (sign) => `%${sign.charCodeAt(0).toString(16).toUpperCase()}`);

/** For a file that the ledger does not know, or that is gone from the disk. */
export const notHere = (): Response =>
	new Response("There is no such file in this shop.\n", { status: 404, headers: { "content-type": "text/plain; charset=utf-8" } });
