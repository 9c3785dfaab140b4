import { mayAlter, mayUndo } from "@/lib/alterations/rules";
import { type MarkUndone, type RecordAlteration, type SayFast, UNDO_WORDS, type VoidAlteration } from "@/lib/alterations/schema";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import type { Origin } from "@/lib/generated/prisma/enums";
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
		const target = await targetOf(read, input);
		if (!target.ok) return target;
		const { part, position } = target.value;
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

type Target = {
	readonly part: { readonly name: string; readonly origin: Origin } | null;
	readonly position: { readonly name: string } | null;
};

/** What is altered, as the form chose it; it is of the machine whose alteration this is, or fitted in it. */
async function targetOf(read: Reader, input: RecordAlteration): Promise<Result<Target>> {
	const at = (field: "partId" | "positionId", code: string, say: string) => refuse(code, say, { fields: { [field]: say } });
	const part = input.partId
		? await read.part.findUnique({
				where: { id: input.partId },
				select: { name: true, origin: true, place: true, machineId: true, position: { select: { machineId: true } } },
			})
		: null;
	const position = input.positionId
		? await read.position.findUnique({ where: { id: input.positionId }, select: { name: true, machineId: true } })
		: null;
	if ((input.partId && !part) || (input.positionId && !position))
		return refuse("no-such-thing", "What was changed is not in the book. Choose it again.");
	if (part?.place === "void") return at("partId", "is-void", `${part.name} was entered in error. Choose another part.`);
	if (part && part.machineId !== input.machineId && part.position?.machineId !== input.machineId)
		return at(
			"partId",
			"other-machine",
			`${part.name} belongs to another machine and is not fitted in this one. Choose a part of this machine.`,
		);
	if (position && position.machineId !== input.machineId)
		return at("positionId", "other-machine", `${position.name} is a position of another machine. Choose one of this machine.`);
	return ok({ part, position });
}

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

/** Says that an alteration cannot be undone after all: it was tried. */
export const sayFast = (input: SayFast, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const before = await read.alteration.findUnique({ where: { id: input.alterationId } });
		if (!before) return NONE;
		const may = mayUndo(before);
		if (!may.ok) return may;
		return ok(
			deed(
				before.machineId,
				"alteration.fast",
				{ table: "Alteration", id: before.id },
				{ say: `Could not be undone after all: ${before.what}. ${input.why}` },
				[
					change("Alteration", before, {
						undo: "never",
						undoLow: null,
						undoLikely: null,
						undoHigh: null,
						undoWait: null,
						reason: before.reason ? `${before.reason}; could not be undone: ${input.why}` : `could not be undone: ${input.why}`,
					}),
				],
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
