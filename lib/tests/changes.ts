import { ok, type Result, refuse } from "@/lib/core/result";
import { canonical } from "@/lib/ledger/canonical";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, deed } from "@/lib/ledger/rows";
import { judgeText, limitInWords, readLimit, type Verdict } from "@/lib/tests/limits";
import type { PlanTest, RunTest } from "@/lib/tests/schema";

const VERDICT_WORDS: Readonly<Record<Verdict, string>> = { pass: "kept", fail: "not kept", unjudged: "not judged" };

/** Sets a test with its limit, before anything is measured. Gives its id and number in the machine. */
export const planTest = (input: PlanTest, env: Env): Promise<Result<{ id: string; number: number }>> => {
	const id = env.newId();
	return record(env, async (read) => {
		const last = await read.test.findFirst({
			where: { machineId: input.machineId },
			orderBy: { number: "desc" },
			select: { number: true },
		});
		const number = (last?.number ?? 0) + 1;
		const limit = input.limit === null ? "no limit" : `limit ${limitInWords(input.limit)}, ${input.limitSource}`;
		return ok(
			deed(
				input.machineId,
				"test.planned",
				{ table: "Test", id },
				{ say: `Set test ${number}: ${input.name}, ${limit}.`, number },
				[add("Test", { id, number, ...input, limit: canonical(input.limit) })],
				{ id, number },
			),
		);
	});
};

/** Records what was measured, by whom and with what, and judges it against the test's limit. Earlier runs stay. */
export const runTest = (input: RunTest, env: Env): Promise<Result<{ id: string; verdict: Verdict; say: string }>> => {
	const id = env.newId();
	return record(env, async (read) => {
		const test = await read.test.findUnique({ where: { id: input.testId } });
		const person = await read.person.findUnique({ where: { id: input.personId }, select: { name: true } });
		if (!test || !person) return refuse("no-such-test", "That test is not in the book. Load the page again.");
		const limit = test.limit === "null" ? null : readLimit(test.limit);
		if (limit && !limit.ok) return limit;
		const { verdict, say } = judgeText(input.value, test.unit, limit ? limit.value : null);
		return ok(
			deed(
				test.machineId,
				"test.run",
				{ table: "TestRun", id },
				{
					say: `${person.name} measured test ${test.number}, ${test.name}: ${[input.value, test.unit].filter(Boolean).join(" ")}. Limit ${VERDICT_WORDS[verdict]}.`,
					verdict,
				},
				[
					add("TestRun", {
						id,
						machineId: test.machineId,
						testId: test.id,
						phase: input.phase,
						value: input.value,
						words: input.words,
						verdict,
						instrument: input.instrument,
						at: input.at ?? env.clock(),
						personId: input.personId,
						captureId: input.captureId,
					}),
				],
				{ id, verdict, say },
			),
		);
	});
};
