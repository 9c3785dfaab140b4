import type { ScanAnswer } from "@/app/ui/scanField";
import type { Refusal } from "@/lib/core/result";

/** A refusal of the book as the scan field says it, with the tags that may be meant. */
export function notTaken({ say, facts }: Refusal): ScanAnswer {
	const meant = facts?.meant;
	return { ok: false, say, meant: Array.isArray(meant) ? meant.filter((tag): tag is string => typeof tag === "string") : [] };
}
