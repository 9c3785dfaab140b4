// The shop's Ed25519 key, with which a dossier's head is signed. The private half lies in the data folder and nowhere else.

import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import path from "node:path";
import { exportPrivateKey, exportPublicKey, importPrivateKey, makeKeyPair } from "@/lib/ledger/signing";

const keyFile = (folder: string): string => path.join(folder, "keys", "shop.pem");

/** The public half of the folder's key as text; the pair is made on first use. */
export function publicKeyOf(folder: string): string {
	const file = keyFile(folder);
	if (!existsSync(file)) {
		mkdirSync(path.dirname(file), { recursive: true, mode: 0o700 });
		// Whole or not at all: written beside it, then renamed.
		writeFileSync(`${file}.new`, exportPrivateKey(makeKeyPair().privateKey), { mode: 0o600 });
		renameSync(`${file}.new`, file);
	}
	return exportPublicKey(importPrivateKey(readFileSync(file, "utf8")));
}
