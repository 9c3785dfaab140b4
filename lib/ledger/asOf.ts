// A machine's build at any past instant, from its entries alone. Pure: a fold over the row images that entries carry.
//
// Two times are kept apart. `at` asks what was so at that instant, by all that is known now, later knowledge included.
// Handing over only the entries up to some instant asks what the book said then.

import type { Origin, PlaceKind, Works } from "@/lib/generated/prisma/enums";
import type { TableName, Tables } from "@/lib/ledger/rows";

/** One entry, as far as this reads it. */
export type EntryRows = {
	readonly at: string;
	/** "Part/0193..." to the row as it stood after the entry. */
	readonly rows: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
};

/** Every row that the entries describe, as they left it, and the way each part went. */
export type Story = {
	readonly latest: ReadonlyMap<TableName, ReadonlyMap<string, Readonly<Record<string, unknown>>>>;
	/** Row key to the instant of the first entry that describes it. */
	readonly firstAt: ReadonlyMap<string, string>;
	/** Part id to its images, in the order of the entries. */
	readonly partImages: ReadonlyMap<string, readonly Image<"Part">[]>;
};

/** A row without the columns that are withheld. */
type Image<T extends TableName> = Omit<Tables[T], "entry">;

/** Folds entries, in the order of their numbers, into what they came to. */
export function storyOf(entries: Iterable<EntryRows>): Story {
	const latest = new Map<TableName, Map<string, Readonly<Record<string, unknown>>>>();
	const firstAt = new Map<string, string>();
	const partImages = new Map<string, Image<"Part">[]>();
	for (const { at, rows } of entries) {
		for (const [key, image] of Object.entries(rows)) {
			const cut = key.indexOf("/");
			const table = key.slice(0, cut) as TableName;
			const id = key.slice(cut + 1);
			const ofTable = latest.get(table) ?? new Map<string, Readonly<Record<string, unknown>>>();
			latest.set(table, ofTable);
			ofTable.set(id, image);
			if (!firstAt.has(key)) firstAt.set(key, at);
			if (table === "Part") {
				const images = partImages.get(id) ?? [];
				partImages.set(id, images);
				images.push(image as Image<"Part">);
			}
		}
	}
	return { latest, firstAt, partImages };
}

export type PartAsOf = {
	readonly id: string;
	readonly tag: string | null;
	readonly name: string;
	readonly count: number;
	readonly origin: Origin;
	readonly works: Works;
};

export type PositionAsOf = {
	readonly id: string;
	readonly mark: string;
	readonly name: string;
	readonly area: string;
	readonly kind: "seat" | "place";
	readonly part: PartAsOf | null;
	/** What was known of an empty position: never seen, found missing, or just empty. Null where it holds a part or is a place. */
	readonly empty: "empty" | "missing" | "unseen" | null;
	/** Positions on the part. */
	readonly hosts: readonly PositionAsOf[];
};

export type LooseAsOf = {
	readonly part: PartAsOf;
	readonly place: PlaceKind;
	/** "in bag 12-0201-J", "on Shelf 3", "out: ...". */
	readonly where: string;
	readonly hosts: readonly PositionAsOf[];
};

export type BuildAsOf = {
	readonly number: number;
	readonly name: string;
	/** The day on which the machine came. */
	readonly receivedDay: string;
	readonly positions: readonly PositionAsOf[];
	/** Parts of the machine that were not fitted in it. */
	readonly loose: readonly LooseAsOf[];
};

const rowsOf = <T extends TableName>(story: Story, table: T): Image<T>[] =>
	[...(story.latest.get(table)?.values() ?? [])] as unknown as Image<T>[];
const rowOf = <T extends TableName>(story: Story, table: T, id: string): Image<T> | null =>
	(story.latest.get(table)?.get(id) as Image<T> | undefined) ?? null;

/** The build of a machine as it was at an instant, or null when the entries do not know the machine. */
export function buildAsOf(story: Story, machineId: string, at: string): BuildAsOf | null {
	const machine = rowOf(story, "Machine", machineId);
	if (!machine) return null;

	const tagOf = new Map<string, string>();
	for (const tag of rowsOf(story, "Tag")) {
		const holder = tag.partId ?? tag.bagId;
		if (holder) tagOf.set(holder, tag.id);
	}
	const fittings = rowsOf(story, "Fitting").filter((fitting) => fitting.fromAt <= at && (fitting.untilAt === null || fitting.untilAt > at));
	const partAt = new Map(fittings.map((fitting) => [fitting.positionId, fitting.partId]));
	const fitted = new Set(partAt.values());
	const findings = rowsOf(story, "Finding")
		.filter((finding) => finding.at <= at)
		.sort((a, b) => (a.at < b.at ? -1 : 1));
	const found = new Map(findings.map((finding) => [finding.positionId, finding.state]));

	const existed = (position: Image<"Position">): boolean =>
		position.asFound === "yes" || (story.firstAt.get(`Position/${position.id}`) ?? "") <= at || partAt.has(position.id);
	const positions = rowsOf(story, "Position")
		.filter((position) => position.machineId === machineId && existed(position))
		.sort((a, b) => a.rank - b.rank || (a.mark < b.mark ? -1 : 1));

	const part = (id: string): PartAsOf | null => {
		const image = rowOf(story, "Part", id);
		return image && { id, tag: tagOf.get(id) ?? null, name: image.name, count: image.count, origin: image.origin, works: image.works };
	};
	const emptiness = (position: Image<"Position">): PositionAsOf["empty"] => {
		if (position.kind === "place" || partAt.has(position.id)) return null;
		const state = found.get(position.id);
		return state === "unseen" || state === "missing" ? state : "empty";
	};
	const hostedBy = (hostId: string | null): PositionAsOf[] =>
		positions
			.filter((position) => position.hostId === hostId)
			.map((position) => {
				const partId = partAt.get(position.id) ?? null;
				return {
					id: position.id,
					mark: position.mark,
					name: position.name,
					area: position.area,
					kind: position.kind,
					part: partId === null ? null : part(partId),
					empty: emptiness(position),
					hosts: partId === null ? [] : hostedBy(partId),
				};
			});

	const loose = rowsOf(story, "Part").flatMap((row): LooseAsOf[] => {
		const then = imageAt(story, row.id, at);
		const its = part(row.id);
		if (row.machineId !== machineId || fitted.has(row.id) || !then || !its || then.place === "void" || then.place === "fitted") return [];
		return [{ part: its, place: then.place, where: whereInWords(story, then, tagOf), hosts: hostedBy(row.id) }];
	});
	loose.sort((a, b) => ((a.part.tag ?? a.part.name) < (b.part.tag ?? b.part.name) ? -1 : 1));
	return { number: machine.number, name: machine.name, receivedDay: machine.receivedDay, positions: hostedBy(null), loose };
}

/** The last image of a part that is about a place it was in by then; null before it came. */
function imageAt(story: Story, partId: string, at: string): Image<"Part"> | null {
	return story.partImages.get(partId)?.findLast((image) => image.sinceAt <= at) ?? null;
}

function whereInWords(story: Story, part: Image<"Part">, tagOf: ReadonlyMap<string, string>): string {
	switch (part.place) {
		case "bag": {
			const tag = part.bagId ? tagOf.get(part.bagId) : undefined;
			return tag ? `in bag ${tag}` : "in a bag of the shop";
		}
		case "location": {
			const location = part.locationId ? rowOf(story, "Location", part.locationId) : null;
			return location ? `at ${location.name}` : "at a place in the shop";
		}
		case "bench":
			return "on the bench";
		case "fitted":
			return "fitted elsewhere";
		case "out":
		case "sold":
		case "lost":
		case "scrapped":
		case "void":
			return part.placeWhy === "" ? part.place : `${part.place}: ${part.placeWhy}`;
	}
}
