import { mayAlter, mayUndo } from "@/lib/alterations/rules";
import { type MarkUndone, type RecordAlteration, UNDO_WORDS, type VoidAlteration } from "@/lib/alterations/schema";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, change, deed } from "@/lib/ledger/rows";

const NONE = refuse("no-such-alteration", "That alteration is not in the book. Load the page again.");

/** Records a lasting change with how it is undone. Gives its id and number in the machine. */
export const recordAlteration = (input: RecordAlteration, env: Env): Promise<Result<{ id: string; number: number }>> => {
	const id = env.newId();
	return record(env, async (read) => {
		const machine = await read.machine.findUnique({ where: { id: input.machineId }, select: { id: true } });
		if (!machine) return refuse("no-such-machine", "That machine is not in the book. Load the page again.");
		const part = input.partId ? await read.part.findUnique({ where: { id: input.partId }, select: { name: true, origin: true } }) : null;
		const position = input.positionId ? await read.position.findUnique({ where: { id: input.positionId }, select: { name: true } }) : null;
		if ((input.partId && !part) || (input.positionId && !position))
			return refuse("no-such-thing", "What was changed is not in the book. Choose it again.");
		const name = part?.name ?? position?.name ?? input.place;
		const may = mayAlter({ name, origin: part?.origin ?? null }, input.undo, input.reason);
		if (!may.ok) return may;
		const last = await read.alteration.findFirst({
			where: { machineId: input.machineId },
			orderBy: { number: "desc" },
			select: { number: true },
		});
		const number = (last?.number ?? 0) + 1;
		const undoable = input.undo !== "never" ? input.undoMinutes : null;
		return ok(
			deed(
				input.machineId,
				"alteration.recorded",
				{ table: "Alteration", id },
				{ say: `Altered ${name}: ${input.what}. Undoing it: ${UNDO_WORDS[input.undo]}.`, number },
				[
					add("Alteration", {
						id,
						machineId: input.machineId,
						number,
						what: input.what,
						partId: input.partId,
						positionId: input.positionId,
						place: input.place || null,
						undo: input.undo,
						undoHow: input.undoHow,
						undoLow: undoable?.low ?? null,
						undoLikely: undoable?.likely ?? null,
						undoHigh: undoable?.high ?? null,
						undoWait: undoable ? input.undoWait : null,
						agreedBy: input.agreedBy || null,
						reason: input.reason,
						state: "done",
						doneAt: input.at ?? env.clock(),
						undoneAt: null,
						stepId: input.stepId,
						conversionId: input.conversionId,
					}),
				],
				{ id, number },
			),
		);
	});
};

/** Says that an alteration was undone, and what is left of it. */
export const markUndone = (input: MarkUndone, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const before = await read.alteration.findUnique({ where: { id: input.alterationId } });
		if (!before) return NONE;
		const may = mayUndo(before);
		if (!may.ok) return may;
		return ok(
			deed(
				before.machineId,
				"alteration.undone",
				{ table: "Alteration", id: before.id },
				{ say: `Undid: ${before.what}.${before.undo === "trace" ? " It leaves a trace." : ""}${input.words ? ` ${input.words}` : ""}` },
				[change("Alteration", before, { state: "undone", undoneAt: input.at ?? env.clock() })],
				null,
			),
		);
	});

/** Takes an alteration back that was entered in error; it stays readable. */
export const voidAlteration = (input: VoidAlteration, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const before = await read.alteration.findUnique({ where: { id: input.alterationId } });
		if (!before) return NONE;
		if (before.state !== "done") return refuse("not-standing", "This alteration does not stand any more.");
		return ok(
			deed(
				before.machineId,
				"alteration.voided",
				{ table: "Alteration", id: before.id },
				{ say: `Entered in error, so it never was: ${before.what}. ${input.why}` },
				[change("Alteration", before, { state: "void", reason: before.reason || input.why })],
				null,
			),
		);
	});
