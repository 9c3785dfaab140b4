// Fixings and bags as the forms take them.

import type { Bag, Fixing, Position } from "@/seed/data/types";

/** "hex screw": the kind of a threaded thing goes with its head; "split pin": the thing itself is what a hand looks for. */
const HEADED = /^(?:(hex|grub|shoulder|clamp|knurled|carriage|clevis|castle) )?(screw|bolt|nut)$/;

export type SaidFixing = {
	readonly count: number;
	readonly thread: string;
	readonly length: string;
	readonly head: string;
	readonly drive: string;
	readonly differs: string;
	readonly note: string;
};

/** A fixing of the data in the fields of the form. */
export function asSaid(fixing: Fixing): SaidFixing {
	const headed = HEADED.exec(fixing.what);
	const threaded = headed !== null && headed[2] !== "nut" && fixing.thread !== undefined;
	return {
		count: fixing.count,
		thread: threaded ? (fixing.thread ?? "") : [fixing.what, fixing.thread].filter(Boolean).join(" "),
		length: fixing.length ?? "",
		head: fixing.head ?? (threaded ? (headed?.[1] ?? "") : ""),
		drive: fixing.drive ?? "",
		differs: fixing.differs ?? "",
		note: fixing.note ?? "",
	};
}

export type PackedFixing = { readonly fixing: Fixing; readonly bag: number | null };

/** In which bag each fixing of a position was packed in a step; null for those that stayed where they were. */
export function packedIn(position: Position, bags: readonly Bag[], step: string): PackedFixing[] {
	const contents = bags
		.filter((bag) => bag.packedIn === step)
		.flatMap((bag) =>
			bag.contents.filter((content) => content.fixingOf === position.id).map((content) => ({ ...content, bag: bag.number })),
		);
	return position.fixings.map((fixing) => {
		// The same count, else (one of two screws sheared) the same words.
		const place = contents.findIndex((content) => content.count === fixing.count);
		const found = place >= 0 ? contents.splice(place, 1)[0] : undefined;
		return { fixing, bag: found?.bag ?? null };
	});
}

/** What of a position's fixings a bag got fewer of than there were: the bag, how many it got, and why. */
export function partlyPacked(
	position: Position,
	bags: readonly Bag[],
	step: string,
): { readonly bag: number; readonly count: number; readonly words: string } | null {
	for (const bag of bags)
		for (const content of bag.contents)
			if (bag.packedIn === step && content.fixingOf === position.id && !position.fixings.some(({ count }) => count === content.count))
				return { bag: bag.number, count: content.count, words: content.words };
	return null;
}

/** The caution on a bag: what a hand must know, in one line. */
export function cautionOf(bag: Bag, withNotes: boolean): string {
	const words = [bag.kind === "open-bag" ? "open bag" : "", bag.wayUp ?? "", ...bag.hazards, withNotes ? (bag.notes ?? "") : ""];
	let caution = "";
	for (const word of words) {
		const longer = [caution, word].filter(Boolean).join("; ");
		if (longer.length <= 200) caution = longer;
	}
	return caution;
}
