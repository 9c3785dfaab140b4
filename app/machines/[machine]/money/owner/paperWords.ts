// How papers for the owner are called, how they stand, and the terms that a new one begins with.

import type { Means } from "@/app/ui/means";
import type { PaperKind, PaperState } from "@/lib/owner/account";
import { PAPER_KIND_WORDS } from "@/lib/owner/schema";

/** "Quote 3". */
export const paperName = (paper: { readonly kind: PaperKind; readonly number: number }): string =>
	`${PAPER_KIND_WORDS[paper.kind]} ${paper.number}`;

const ASKED: Readonly<Record<PaperState, { readonly words: string; readonly means: Means }>> = {
	given: { words: "waits for the owner's answer", means: "wait" },
	agreed: { words: "agreed", means: "original" },
	refused: { words: "refused", means: "stop" },
	withdrawn: { words: "taken back", means: "plain" },
};
const STATED: typeof ASKED = {
	...ASKED,
	given: { words: "given", means: "wait" },
	agreed: { words: "accepted", means: "original" },
	refused: { words: "disputed", means: "stop" },
};

export const paperStands = ({ kind, state }: { readonly kind: PaperKind; readonly state: PaperState }) =>
	(kind === "statement" ? STATED : ASKED)[state];

/** What the day on a paper means. */
export const UNTIL_WORDS: Readonly<Record<PaperKind, string>> = {
	quote: "Valid until",
	more: "Answer wanted until",
	statement: "Due until",
};

/** What a new paper's terms begin with; the desk changes them, and what was given stays as it was. */
export const FIRST_TERMS: Readonly<Record<PaperKind, string>> = {
	quote:
		"Labour is charged by the time it takes, at our rates of the day it is done; what is written here is what we expect. We ask you before the work comes to more than the limit. Original parts stay yours and with the machine.",
	more: "We go on with this only once you have agreed. The rest of the work goes on as it was agreed.",
	statement: "What was paid so far is taken off. Please ask us about any line that is not clear.",
};
