// A pin in words, and where it leads.

import type { Pin } from "@/lib/pins/queries";

/** Opens the part that is in the position now, or else the position; a wire or fixing opens the position that it is at. */
export function pinHref({ opens, mark }: Pick<Pin, "opens" | "mark">, base: string): string | undefined {
	if (opens !== null) return `/t/${opens}`;
	return mark === null ? undefined : `${base}/build/${encodeURIComponent(mark)}`;
}

/** "Coin door lamp, k02, Lens carriage 12-0147-K, in its place". */
export const pinInWords = ({ name, mark, part, tag, now, words }: Pick<Pin, "name" | "mark" | "part" | "tag" | "now" | "words">): string =>
	[name, mark, [part === name ? "" : part, tag].filter(Boolean).join(" "), words === name ? "" : words, now].filter(Boolean).join(", ");
