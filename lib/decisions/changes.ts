import { ok, type Result } from "@/lib/core/result";
import type { RecordDecision } from "@/lib/decisions/schema";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, deed } from "@/lib/ledger/rows";

/** Records options weighed at a point of no return: what was chosen and what was refused. Gives the decision's id. */
export const recordDecision = (input: RecordDecision, env: Env): Promise<Result<string>> => {
	const id = env.newId();
	return record(env, async () => {
		const taken = input.options.find(({ state }) => state === "chosen");
		const refused = input.options.filter(({ state }) => state === "refused").map(({ words }) => words);
		const say = `Decided: ${input.question} ${taken ? `Chosen: ${taken.words}.` : "Nothing is chosen yet."}${refused.length > 0 ? ` Refused: ${refused.join("; ")}.` : ""}`;
		return ok(
			deed(
				input.machineId,
				"decision.recorded",
				{ table: "Decision", id },
				{ say },
				[
					add("Decision", {
						id,
						machineId: input.machineId,
						stepId: input.stepId,
						question: input.question,
						at: input.at ?? env.clock(),
						agreedBy: input.agreedBy || null,
						words: input.words,
					}),
					...input.options.map((option, index) =>
						add("DecisionOption", {
							id: env.newId(),
							decisionId: id,
							number: index + 1,
							words: option.words,
							costMinor: option.cost,
							minutes: option.minutes,
							loses: option.loses,
							state: option.state,
						}),
					),
				],
				id,
			),
		);
	});
};
