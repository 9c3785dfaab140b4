import type { Shown } from "@/lib/captures/rules";
import { WAITS_FOR_WORDS } from "@/lib/captures/waiting";
import type { Reader } from "@/lib/db/store";
import type { CaptureKind } from "@/lib/generated/prisma/enums";

/** A photo, drawing or paper with what it shows. */
export type CaptureRow = {
	readonly id: string;
	readonly kind: CaptureKind;
	readonly takenAt: string;
	readonly words: string;
	/** Null while it has no words. */
	readonly wordsAt: string | null;
	readonly tag: string | null;
	readonly file: { readonly id: string; readonly bytes: number; readonly mediaType: string; readonly name: string } | null;
	readonly position: { readonly id: string; readonly mark: string; readonly name: string } | null;
	readonly part: { readonly id: string; readonly name: string; readonly tag: string | null } | null;
	readonly bag: { readonly id: string; readonly words: string; readonly tag: string | null } | null;
	readonly step: { readonly id: string; readonly number: number; readonly title: string } | null;
};

/** Whose captures: those filed under a machine, or those that show one thing. */
export type CapturesOf =
	| { readonly machineId: string }
	| { readonly positionId: string }
	| { readonly partId: string }
	| { readonly bagId: string }
	| { readonly stepId: string };

export type CapturePage = {
	/** At most this many. */
	readonly take: number;
	/** The id of the last one of the page before. */
	readonly after?: string;
};

/** What is read of a capture to show it; `flatCapture` makes a row of it. */
export const CAPTURE_SHOWN = {
	id: true,
	kind: true,
	takenAt: true,
	words: true,
	wordsAt: true,
	tag: true,
	file: { select: { id: true, bytes: true, mediaType: true, name: true } },
	position: { select: { id: true, mark: true, name: true } },
	part: { select: { id: true, name: true, tag: { select: { id: true } } } },
	bag: { select: { id: true, words: true, tag: { select: { id: true } } } },
	step: { select: { id: true, number: true, title: true } },
} as const;

async function captures(read: Reader, of: CapturesOf, kinds: CaptureKind[], { take, after }: CapturePage): Promise<CaptureRow[]> {
	const rows = await read.capture.findMany({
		where: { ...of, kind: { in: kinds }, stands: "yes" },
		orderBy: [{ takenAt: "desc" }, { id: "desc" }],
		take,
		...(after === undefined ? {} : { cursor: { id: after }, skip: 1 }),
		select: CAPTURE_SHOWN,
	});
	return rows.map(flatCapture);
}

type Found = Omit<CaptureRow, "part" | "bag"> & {
	readonly part: { readonly id: string; readonly name: string; readonly tag: { readonly id: string } | null } | null;
	readonly bag: { readonly id: string; readonly words: string; readonly tag: { readonly id: string } | null } | null;
};

export const flatCapture = (row: Found): CaptureRow => ({
	...row,
	part: row.part && { ...row.part, tag: row.part.tag?.id ?? null },
	bag: row.bag && { ...row.bag, tag: row.bag.tag?.id ?? null },
});

/** Photos and drawings, newest first; those that were withdrawn are left out. */
export const photosOf = (read: Reader, of: CapturesOf, page: CapturePage): Promise<CaptureRow[]> =>
	captures(read, of, ["photo", "drawing"], page);

/** Papers, newest first; those that were withdrawn are left out. */
export const papersOf = (read: Reader, of: CapturesOf, page: CapturePage): Promise<CaptureRow[]> => captures(read, of, ["paper"], page);

/** How many photos and drawings, and how many papers, a machine has; and how many of these and of its scanned tags wait for words. */
export async function capturesCounted(read: Reader, machineId: string): Promise<{ photos: number; papers: number; withoutWords: number }> {
	const standing = { machineId, stands: "yes" } as const;
	const [photos, papers, withoutWords] = await Promise.all([
		read.capture.count({ where: { ...standing, kind: { in: ["photo", "drawing"] } } }),
		read.capture.count({ where: { ...standing, kind: "paper" } }),
		read.capture.count({ where: { machineId, ...WAITS_FOR_WORDS } }),
	]);
	return { photos, papers, withoutWords };
}

/** One capture, standing or withdrawn, or null. */
export async function captureById(
	read: Reader,
	id: string,
): Promise<(CaptureRow & { machineId: string | null; stands: "yes" | "no" }) | null> {
	const row = await read.capture.findUnique({ where: { id }, select: { ...CAPTURE_SHOWN, machineId: true, stands: true } });
	return row && { ...flatCapture(row), machineId: row.machineId, stands: row.stands };
}

/** Ids of what a capture is to show. */
export type ShownIds = {
	readonly positionId: string | null;
	readonly partId: string | null;
	readonly bagId: string | null;
	readonly stepId: string | null;
};

/** What the ids stand for; "unknown" names the first that stands for nothing. */
export async function shownBy(
	read: Reader,
	{ positionId, partId, bagId, stepId }: ShownIds,
): Promise<{ shown: Shown; unknown: string | null }> {
	const [position, part, bag, step] = await Promise.all([
		positionId === null
			? null
			: read.position.findUnique({ where: { id: positionId }, select: { machineId: true, name: true, mark: true } }),
		partId === null ? null : read.part.findUnique({ where: { id: partId }, select: { name: true, tag: { select: { id: true } } } }),
		bagId === null
			? null
			: read.bag.findUnique({ where: { id: bagId }, select: { machineId: true, words: true, tag: { select: { id: true } } } }),
		stepId === null ? null : read.step.findUnique({ where: { id: stepId }, select: { machineId: true, number: true, title: true } }),
	]);
	const unknown =
		(positionId !== null && !position && "position") ||
		(partId !== null && !part && "part") ||
		(bagId !== null && !bag && "bag") ||
		(stepId !== null && !step && "step") ||
		null;
	return {
		shown: {
			position,
			part: part && { name: part.name, tag: part.tag?.id ?? null },
			bag: bag && { machineId: bag.machineId, words: bag.words, tag: bag.tag?.id ?? null },
			step,
		},
		unknown,
	};
}

/** The position that still holds what a photo shows: it may be that the photo was taken as it came out. */
export async function mayHaveComeOut(
	read: Reader,
	{ positionId, partId }: { readonly positionId: string | null; readonly partId: string | null },
): Promise<{ readonly mark: string; readonly name: string } | null> {
	if (positionId === null && partId === null) return null;
	return read.position.findFirst({
		where: { part: positionId === null ? { id: partId ?? "" } : { isNot: null }, ...(positionId === null ? {} : { id: positionId }) },
		select: { mark: true, name: true },
	});
}
