import { createHash } from "node:crypto";
import { canonical } from "@/lib/ledger/canonical";

const sha256 = (text: string): string => createHash("sha256").update(text, "utf8").digest("hex");

export type EntryBody = {
	readonly seq: number;
	readonly machine: string | null;
	readonly machineSeq: number | null;
	readonly at: string;
	readonly actor: string;
	readonly action: string;
	readonly subject: string;
	readonly open: unknown;
	readonly seal: string | null;
	readonly prev: string;
	readonly prevOfMachine: string | null;
};
export const entryHash = (entry: EntryBody): string => sha256(canonical(entry));
export const sealOf = (salt: string, withheld: unknown): string =>
	createHash("sha256").update(Buffer.from(salt, "hex")).update(canonical(withheld)).digest("hex");
