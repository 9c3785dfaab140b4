// Recomputes the chains of a ledger entry by entry, and compares. Pure: the entries come from wherever they are kept, the
// live shop or a dossier. Shares with the writer nothing but the format (DESIGN: hash = SHA-256(JCS(entry without hash))).

import { createHash } from "node:crypto";
import { canonicalOf, isCanonical, readJson } from "@/lib/ledger/verifyText";

/** One thing that is wrong, and where. */
export type Flaw = {
	readonly code: string;
	/** What is wrong, as a sentence: "entry 48: its hash does not match what it says". */
	readonly say: string;
	readonly entry?: number;
	readonly table?: string;
	readonly id?: string;
};

/** An entry as it is stored: `open` is still the bytes of a text. */
export type StoredEntry = {
	readonly seq: number;
	readonly machine: string | null;
	readonly machineSeq: number | null;
	readonly at: string;
	readonly actor: string;
	readonly action: string;
	readonly subject: string;
	readonly open: Uint8Array;
	readonly seal: string | null;
	readonly prev: string;
	readonly prevOfMachine: string | null;
	readonly hash: string;
};

export type StoredSeal = { readonly salt: string | null; readonly withheld: string | null };

type Image = Readonly<Record<string, unknown>>;

/** The open part of an entry, read. */
export type OpenPart = { readonly deed: string; readonly facts: Image; readonly rows: Readonly<Record<string, Image>> };

const NO_ENTRY = "0".repeat(64);
const json = JSON.stringify;

/**
 * SHA-256 of the canonical text of an entry without its hash. Requires that `open` is canonical; the other members are
 * texts and whole numbers, which JSON.stringify writes as RFC 8785 asks, here in its order of keys.
 */
export function hashOfEntry(entry: Omit<StoredEntry, "hash">): string {
	const { action, actor, at, machine, machineSeq, open, prev, prevOfMachine, seal, seq, subject } = entry;
	return createHash("sha256")
		.update(
			`{"action":${json(action)},"actor":${json(actor)},"at":${json(at)},"machine":${json(machine)},"machineSeq":${machineSeq},"open":`,
		)
		.update(open)
		.update(`,"prev":${json(prev)},"prevOfMachine":${json(prevOfMachine)},"seal":${json(seal)},"seq":${seq},"subject":${json(subject)}}`)
		.digest("hex");
}

/** What an entry says, as text. Bytes that are no text become U+FFFD, and then the hash tells. */
export const openText = (entry: Pick<StoredEntry, "open">): string => Buffer.from(entry.open).toString("utf8");

/** SHA-256 of salt and withheld text. */
export const sealDigest = (salt: string, withheld: string): string =>
	createHash("sha256").update(Buffer.from(salt, "hex")).update(withheld, "utf8").digest("hex");

/** No flaw, and no new list for each of a million sound entries. */
const NONE: readonly Flaw[] = [];

type Head = { seq: number; hash: string };

/**
 * Checks entries handed over one after the other: of the whole shop (`"shop"`: both chains, numbers without a gap) or of
 * one machine alone (`"machine"`: its chain; the shop's own chain cannot be followed without the other entries).
 */
export function chainChecker(of: "shop" | "machine"): (entry: StoredEntry) => readonly Flaw[] {
	const last: Head = { seq: 0, hash: NO_ENTRY };
	const machines = new Map<string, Head>();
	const lastOf = (machine: string): Head => {
		const known = machines.get(machine);
		if (known) return known;
		const none = { seq: 0, hash: NO_ENTRY };
		machines.set(machine, none);
		return none;
	};
	return (entry) => {
		const hashFlaws = ofHash(entry);
		const shopFlaw = of === "shop" ? inShop(entry, last) : null;
		last.seq = entry.seq;
		last.hash = entry.hash;
		const before = entry.machine === null ? null : lastOf(entry.machine);
		const machineFlaw = inMachine(entry, before);
		if (before) {
			before.seq = entry.machineSeq ?? 0;
			before.hash = entry.hash;
		}
		if (hashFlaws === NONE && !shopFlaw && !machineFlaw) return NONE;
		return [...hashFlaws, ...[shopFlaw ?? [], machineFlaw ?? []].flat()];
	};
}

const flaw = (entry: { readonly seq: number }, code: string, words: string): Flaw => ({
	code,
	say: `entry ${entry.seq}: ${words}`,
	entry: entry.seq,
});

function ofHash(entry: StoredEntry): readonly Flaw[] {
	if (hashOfEntry(entry) === entry.hash) return NONE;
	// Hashed in the canonical form too, so that one slip is one flaw.
	const text = openText(entry);
	const inForm = canonicalOf(text);
	if (inForm !== text && hashOfEntry({ ...entry, open: Buffer.from(inForm) }) === entry.hash) return [notCanonical(entry)];
	return [flaw(entry, "entry-hash", "its hash does not match what it says")];
}

const notCanonical = (entry: { readonly seq: number }): Flaw =>
	flaw(entry, "entry-not-canonical", "what it says is not written in the canonical form");

/** What is wrong with how an entry's text is written, or null. The chain does not ask: it goes by the bytes. */
export const formFlaw = (entry: { readonly seq: number }, text: string): Flaw | null => (isCanonical(text) ? null : notCanonical(entry));

function inShop(entry: StoredEntry, last: Head): Flaw | null {
	if (entry.seq === last.seq + 1) {
		if (entry.prev === last.hash) return null;
		return flaw(
			entry,
			"entry-chain",
			last.seq === 0 ? "it is the first and names one before it" : `it does not follow on entry ${last.seq}: it names another hash`,
		);
	}
	const missing =
		entry.seq === last.seq + 2
			? `entry ${last.seq + 1} before it is missing`
			: `the entries ${last.seq + 1} to ${entry.seq - 1} before it are missing`;
	return flaw(entry, "entry-gap", missing);
}

function inMachine(entry: StoredEntry, before: Head | null): Flaw | null {
	if ((before === null) !== (entry.machineSeq === null) || (before === null) !== (entry.prevOfMachine === null))
		return flaw(entry, "machine-chain", "it is half of a machine and half of the shop");
	if (before === null) return null;
	if (entry.machineSeq !== before.seq + 1)
		return flaw(entry, "machine-gap", `it is number ${entry.machineSeq} of its machine, and the one before it is number ${before.seq}`);
	if (entry.prevOfMachine === before.hash) return null;
	return flaw(
		entry,
		"machine-chain",
		before.seq === 0
			? "it is the first of its machine and names one before it"
			: `it does not follow on number ${before.seq} of its machine: it names another hash`,
	);
}

/** What is wrong between an entry's seal and what is kept under it, or null. Something that was erased is not wrong. */
export function sealFlaw(entry: Pick<StoredEntry, "seq" | "seal">, kept: StoredSeal | null): Flaw | null {
	if (entry.seal === null) return kept === null ? null : flaw(entry, "seal-extra", "something is kept as withheld that it never sealed");
	if (kept === null) return flaw(entry, "seal-missing", "what it withholds is missing");
	if (kept.salt === null && kept.withheld === null) return null;
	if (kept.salt === null || kept.withheld === null || !/^[0-9a-f]{32}$/.test(kept.salt))
		return flaw(entry, "seal-broken", "its salt is not one");
	if (!isCanonical(kept.withheld)) return flaw(entry, "seal-broken", "what it withholds is not written in the canonical form");
	return sealDigest(kept.salt, kept.withheld) === entry.seal
		? null
		: flaw(entry, "seal-broken", "what it withholds does not match its seal");
}

const isImage = (value: unknown): value is Image => typeof value === "object" && value !== null && !Array.isArray(value);

/** The open part of an entry, or null when it has not the shape of one. */
export function openPart(text: string): OpenPart | null {
	const value = readJson(text);
	if (!isImage(value)) return null;
	const { deed, facts, rows } = value;
	if (typeof deed !== "string" || !isImage(facts) || !isImage(rows) || !Object.values(rows).every(isImage)) return null;
	return { deed, facts, rows: rows as OpenPart["rows"] };
}

/** Row images under a seal; empty when it was erased or withholds nothing. */
export function withheldRows(kept: StoredSeal | null): Readonly<Record<string, Image>> {
	if (kept?.withheld == null) return {};
	const value = readJson(kept.withheld);
	const rows = isImage(value) ? value.rows : undefined;
	return isImage(rows) ? (rows as Record<string, Image>) : {};
}
