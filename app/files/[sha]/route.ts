import { stat } from "node:fs/promises";
import { shopStore } from "@/lib/db/shopStore";
import { storedFile } from "@/lib/files/queries";
import { storedPath } from "@/lib/files/storedPath";
import { notHere, serveFile } from "@/lib/http/serveFile";

type Params = { readonly params: Promise<{ sha: string }> };

/** A stored file as it came. */
export async function GET(request: Request, { params }: Params): Promise<Response> {
	const { read, folder } = await shopStore();
	const stored = await storedFile(read, (await params).sha);
	if (!stored) return notHere();
	const file = storedPath(folder, stored.id);
	if (!(await stat(file).catch(() => null))) return notHere();
	return serveFile(request, { file, mediaType: stored.mediaType, name: stored.name, tag: stored.id });
}
