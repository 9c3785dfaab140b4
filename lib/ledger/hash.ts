// The digests of the ledger. Pure: the same entry gives the same digest, on any machine, in any year.
import { createHash } from "node:crypto";
import type { RandomBytes } from "@/lib/core/random";
import { canonical } from "@/lib/ledger/canonical";

/** Everything that an entry's hash is taken over: the whole row but the hash itself. */
export type EntryBody = {
	readonly seq: number;
	readonly machine: string | null;
	readonly machineSeq: number | null;
	readonly at: string;
	readonly actor: string;
	readonly action: string;
	readonly subject: string;
	/** What may be shown, as canonical JSON text. */
	readonly open: string;
	/** Digest of what may be withheld; null when nothing is. */
	readonly seal: string | null;
	readonly prev: string;
	readonly prevOfMachine: string | null;
};

/** SHA-256 of a text's UTF-8 bytes, or of bytes, as 64 lower-case hex digits. */
export function sha256(data: string | Uint8Array): string {
	return createHash("sha256").update(data).digest("hex");
}

/**
 * `SHA-256(JCS(entry))` over exactly the eleven fields of `EntryBody`: others that the row carries do not count. `open` is
 * put in as it is stored, so that a long entry is not parsed and sorted again; it must be canonical.
 */
export function entryHash(entry: EntryBody): string {
	const { seq, machine, machineSeq, at, actor, action, subject, open, seal, prev, prevOfMachine } = entry;
	// In the order of RFC 8785 for these names.
	return sha256(
		`{"action":${canonical(action)},"actor":${canonical(actor)},"at":${canonical(at)},"machine":${canonical(machine)},` +
			`"machineSeq":${canonical(machineSeq)},"open":${open},"prev":${canonical(prev)},"prevOfMachine":${canonical(prevOfMachine)},` +
			`"seal":${canonical(seal)},"seq":${canonical(seq)},"subject":${canonical(subject)}}`,
	);
}

const SALT = /^[0-9a-f]{32}$/;

/** 128 random bits as 32 hex digits, for one seal. */
export const newSalt = (randomBytes: RandomBytes): string => Buffer.from(randomBytes(16)).toString("hex");

/**
 * `SHA-256(salt || JCS(withheld))`, the salt being its 16 bytes. Without the salt a withheld price could be found by
 * trying all prices. Requires a salt of 32 lower-case hex digits.
 */
export function sealOf(salt: string, withheld: unknown): string {
	if (!SALT.test(salt)) throw new Error("a salt is 32 lower-case hex digits");
	return createHash("sha256").update(Buffer.from(salt, "hex")).update(canonical(withheld)).digest("hex");
}

/** Whether a seal is that of what was withheld. A salt that is none, in a file from elsewhere, is simply no match. */
export function matchesSeal(seal: string, salt: string, withheld: unknown): boolean {
	return SALT.test(salt) && sealOf(salt, withheld) === seal;
}
