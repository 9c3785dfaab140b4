// Compares the stored files with their rows: there, of the right length, and with the digest that is their name.

import { createHash } from "node:crypto";
import { createReadStream, statSync } from "node:fs";
import { pipeline } from "node:stream/promises";
import type Database from "better-sqlite3";
import { storedPath } from "@/lib/files/storedPath";
import type { Flaw } from "@/lib/ledger/verifyChain";

const PAGE = 500;

type Stored = { readonly id: string; readonly bytes: number; readonly name: string };

/** Reads every stored file again; gives how many there are. Memory stays flat however large they are. */
export async function checkFiles(db: Database.Database, folder: string, flaw: (flaw: Flaw) => void): Promise<number> {
	// By pages, and not with one open cursor, since the files are read between rows.
	const page = db.prepare<[string], Stored>(`SELECT id, bytes, name FROM "StoredFile" WHERE id > ? ORDER BY id LIMIT ${PAGE}`);
	let checked = 0;
	for (let after = ""; ; ) {
		const files = page.all(after);
		for (const file of files) {
			const wrong = await fileFlaw(folder, file);
			if (wrong)
				flaw({ code: wrong.code, say: `file ${file.id.slice(0, 12)}… "${file.name}": ${wrong.words}`, table: "StoredFile", id: file.id });
		}
		checked += files.length;
		const last = files.at(-1);
		if (files.length < PAGE || !last) return checked;
		after = last.id;
	}
}

async function fileFlaw(folder: string, { id, bytes }: Stored): Promise<{ code: string; words: string } | null> {
	const file = storedPath(folder, id);
	const stat = statSync(file, { throwIfNoEntry: false });
	if (!stat?.isFile()) return { code: "file-missing", words: "it is missing from the data folder" };
	if (stat.size !== bytes) return { code: "file-changed", words: `it has ${stat.size} bytes, and had ${bytes} when it came` };
	const hash = createHash("sha256");
	await pipeline(createReadStream(file), hash);
	return hash.digest("hex") === id ? null : { code: "file-changed", words: "its bytes are not those that came" };
}
