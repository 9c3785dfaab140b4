import { describe, expect, it } from "vitest";
import { type Plan, planReversal } from "@/lib/reversal/plan";
import { byMilp, milpSolver, weightOf } from "@/tests/reversal/byMilp";
import { carriedOut } from "@/tests/reversal/carryOut";
import { makeWorld } from "@/tests/reversal/makeWorld";

/** ASFOUND_WORLDS=20000 for a long run; a general-purpose solver takes its time, so one in thirty of that. */
const RUNS = Math.ceil(Number(process.env.ASFOUND_WORLDS ?? 300) / 30);
const FIRST = Number(process.env.ASFOUND_SEED ?? 1958);
const LONG = 1000 * 60 * 60;

const workOf = (plan: Plan): Set<string> => new Set(plan.opened.filter((at) => !plan.openedOnly.includes(at)));
const undoneAt = (plan: Plan): Set<string> =>
	new Set(plan.operations.flatMap(({ kind, position }) => (kind === "undo" && position !== undefined ? [position] : [])));

const solver = await milpSolver();

describe(`worlds of 30 to 60 positions, ${RUNS} from seed ${FIRST} on`, () => {
	for (const [shape, more] of Object.entries({
		"one way to most positions": { multiSided: 6, hosted: 0.2 },
		"several ways to half of them": { multiSided: 24, hosted: 0.05, blocking: 1.6 },
		"assemblies everywhere": { multiSided: 10, hosted: 0.5, blocking: 1.6 },
	})) {
		it(
			`${shape}: a general-purpose solver finds no cheaper opening, and none is dearer`,
			() => {
				for (let n = 0; n < RUNS; n++) {
					const seed = FIRST + n;
					const problem = makeWorld({ positions: 30 + (seed % 31), seed, changed: 0.06, ...more });
					const plan = planReversal(problem);
					const then = new Map(Object.entries(plan.attains));
					expect(Object.fromEntries(carriedOut(problem, plan.operations).build), `seed ${seed}`).toEqual(plan.attains);
					const other = byMilp(solver, problem, then, workOf(plan), undoneAt(plan));
					expect(other.status, `seed ${seed}`).toBe("Optimal");
					expect(weightOf(problem, then, plan.opened), `seed ${seed}`).toBe(other.weight);
				}
			},
			LONG,
		);
	}
});
