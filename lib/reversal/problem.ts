// What the reversal planner is asked: one machine's positions and parts, its build now and the build it
// should go back to. Format `asfound.reversal-problem/1`. Pure: runs in the browser and on the server.

import { z } from "zod";

export const PROBLEM_FORMAT = "asfound.reversal-problem/1";

/** Ten years of minutes. Anything above is a slip of the keyboard, and sums stay far inside exact numbers. */
const MOST_MINUTES = 5_259_600;

const id = z.string().min(1, "give it an id");
const text = z.string().min(1, "leave the field out when there is nothing to say");
const minutes = z
	.number("give whole minutes")
	.int("give whole minutes, without a fraction")
	.min(0, "minutes cannot be below 0")
	.max(MOST_MINUTES, `minutes cannot be above ${MOST_MINUTES}`);

type ThreePointShape = { readonly low: number; readonly likely: number; readonly high: number };

const inOrder = <T extends ThreePointShape>(value: T, ctx: z.RefinementCtx<T>): void => {
	if (value.likely < value.low) ctx.addIssue({ code: "custom", path: ["likely"], message: "likely cannot be below low" });
	if (value.high < value.likely) ctx.addIssue({ code: "custom", path: ["high"], message: "high cannot be below likely" });
};

/**
 * An object from id to value. Read key by key because zod's own record drops a key such as `__proto__`,
 * and a position of any name must be planned, not lost.
 */
const byId = <T extends z.ZodType>(value: T) =>
	z.unknown().transform((raw, ctx): Readonly<Record<string, z.output<T>>> => {
		if (typeof raw !== "object" || raw === null || Array.isArray(raw)) {
			ctx.addIssue({ code: "custom", message: "give an object from id to value" });
			return z.NEVER;
		}
		const read: [string, z.output<T>][] = [];
		for (const [key, entry] of Object.entries(raw)) {
			const one = value.safeParse(entry);
			if (one.success) read.push([key, one.data]);
			else for (const issue of one.error.issues) ctx.addIssue({ code: "custom", path: [key, ...issue.path], message: issue.message });
		}
		return Object.fromEntries(read);
	});

/** Minutes of labour: at best, most likely, at worst. Whole minutes, low <= likely <= high. */
export const threePointSchema = z.object({ low: minutes, likely: minutes, high: minutes }).superRefine(inOrder);

/** Undoing an alteration: labour, and the minutes to wait afterwards (glue, paint) before anything goes in there. */
const undoSchema = z.object({ low: minutes, likely: minutes, high: minutes, wait: minutes.optional() }).superRefine(inOrder);

export const positionSchema = z.object({
	id,
	name: text.optional(),
	/** The part this position is on; left out for a position of the machine itself. */
	host: id.optional(),
	/** Ways to get at it; left out when there is one way only. */
	sides: z.array(text).min(1, "name at least one side, or leave the field out").optional(),
	area: text.optional(),
	/** Why nothing can be taken out of it or put in: seized, glued, sheared. Then no opening has it. */
	stuck: text.optional(),
});

export const partSchema = z.object({
	id,
	name: text.optional(),
	/** Why it cannot be had: lost, scrapped, sold, out, fitted in another machine. */
	unavailable: text.optional(),
	/** What would make it available again: "finding it", "having it back by 24 December". */
	freedBy: text.optional(),
	/** Parts it can never be fitted together with. */
	excludes: z.array(id).optional(),
	/** What to know when it comes back: "does not work, winding open". */
	condition: text.optional(),
	/** The danger that fitting it would put back: a bridged fuse, a missing earth. */
	danger: text.optional(),
});

export const obstructionSchema = z.object({
	part: id,
	position: id,
	/** The sides it stands in the way of; left out for all of them. */
	sides: z.array(text).min(1, "name at least one side, or leave the field out").optional(),
});

export const alterationSchema = z.object({
	id,
	name: text.optional(),
	position: id.optional(),
	part: id.optional(),
	/** Null: it cannot be undone. */
	undo: undoSchema.nullable(),
	leavesTrace: z.boolean().optional(),
});

export const timesSchema = z.object({ out: threePointSchema.optional(), in: threePointSchema.optional() });

export const problemSchema = z.object({
	format: z.literal(PROBLEM_FORMAT, `this reads "${PROBLEM_FORMAT}"`),
	positions: z.array(positionSchema),
	parts: z.array(partSchema),
	now: byId(id),
	target: byId(id),
	scope: z.array(id).optional(),
	obstructions: z.array(obstructionSchema),
	alterations: z.array(alterationSchema).optional(),
	times: byId(timesSchema).optional(),
	/** Why a danger is put back on purpose. Without it no part with a `danger` is put in. */
	dangerReason: text.optional(),
	/** What it leaves out of the record that it was made of. It is refused with these words, since a plan of a part would be wrong. */
	incomplete: text.optional(),
});

export type ThreePoint = Readonly<z.output<typeof threePointSchema>>;
export type Position = Readonly<z.output<typeof positionSchema>>;
export type Part = Readonly<z.output<typeof partSchema>>;
export type Obstruction = Readonly<z.output<typeof obstructionSchema>>;
export type Alteration = Readonly<z.output<typeof alterationSchema>>;
export type Times = Readonly<z.output<typeof timesSchema>>;

/** A problem that has been read and found consistent (`readProblem`): every id in it is known, no part is in two places. */
export type Problem = {
	readonly format: typeof PROBLEM_FORMAT;
	readonly positions: readonly Position[];
	readonly parts: readonly Part[];
	/** Position to the part in it. An empty position is left out. */
	readonly now: Readonly<Record<string, string>>;
	readonly target: Readonly<Record<string, string>>;
	/** Positions to take back; left out for the whole machine. */
	readonly scope?: readonly string[] | undefined;
	readonly obstructions: readonly Obstruction[];
	readonly alterations?: readonly Alteration[] | undefined;
	readonly times?: Readonly<Record<string, Times>> | undefined;
	readonly dangerReason?: string | undefined;
	/** Only in a problem that was not read yet: `readProblem` refuses it. */
	readonly incomplete?: string | undefined;
};
