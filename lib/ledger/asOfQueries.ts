// Reads the entries from which lib/ledger/asOf.ts tells a machine's build.

import { z } from "zod";
import type { Reader } from "@/lib/db/store";
import { type EntryRows, type Story, storyOf } from "@/lib/ledger/asOf";

const PAGE = 500;

const openSchema = z.object({ rows: z.record(z.string(), z.record(z.string(), z.unknown())) });

const readRows = ({ at, open }: { at: string; open: string }): EntryRows => ({ at, rows: openSchema.parse(JSON.parse(open)).rows });

/** What a machine's own entries, and the shop's about its places, tell; only those written by `knownAt` when it is given. */
export async function storyOfMachine(read: Reader, machineId: string, knownAt: string | null): Promise<{ story: Story; entries: number }> {
	const known = knownAt === null ? {} : { at: { lte: knownAt } };
	// A range and not a beginning: that way the index on subject serves it ("0" comes right after "/").
	const places = await read.entry.findMany({
		where: { machine: null, subject: { gte: "Location/", lt: "Location0" }, ...known },
		orderBy: { seq: "asc" },
		select: { at: true, open: true },
	});
	const entries = places.map(readRows);
	for (let after = 0; ; ) {
		const page = await read.entry.findMany({
			where: { machine: machineId, machineSeq: { gt: after }, ...known },
			orderBy: { machineSeq: "asc" },
			take: PAGE,
			select: { at: true, open: true, machineSeq: true },
		});
		entries.push(...page.map(readRows));
		const last = page.at(-1)?.machineSeq ?? null;
		if (page.length < PAGE || last === null) break;
		after = last;
	}
	return { story: storyOf(entries), entries: entries.length - places.length };
}

const shopSchema = z.object({ timeZone: z.string() });

/** The shop's time zone as its entries say it last, or null when no shop was opened. */
export async function timeZoneInLedger(read: Reader): Promise<string | null> {
	const entry = await read.entry.findFirst({ where: { subject: "Shop/shop" }, orderBy: { seq: "desc" }, select: { at: true, open: true } });
	if (!entry) return null;
	return shopSchema.parse(readRows(entry).rows["Shop/shop"]).timeZone;
}
