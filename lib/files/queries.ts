import type { Reader } from "@/lib/db/store";
import { isSha } from "@/lib/files/storedPath";

/** A file that the ledger knows, or null; only these are handed out. */
export async function storedFile(
	read: Reader,
	sha: string,
): Promise<{ id: string; bytes: number; mediaType: string; name: string } | null> {
	if (!isSha(sha)) return null;
	return read.storedFile.findUnique({ where: { id: sha }, select: { id: true, bytes: true, mediaType: true, name: true } });
}
