// How long undoing takes, as it is read. Pure.

import { formatMinutes, formatWait } from "@/lib/core/minutes";

type UndoTime = {
	readonly undoLow: number | null;
	readonly undoLikely: number | null;
	readonly undoHigh: number | null;
	readonly undoWait: number | null;
};

/** "40 min" and "25 min to 1 h 10, then wait 1 day"; null where nothing is known or nothing can be undone. */
export function undoTime({ undoLow, undoLikely, undoHigh, undoWait }: UndoTime): { readonly likely: string; readonly more: string } | null {
	if (undoLow === null || undoLikely === null || undoHigh === null) return null;
	const wait = undoWait ? `, then wait ${formatWait(undoWait)}` : "";
	return { likely: formatMinutes(undoLikely), more: `${formatMinutes(undoLow)} to ${formatMinutes(undoHigh)}${wait}` };
}
