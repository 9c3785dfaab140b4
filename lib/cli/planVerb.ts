// `asfound plan FILE|- [--json] [--lines]`: reads a reversal problem, prints a plan.

import { answerText, type ProblemOptions } from "@/lib/cli/problemText";
import type { Said } from "@/lib/cli/said";
import { type Operation, type Plan, planReversal } from "@/lib/reversal/plan";
import { readProblem } from "@/lib/reversal/readProblem";

/** Runs the verb on the text of the problem file (or of standard input). */
export const planVerb = (options: ProblemOptions, input: string): Said =>
	answerText({ read: readProblem, solve: (problem) => planReversal(problem), words: planInWords }, options, input);

function planInWords(plan: Plan): string {
	const lines: string[] = [];
	if (plan.operations.length === 0) lines.push("Nothing to do: the machine is as near to the target as it can be.");
	else {
		const { low, likely, high, takeOut, undo, putIn } = plan.minutes;
		lines.push(
			`${counted(plan.opened.length, "position")} to open: ${plan.opened.join(", ")}`,
			`Likely ${counted(likely, "minute")} (${low} to ${high}): out ${takeOut.likely}, undo ${undo.likely}, in ${putIn.likely}. Waits: ${plan.waitMinutes}.`,
			...(plan.openedOnly.length === 0 ? [] : [`Opened only to reach the others, goes back unchanged: ${plan.openedOnly.join(", ")}`]),
			...(plan.leastProved ? [] : ["The search ended early: this opening works, but a cheaper one may exist."]),
			"",
			...plan.operations.map((operation, at) => `${String(at + 1).padStart(3)}. ${operationInWords(operation)}`),
		);
	}
	section(
		lines,
		"Stays different",
		plan.staysDifferent.map(({ position, why, freedBy }) => `${position}: ${why}${freedBy === null ? "" : ` (freed by ${freedBy})`}`),
	);
	section(
		lines,
		"Access loops",
		plan.loops.map(({ say }) => say),
	);
	section(
		lines,
		"Comes back, but",
		plan.comesBack.map(({ position, say }) => `${position}: ${say}`),
	);
	section(
		lines,
		"Travels with its assembly",
		plan.travels.map(({ position, part, with: host }) => `${position}: ${part} on ${host}`),
	);
	section(
		lines,
		"Left alone, out of scope",
		plan.leftAlone.map(
			({ position, holds, wanted }) => `${position}: holds ${holds ?? "nothing"}, the target holds ${wanted ?? "nothing"}`,
		),
	);
	return `${lines.join("\n")}\n`;
}

function section(lines: string[], title: string, entries: readonly string[]): void {
	if (entries.length > 0) lines.push("", `${title}:`, ...entries.map((entry) => `  ${entry}`));
}

function operationInWords(operation: Operation): string {
	const what: Record<Operation["kind"], string> = {
		"make-safe": "make safe: isolate, prove dead, discharge",
		"take-out": `take out ${operation.part ?? ""} from ${operation.position ?? ""}`,
		undo: `undo ${operation.alteration ?? ""} ${operation.position === undefined ? `on ${operation.part ?? ""}` : `at ${operation.position}`}`,
		"put-in": `put in ${operation.part ?? ""} at ${operation.position ?? ""}`,
		check: "check",
	};
	const notes = [
		...(operation.side === undefined ? [] : [`from ${operation.side}`]),
		...(operation.bench === undefined ? [] : [`on the bench, ${operation.bench}`]),
		...(operation.minutes.likely === 0 ? [] : [`${operation.minutes.likely} min`]),
		...(operation.wait === undefined ? [] : [`then wait ${operation.wait} min`]),
	];
	return notes.length === 0 ? what[operation.kind] : `${what[operation.kind]} (${notes.join(", ")})`;
}

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? "" : "s"}`;
