// Carrying a reversal out: what its row asks, what can be done next, what must wait. Pure.

import { dayOf } from "@/lib/core/days";
import { addMinutes, type Instant, instant } from "@/lib/core/instants";
import { frozenSchema, idsSchema, leftOutSchema } from "@/lib/reversal/carryingOut/schema";
import type { Operation, Plan } from "@/lib/reversal/plan";
import type { Asked } from "@/lib/reversal/scope";

/** The question as the book keeps it. */
export type AskedColumns = {
	readonly target: "asFound" | "asMade" | "moment";
	readonly targetAt: string | null;
	readonly conversionIds: string;
	readonly positionIds: string;
	readonly frozen: string;
	readonly leftOut: string;
	readonly reason: string;
};

/** What a reversal goes back to, in words. */
export const TARGET_WORDS = { asFound: "as found", asMade: "as made", moment: "an earlier day" } as const;

/** What is asked of the planner by a row. Throws where a row holds what no deed wrote. */
export function askedOf(row: AskedColumns, asFoundAt: Instant | null): Asked {
	return {
		asFoundAt,
		...(row.target === "moment" && row.targetAt !== null ? { at: instant(row.targetAt) } : {}),
		...(row.target === "asMade" ? { asMade: true } : {}),
		conversions: idsSchema.parse(JSON.parse(row.conversionIds)),
		positions: idsSchema.parse(JSON.parse(row.positionIds)),
		frozen: frozenSchema.parse(JSON.parse(row.frozen)),
		leftOut: leftOutSchema.parse(JSON.parse(row.leftOut)),
		...(row.reason ? { reason: row.reason } : {}),
	};
}

/** Operations that wait for no other one: any of them can be done now, by several people at once. The plan's own first one first. */
export function readyIn(plan: Pick<Plan, "operations">): Operation[] {
	const safe = new Set(plan.operations.filter(({ kind }) => kind === "make-safe").map(({ id }) => id));
	return plan.operations.filter(({ kind, after }) => kind !== "make-safe" && kind !== "check" && after.every((id) => safe.has(id)));
}

/** After this long, or on another day, nobody may trust that it is still dead (common practice, no source): the page asks again. */
export const SAFE_MINUTES = 4 * 60;

/** Whether it has to be isolated and proved dead before hands go in: never done, on another day of the shop, or too long ago. */
export const mustMakeSafe = (safeAt: Instant | null, now: Instant, timeZone: string): boolean =>
	safeAt === null || now > addMinutes(safeAt, SAFE_MINUTES) || dayOf(safeAt, timeZone) !== dayOf(now, timeZone);

/** A wait that still runs: glue or paint where an alteration was undone. */
export type Waiting = {
	readonly what: string;
	readonly until: Instant;
	readonly positionId: string | null;
	readonly partId: string | null;
};

/** What was undone and must still rest at `now`, the longest first. */
export function waitsAt(
	undone: readonly {
		readonly what: string;
		readonly undoneAt: string | null;
		readonly undoWait: number | null;
		readonly positionId: string | null;
		readonly partId: string | null;
	}[],
	now: Instant,
): Waiting[] {
	return undone
		.flatMap(({ what, undoneAt, undoWait, positionId, partId }) =>
			undoneAt === null || !undoWait ? [] : [{ what, until: addMinutes(instant(undoneAt), undoWait), positionId, partId }],
		)
		.filter(({ until }) => until > now)
		.sort((a, b) => (a.until < b.until ? 1 : a.until > b.until ? -1 : 0));
}
