// What the evening's list hands to the browser.

import type { Choice } from "@/lib/captures/choices";
import type { Offer } from "@/lib/captures/nearInTime";

export type LaterRow = {
	readonly id: string;
	readonly kind: "photo" | "drawing" | "paper" | "tag";
	/** The smaller picture; null for a scanned tag or a document. */
	readonly src: string | null;
	readonly fileName: string | null;
	readonly href: string | null;
	/** "18:05, by Tester". */
	readonly taken: string;
	/** What it is known to show, in words. */
	readonly known: string;
	readonly tag: string | null;
	readonly tagOf: string | null;
	readonly offers: readonly Offer[];
	readonly comesOut: string | null;
};

export type Group = { readonly label: string; readonly options: readonly Choice[] };

export type LaterDay = {
	readonly key: string;
	/** "Monday 2 March", with the machine before it. */
	readonly title: string;
	/** Null for what is of no machine yet. */
	readonly machine: { readonly id: string; readonly number: number } | null;
	readonly rows: readonly LaterRow[];
};
