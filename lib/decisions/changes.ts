import { ok, type Result, refuse } from "@/lib/core/result";
import type { RecordDecision } from "@/lib/decisions/schema";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, deed } from "@/lib/ledger/rows";
import { foresee } from "@/lib/reversal/beforehandQueries";
import { type Foreseen, thoughtOf } from "@/lib/reversal/thought";

/**
 * Records options weighed at a point of no return: what was chosen and what was refused, and what reversal would lose by each
 * as the record stands now, whatever becomes of it later. Gives the decision's id. Refused when an option speaks of a thing
 * that is not of this machine.
 */
export const recordDecision = (input: RecordDecision, env: Env): Promise<Result<string>> => {
	const id = env.newId();
	return record(env, async (read) => {
		const thoughts = input.options.map(thoughtOf);
		const asked = await foresee(
			read,
			input.machineId,
			thoughts.filter((thought) => thought !== null),
		);
		const foreseen: (Foreseen | null)[] = [];
		let answered = 0;
		for (const [index, thought] of thoughts.entries()) {
			const answer = thought === null ? null : (asked[answered++] ?? null);
			if (thought !== null && answer === null) {
				const words = "That is not of this machine any more. Choose again.";
				return refuse("not-of-machine", `Option ${index + 1} speaks of a thing that is not of this machine. Choose another.`, {
					fields: { [`options.${index}.thing`]: words },
				});
			}
			foreseen.push(answer);
		}
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
							does: option.does,
							positionId: option.positionId,
							partId: option.partId,
							undo: option.undo,
							foreseen: foreseen[index]?.say ?? null,
							positionsLost: foreseen[index]?.counts?.positions ?? null,
							statesLost: foreseen[index]?.counts?.states ?? null,
						}),
					),
				],
				id,
			),
		);
	});
};
