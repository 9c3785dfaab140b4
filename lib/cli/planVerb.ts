// `asfound plan FILE|- [--json] [--lines]`: reads a reversal problem, prints a plan.

import { err, type Result } from "@/lib/core/result";
import { type Operation, type Plan, planReversal } from "@/lib/reversal/plan";
import { type ProblemRefusal, readProblem } from "@/lib/reversal/readProblem";

export type PlanOptions = {
	/** Print the plan as JSON. */
	readonly json?: boolean;
	/** One problem a line, one answer or error object a line. Blank lines are passed over. */
	readonly lines?: boolean;
};

/** What a verb says, for the command line to print. */
export type Said = { readonly exitCode: number; readonly stdout: string; readonly stderr: string };

/** Input that cannot be planned. */
const BAD_INPUT = 2;

/** Runs the verb on the text of the problem file (or of standard input). */
export function planVerb(options: PlanOptions, input: string): Said {
	const text = input.startsWith("\uFEFF") ? input.slice(1) : input;
	return options.lines === true ? planLines(text) : planOne(text, options.json === true);
}

function planOne(text: string, json: boolean): Said {
	const read = readText(text);
	if (!read.ok) {
		return {
			exitCode: BAD_INPUT,
			stdout: json ? `${JSON.stringify(errorOf(read.error), null, 2)}\n` : "",
			stderr: `${refusalInWords(read.error)}\n`,
		};
	}
	const plan = planReversal(read.value);
	return { exitCode: 0, stdout: json ? `${JSON.stringify(plan, null, 2)}\n` : planInWords(plan), stderr: "" };
}

function planLines(text: string): Said {
	let exitCode = 0;
	const answers: string[] = [];
	for (const line of text.split("\n")) {
		if (line.trim() === "") continue;
		const read = readText(line);
		if (!read.ok) exitCode = BAD_INPUT;
		answers.push(`${JSON.stringify(read.ok ? planReversal(read.value) : errorOf(read.error))}\n`);
	}
	return { exitCode, stdout: answers.join(""), stderr: "" };
}

function readText(text: string): Result<Parameters<typeof planReversal>[0], ProblemRefusal> {
	let raw: unknown;
	try {
		raw = JSON.parse(text);
	} catch (error) {
		const why = error instanceof SyntaxError ? error.message : String(error);
		return err({
			code: "not-json",
			say: `The input is not JSON: ${why}. Give one problem as JSON.`,
			paths: ["(the whole input)"],
			fields: {},
		});
	}
	return readProblem(raw);
}

const errorOf = ({ code, say, paths, fields }: ProblemRefusal) => ({ error: { code, say, paths, fields } });

function refusalInWords({ say, fields }: ProblemRefusal): string {
	return [say, ...Object.entries(fields).map(([path, why]) => `  ${path}: ${why}`)].join("\n");
}

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
