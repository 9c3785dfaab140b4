// The captures of the shop that wait for their words, with what is needed to say them.

import { NEAR_MINUTES, type Offer, offersNear, type RanThen } from "@/lib/captures/nearInTime";
import { CAPTURE_SHOWN, type CaptureRow, flatCapture, mayHaveComeOut } from "@/lib/captures/queries";
import { WAITS_FOR_WORDS } from "@/lib/captures/waiting";
import { addMinutes, type Instant, instant } from "@/lib/core/instants";
import type { Reader } from "@/lib/db/store";

export type LaterCapture = CaptureRow & {
	readonly machine: { readonly id: string; readonly number: number; readonly name: string } | null;
	/** Who took it. */
	readonly by: string;
	/** What a scanned tag hangs on. */
	readonly tagOf: string | null;
	/** What it probably shows, by what went on then. */
	readonly offers: readonly Offer[];
	/** The mark of the position shown, or of the part shown, where that still holds its part. */
	readonly mayComeOut: string | null;
};

/** Whose: those of one machine, those of none, or all of the shop. */
export type LaterOf = { readonly machineId?: string | null };

const waiting = ({ machineId }: LaterOf) => ({
	...WAITS_FOR_WORDS,
	...(machineId === undefined ? {} : { machineId }),
});

/** How many wait. */
export const laterCounted = (read: Reader, of: LaterOf): Promise<number> => read.capture.count({ where: waiting(of) });

/** A page of them, the oldest first: the order in which they are best remembered. `after` is the last of the page before. */
export async function laterPage(
	read: Reader,
	of: LaterOf,
	{ take, after }: { take: number; after?: string },
): Promise<{ captures: LaterCapture[]; more: boolean }> {
	// By its time and not as a cursor: the last of the page before may have its words by now.
	const last = after === undefined ? null : await read.capture.findUnique({ where: { id: after }, select: { id: true, takenAt: true } });
	const rows = await read.capture.findMany({
		where: {
			...waiting(of),
			...(last ? { OR: [{ takenAt: { gt: last.takenAt } }, { takenAt: last.takenAt, id: { gt: last.id } }] } : {}),
		},
		orderBy: [{ takenAt: "asc" }, { id: "asc" }],
		take: take + 1,
		select: { ...CAPTURE_SHOWN, entry: true, machine: { select: { id: true, number: true, name: true } } },
	});
	const shown = rows.slice(0, take);
	const takers = await whoTook(read, shown);
	const captures = await Promise.all(
		shown.map(async ({ entry: _, machine, ...row }): Promise<LaterCapture> => {
			const [offers, tagOf, holds] = await Promise.all([
				machine === null ? [] : nearOffers(read, machine.id, instant(row.takenAt)),
				row.tag === null ? null : hangsOn(read, row.tag),
				mayHaveComeOut(read, { positionId: row.position?.id ?? null, partId: row.part?.id ?? null }),
			]);
			return { ...flatCapture(row), machine, by: takers.get(row.id) ?? "someone", offers, tagOf, mayComeOut: holds?.mark ?? null };
		}),
	);
	return { captures, more: rows.length > take };
}

/** Who made the first entry of each capture, by its id. */
async function whoTook(read: Reader, rows: readonly { id: string; entry: number }[]): Promise<Map<string, string>> {
	const first = await read.entry.findMany({
		where: { OR: [{ subject: { in: rows.map(({ id }) => `Capture/${id}`) } }, { seq: { in: rows.map(({ entry }) => entry) } }] },
		orderBy: { seq: "desc" },
		select: { seq: true, subject: true, actor: true },
	});
	const people = await read.person.findMany({
		where: { id: { in: [...new Set(first.map(({ actor }) => actor))] } },
		select: { id: true, name: true },
	});
	const nameOf = new Map(people.map(({ id, name }) => [id, name]));
	const actorOf = new Map<string, string>();
	for (const { id, entry } of rows) {
		const own = first.filter(({ subject }) => subject === `Capture/${id}`).at(-1) ?? first.find(({ seq }) => seq === entry);
		if (own) actorOf.set(id, nameOf.get(own.actor) ?? "someone");
	}
	return actorOf;
}

/** The steps that ran when it was taken, and what came out last before and first after. */
async function nearOffers(read: Reader, machineId: string, takenAt: Instant): Promise<Offer[]> {
	const select = {
		untilAt: true,
		position: { select: { id: true, mark: true, name: true } },
		part: { select: { id: true, name: true } },
	} as const;
	const [works, before, after] = await Promise.all([
		read.work.findMany({
			where: { machineId, how: "timed", startedAt: { lte: takenAt }, OR: [{ endedAt: null }, { endedAt: { gte: takenAt } }] },
			orderBy: { startedAt: "desc" },
			take: 4,
			select: { step: { select: { id: true, number: true, title: true } } },
		}),
		read.fitting.findFirst({
			where: { machineId, untilAt: { lte: takenAt, gte: addMinutes(takenAt, -NEAR_MINUTES) } },
			orderBy: [{ untilAt: "desc" }, { id: "desc" }],
			select,
		}),
		read.fitting.findFirst({
			where: { machineId, untilAt: { gt: takenAt, lte: addMinutes(takenAt, NEAR_MINUTES) } },
			orderBy: [{ untilAt: "asc" }, { id: "asc" }],
			select,
		}),
	]);
	const ran = new Map(works.map(({ step }): [string, RanThen] => [step.id, { stepId: step.id, number: step.number, title: step.title }]));
	const out = [before, after].flatMap((fitting) =>
		fitting?.untilAt
			? [
					{
						at: instant(fitting.untilAt),
						positionId: fitting.position.id,
						mark: fitting.position.mark,
						position: fitting.position.name,
						partId: fitting.part.id,
						part: fitting.part.name,
					},
				]
			: [],
	);
	return offersNear(takenAt, [...ran.values()], out);
}

/** The name of what a tag hangs on, or null when it is free. */
async function hangsOn(read: Reader, tag: string): Promise<string | null> {
	const [own, place] = await Promise.all([
		read.tag.findUnique({ where: { id: tag }, select: { part: { select: { name: true } }, bag: { select: { words: true } } } }),
		read.placeTag.findUnique({ where: { id: tag }, select: { location: { select: { name: true } } } }),
	]);
	if (own?.part) return own.part.name;
	if (own?.bag) return own.bag.words === "" ? "a bag" : `bag, ${own.bag.words}`;
	return place ? place.location.name : null;
}
