// What was said of one thing: the entries that it is the subject of.

import type { Reader } from "@/lib/db/store";

const MOST = 40;

/** The last deeds about a row ("Part/…", "Bag/…") as sentences, newest first, with who did them. */
export async function saidOf(read: Reader, subject: string): Promise<{ seq: number; at: string; say: string; by: string }[]> {
	const entries = await read.entry.findMany({
		where: { subject },
		orderBy: { seq: "desc" },
		take: MOST,
		select: { seq: true, at: true, actor: true, open: true },
	});
	const people = await read.person.findMany({
		where: { id: { in: [...new Set(entries.map((entry) => entry.actor))] } },
		select: { id: true, initials: true },
	});
	const initials = new Map(people.map((person) => [person.id, person.initials]));
	return entries.map(({ seq, at, actor, open }) => ({ seq, at, say: sayIn(open), by: initials.get(actor) ?? "" }));
}

function sayIn(open: string): string {
	const body: unknown = JSON.parse(open);
	if (typeof body !== "object" || body === null || !("facts" in body)) return "";
	const { facts } = body;
	return typeof facts === "object" && facts !== null && "say" in facts && typeof facts.say === "string" ? facts.say : "";
}
