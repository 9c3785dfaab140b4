import { ok, type Result, refuse } from "@/lib/core/result";
import type { Env } from "@/lib/ledger/env";
import { overMeanwhile, UNSEEN } from "@/lib/ledger/meanwhile";
import { record } from "@/lib/ledger/record";
import { add, change, deed } from "@/lib/ledger/rows";
import { type AddCost, type ChangeCost, COST_KIND_WORDS } from "@/lib/money/schema";

const STATE_WORDS = { planned: "still to come", spent: "spent", forgone: "forgone", void: "entered in error" } as const;

/** Adds a cost that is neither labour nor a purchase line. Gives its id. */
export const addCost = (input: AddCost, env: Env): Promise<Result<string>> => {
	const id = env.newId();
	return record(env, async (read) => {
		if ((await read.machine.count({ where: { id: input.machineId } })) === 0)
			return refuse("no-such-machine", "That machine is not in the book. Load the page again.");
		const { estimated, spent, ...cost } = input;
		return ok(
			deed(
				input.machineId,
				"cost.added",
				{ table: "CostLine", id },
				{ say: `Cost, ${COST_KIND_WORDS[input.kind]}, ${STATE_WORDS[input.state]}: ${input.words}.` },
				[add("CostLine", { id, ...cost, estimatedMinor: estimated, spentMinor: spent })],
				id,
			),
		);
	});
};

const MEANWHILE = {
	fields: { estimatedMinor: "estimated", spentMinor: "spent" },
	together: [["state", "estimatedMinor", "spentMinor"]],
};

/** Corrects a cost, says that it was spent, or takes it back as entered in error. */
export const changeCost = (input: ChangeCost, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const before = await read.costLine.findUnique({ where: { id: input.costId } });
		if (!before) return refuse("no-such-cost", "That cost is not in the book. Load the page again.");
		const { costId: _, estimated, spent, ...cost } = input;
		const said = { ...cost, estimatedMinor: estimated, spentMinor: spent };
		const laid = await overMeanwhile(read, "CostLine", before, env.seen ?? UNSEEN, said, MEANWHILE);
		if (!laid.ok) return laid;
		return ok(
			deed(
				before.machineId,
				"cost.changed",
				{ table: "CostLine", id: before.id },
				{ say: `Cost corrected, ${STATE_WORDS[laid.value.state]}: ${laid.value.words}.` },
				[change("CostLine", before, laid.value)],
				null,
			),
		);
	});
