import { stat } from "node:fs/promises";
import { ok, type Result, refuse } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import type { Reader } from "@/lib/db/store";
import type { KeptFile } from "@/lib/files/keepFile";
import { keptFileSchema } from "@/lib/files/schema";
import { storedPath } from "@/lib/files/storedPath";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, deed, type RowChange } from "@/lib/ledger/rows";

/** Enters a kept file in the ledger, for something that will refer to it by its digest. Entered already, it stays as it is. */
export async function registerFile(input: { file: KeptFile; machineId: string | null }, env: Env): Promise<Result<{ sha: string }>> {
	const file = keptFileSchema.safeParse(input.file);
	if (!file.success) return unreadable(file.error);
	const { sha, name } = file.data;
	const there = await requireOnDisk(env.store.folder, sha);
	if (!there.ok) return there;
	return record(env, async (read) =>
		ok(
			deed(
				input.machineId,
				"file.kept",
				{ table: "StoredFile", id: sha },
				{ say: `Kept the file ${name}.`, sha256: sha },
				await rowOfFile(read, file.data),
				{ sha },
			),
		),
	);
}

/** The row of a kept file, unless there is one already. */
export async function rowOfFile(read: Reader, { sha, bytes, mediaType, name }: KeptFile): Promise<RowChange[]> {
	const known = await read.storedFile.findUnique({ where: { id: sha }, select: { id: true } });
	return known ? [] : [add("StoredFile", { id: sha, bytes, mediaType, name })];
}

/** An entry must not mention a file that is not there. */
export async function requireOnDisk(folder: string, sha: string): Promise<Result<null>> {
	const there = await stat(storedPath(folder, sha)).catch(() => null);
	return there?.isFile() ? ok(null) : refuse("file-not-here", "The file has not arrived. Send it again.");
}
