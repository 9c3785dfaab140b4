// What the database refused, as a value with a sentence. The rules decide before the database does; these are the last
// line, and what another phone did in the same second.

import type { Refusal } from "@/lib/core/result";
import { Prisma } from "@/lib/generated/prisma/client";

/** A trigger's text: 'code: what always holds'. */
const RULE = /\b([a-z]+(?:-[a-z]+)+): ([a-z].+)$/m;

const UNIQUE: readonly { readonly on: RegExp; readonly refusal: Refusal }[] = [
	{
		on: /Part_positionId|Part\.positionId|Fitting_one_open_a_position/,
		refusal: { code: "position-taken", say: "Another part is already in that position. Take it out first." },
	},
	{
		on: /Fitting_one_open_a_part|Fitting\.partId/,
		refusal: { code: "part-elsewhere", say: "The part is already fitted somewhere else. Take it out there first." },
	},
	{
		on: /Machine\.number/,
		refusal: {
			code: "number-taken",
			say: "Another machine has that number. Take the next free one.",
			fields: { number: "Taken by another machine." },
		},
	},
	{ on: /Tag\./, refusal: { code: "tag-taken", say: "That tag is on another part or bag. Use the next free one." } },
	{
		on: /Position\.machineId|Position\.mark/,
		refusal: { code: "mark-taken", say: "Another position of this machine has that mark. Choose another." },
	},
	{
		on: /Person\.initials/,
		refusal: {
			code: "initials-taken",
			say: "Somebody else has those initials. Choose others.",
			fields: { initials: "Taken by somebody else." },
		},
	},
	{ on: /Work\.personId|Work_one_clock/, refusal: { code: "clock-runs", say: "This person's clock runs already. Stop it first." } },
	{
		on: /Location\./,
		refusal: {
			code: "name-taken",
			say: "There is a place of that name here already. Choose another name.",
			fields: { name: "Taken here." },
		},
	},
];

/**
 * "number-taken" when another process took the entry number (decide again), a refusal when a rule of the shop was hit.
 * Anything else is a bug and is thrown on.
 */
export function refusalOfDatabase(error: unknown): "number-taken" | Refusal {
	const text = wholeText(error);
	if (/Entry\.seq|Entry\.hash|entry-gap|entry-chain|UNIQUE.*Entry/.test(text)) return "number-taken";
	if (/Receipt\.deed/.test(text)) return "number-taken";
	const rule = RULE.exec(text);
	if (rule?.[1] && rule[2]) return { code: rule[1], say: `Not written: ${rule[2]}.` };
	if (/SQLITE_BUSY|database is locked|SocketTimeout|P1008/.test(text)) {
		return { code: "busy", say: "Another program holds the shop's book. Nothing was changed; close it there and try again." };
	}
	if (/SQLITE_FULL|disk is full/.test(text))
		return { code: "disk-full", say: "The disk is full. Nothing was changed; make room and try again." };
	for (const { on, refusal } of UNIQUE) if (on.test(text)) return refusal;
	throw error;
}

function wholeText(error: unknown): string {
	if (error instanceof Prisma.PrismaClientKnownRequestError)
		return `${error.code} ${error.message} ${JSON.stringify(error.meta ?? {})}`.replaceAll("\\n", "\n");
	return error instanceof Error ? `${error.message} ${JSON.stringify(error)}` : String(error);
}
