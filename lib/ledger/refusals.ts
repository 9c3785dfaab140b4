// What the database refused, as a value with a sentence. The rules decide before the database does; these are the last
// line, and what another phone did in the same second.

import type { Refusal } from "@/lib/core/result";

/** A trigger's text: 'code: what always holds'. */
const RULE = /\b([a-z]+(?:-[a-z]+)+): ([a-z].+)$/;

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

/** A refusal when a rule of the shop was hit, or the disk or another program was in the way. Anything else is a bug and is thrown on. */
export function refusalOfDatabase(error: unknown): Refusal {
	const text = error instanceof Error ? error.message : "";
	const code = error instanceof Error && "code" in error ? String(error.code) : "";
	const rule = RULE.exec(text);
	if (rule?.[1] && rule[2]) return { code: rule[1], say: `Not written: ${rule[2]}.` };
	if (/^SQLITE_(BUSY|LOCKED)/.test(code))
		return { code: "busy", say: "Another program holds the shop's book. Nothing was changed; close it there and try again." };
	if (code === "SQLITE_FULL") return { code: "disk-full", say: "The disk is full. Nothing was changed; make room and try again." };
	if (code.startsWith("SQLITE_CONSTRAINT")) for (const { on, refusal } of UNIQUE) if (on.test(text)) return refusal;
	throw error;
}
