import { ok, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import type { Env } from "@/lib/ledger/env";
import { overMeanwhile, UNSEEN } from "@/lib/ledger/meanwhile";
import { record } from "@/lib/ledger/record";
import { add, change, deed } from "@/lib/ledger/rows";
import { droppedWords, mayBeBoughtWith, mayBecome, wordsAgain } from "@/lib/wanted/rules";
import type { Bought, ChangeWanted, DropWanted, Want, WantAgain } from "@/lib/wanted/schema";

const NOT_WANTED = refuse("no-such-wanted", "That is not in the book. Load the page again.");

/** A step must be one of the machine's own. */
async function stepMissing(read: Reader, stepId: string | null, machineId: string): Promise<Result<never> | null> {
	if (stepId === null || (await read.step.count({ where: { id: stepId, machineId } })) > 0) return null;
	const say = "That step is not one of this machine. Choose again.";
	return refuse("no-such-step", say, { fields: { stepId: say } });
}

/** Says that something will have to be bought for a machine. Gives its id. */
export const want = (input: Want, env: Env): Promise<Result<string>> => {
	const id = env.newId();
	return record(env, async (read) => {
		if ((await read.machine.count({ where: { id: input.machineId } })) === 0)
			return refuse("no-such-machine", "That machine is not in the book. Load the page again.");
		const missing = await stepMissing(read, input.stepId, input.machineId);
		if (missing) return missing;
		const { estimated, ...rest } = input;
		return ok(
			deed(
				input.machineId,
				"wanted.added",
				{ table: "Wanted", id },
				{ say: `To be bought: ${input.words}.${input.addedWhy ? ` ${input.addedWhy}` : ""}` },
				[add("Wanted", { id, ...rest, estimatedMinor: estimated, state: "open", lineId: null })],
				id,
			),
		);
	});
};

/** Corrects what is wanted, its estimate, or the step that needs it. */
export const changeWanted = (input: ChangeWanted, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const before = await read.wanted.findUnique({ where: { id: input.wantedId } });
		if (!before) return NOT_WANTED;
		const missing = await stepMissing(read, input.stepId, before.machineId);
		if (missing) return missing;
		const { wantedId: _, estimated, ...rest } = input;
		const said = { ...rest, estimatedMinor: estimated };
		const laid = await overMeanwhile(read, "Wanted", before, env.seen ?? UNSEEN, said, { fields: { estimatedMinor: "estimated" } });
		if (!laid.ok) return laid;
		return ok(
			deed(
				before.machineId,
				"wanted.changed",
				{ table: "Wanted", id: before.id },
				{ say: `Corrected what is to be bought: ${laid.value.words}.` },
				[change("Wanted", before, laid.value)],
				null,
			),
		);
	});

/** Says with which line of a purchase it was bought. */
export const bought = (input: Bought, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const before = await read.wanted.findUnique({ where: { id: input.wantedId } });
		if (!before) return NOT_WANTED;
		const may = mayBecome(before.state, "bought");
		if (!may.ok) return may;
		const line = await read.purchaseLine.findUnique({
			where: { id: input.lineId },
			select: {
				what: true,
				count: true,
				purchase: { select: { number: true } },
				_count: { select: { wanted: { where: { state: "bought" } } } },
			},
		});
		if (!line) {
			const say = "That line is not in the book. Choose again.";
			return refuse("no-such-line", say, { fields: { lineId: say } });
		}
		const mayWith = mayBeBoughtWith({ ...line, spokenFor: line._count.wanted });
		if (!mayWith.ok) return mayWith;
		return ok(
			deed(
				before.machineId,
				"wanted.bought",
				{ table: "Wanted", id: before.id },
				{ say: `Bought, purchase ${line.purchase.number}, ${line.what}: ${before.words}.` },
				[change("Wanted", before, { state: "bought", lineId: input.lineId })],
				null,
			),
		);
	});

/** Says that it is not wanted any more, and why. */
export const dropWanted = (input: DropWanted, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const before = await read.wanted.findUnique({ where: { id: input.wantedId } });
		if (!before) return NOT_WANTED;
		const may = mayBecome(before.state, "dropped");
		if (!may.ok) return may;
		return ok(
			deed(
				before.machineId,
				"wanted.dropped",
				{ table: "Wanted", id: before.id },
				{ say: `Not to be bought any more: ${before.words}. ${input.why}` },
				[change("Wanted", before, { state: "dropped", words: droppedWords(before.words, input.why) })],
				null,
			),
		);
	});

/** Says that it is wanted after all: it was not bought, or dropped too soon. */
export const wantAgain = (input: WantAgain, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const before = await read.wanted.findUnique({ where: { id: input.wantedId } });
		if (!before) return NOT_WANTED;
		const may = mayBecome(before.state, "open");
		if (!may.ok) return may;
		const words = before.state === "dropped" ? wordsAgain(before.words) : before.words;
		return ok(
			deed(
				before.machineId,
				"wanted.again",
				{ table: "Wanted", id: before.id },
				{ say: `To be bought after all: ${words}.` },
				[change("Wanted", before, { state: "open", words, lineId: null })],
				null,
			),
		);
	});
