// Decides on captures: photos, drawings, papers and scanned tags. Pure.

import { ok, type Result, refuse } from "@/lib/core/result";
import { isPaper, isPicture } from "@/lib/files/mediaTypes";
import type { CaptureKind } from "@/lib/generated/prisma/enums";

/** What a capture is to show, as far as the shop knows it; null where nothing of the kind was named. */
export type Shown = {
	readonly position: { readonly machineId: string; readonly name: string; readonly mark: string } | null;
	readonly part: { readonly name: string; readonly tag: string | null } | null;
	readonly bag: { readonly machineId: string | null; readonly words: string; readonly tag: string | null } | null;
	readonly step: { readonly machineId: string; readonly number: number; readonly title: string } | null;
};

/** A photo or drawing is a picture, a paper a picture or a document, a scanned tag a tag. `mediaType` is null without a file. */
export function mayCapture(kind: CaptureKind, mediaType: string | null, tag: string | null): Result<null> {
	if (kind === "tag") return tag === null ? refuse("no-tag", "The tag was not read. Scan it again, or type it.") : ok(null);
	if (mediaType === null) return refuse("no-file", "There is no picture or paper with it. Choose one and send it again.");
	if (kind === "paper" ? isPicture(mediaType) || isPaper(mediaType) : isPicture(mediaType)) return ok(null);
	return isPaper(mediaType)
		? refuse("not-a-picture", "This is a document and no picture. Keep it as a paper.")
		: refuse("type-not-kept", "This kind of file is kept with its device, under digital items.");
}

/** What is shown belongs to the machine that the capture is filed under. A part may come from another machine. */
export function shownBelongs(machineId: string | null, { position, bag, step }: Shown): Result<null> {
	const elsewhere =
		(position && position.machineId !== machineId && `the position ${position.name}`) ||
		(step && step.machineId !== machineId && `step ${step.number}`) ||
		(bag && bag.machineId !== null && bag.machineId !== machineId && `the bag ${bag.tag ?? bag.words}`);
	if (!elsewhere) return ok(null);
	return refuse("of-another-machine", `It is filed under one machine and shows ${elsewhere} of another. Choose one of this machine.`);
}

const TAKEN: Record<CaptureKind, string> = {
	photo: "Took a photo",
	drawing: "Kept a drawing",
	paper: "Kept a paper",
	tag: "Scanned a tag",
};

const named = (name: string, mark: string | null): string => (mark === null ? name : `${name} (${mark})`);

/** What is shown, in words: "coin door lamp (k05)", or null for the machine as a whole. */
export function shownInWords({ position, part, bag, step }: Shown): string | null {
	const things = [
		...(part ? [named(part.name, part.tag)] : []),
		...(position ? [named(position.name, position.mark)] : []),
		...(bag ? [`bag ${bag.tag ?? bag.words}`] : []),
		...(step ? [`step ${step.number}, ${step.title}`] : []),
	];
	return things.length === 0 ? null : things.join(", ");
}

/** "Took a photo of the coin door lamp (k05): scorched at the top." */
export function capturedInWords(
	kind: CaptureKind,
	shown: Shown,
	more: { words: string; fileName: string | null; tag: string | null },
): string {
	const of = shownInWords(shown);
	const what =
		kind === "tag"
			? `${TAKEN.tag} ${more.tag ?? ""}`.trim()
			: `${TAKEN[kind]}${kind === "paper" && more.fileName ? ` ${more.fileName}` : ""}`;
	const about = of === null ? "" : kind === "tag" ? ` at ${of}` : ` of ${of}`;
	return `${what}${about}${more.words === "" ? "." : `: ${withoutStop(more.words)}.`}`;
}

/** The words without a full stop of their own, cut where a history line would grow too long. */
export function withoutStop(words: string): string {
	const short = words.length > 300 ? `${words.slice(0, 299)}…` : words;
	return short.replace(/[.\s]+$/, "");
}
