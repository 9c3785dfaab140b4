import { stat } from "node:fs/promises";
import { shopStore } from "@/lib/db/shopStore";
import { isPicture } from "@/lib/files/mediaTypes";
import { storedFile } from "@/lib/files/queries";
import { smallPicture } from "@/lib/files/smallPicture";
import { storedPath } from "@/lib/files/storedPath";
import { notHere, serveFile } from "@/lib/http/serveFile";

type Params = { readonly params: Promise<{ sha: string }> };

/** The smaller picture of a stored one. */
export async function GET(request: Request, { params }: Params): Promise<Response> {
	const { read, folder } = await shopStore();
	const stored = await storedFile(read, (await params).sha);
	if (!stored || !isPicture(stored.mediaType)) return notHere();
	if (!(await stat(storedPath(folder, stored.id)).catch(() => null))) return notHere();
	const file = await smallPicture(folder, stored.id);
	return serveFile(request, { file, mediaType: "image/jpeg", name: `small ${stored.name}.jpg`, tag: `${stored.id}-small` });
}
