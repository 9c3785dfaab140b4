// Verbs that read one problem, or one a line, and print an answer to each: what `plan` and `schedule` have in common.

import { BAD_INPUT, type Said } from "@/lib/cli/said";
import type { FieldsRefusal } from "@/lib/core/offences";
import { err, type Result } from "@/lib/core/result";

export type Verb<Problem, Answer> = {
	readonly read: (raw: unknown) => Result<Problem, FieldsRefusal>;
	readonly solve: (problem: Problem) => Answer;
	readonly words: (answer: Answer) => string;
};

export type ProblemOptions = {
	/** Print the answer as JSON. */
	readonly json?: boolean;
	/** One problem a line, one answer or error object a line. Blank lines are passed over. */
	readonly lines?: boolean;
};

/** Answers the text of a problem file, or of standard input. */
export function answerText<Problem, Answer>(verb: Verb<Problem, Answer>, options: ProblemOptions, input: string): Said {
	const text = input.startsWith("\uFEFF") ? input.slice(1) : input;
	return options.lines === true ? answerLines(verb, text) : answerOne(verb, text, options.json === true);
}

function answerOne<Problem, Answer>(verb: Verb<Problem, Answer>, text: string, json: boolean): Said {
	const read = readText(verb.read, text);
	if (!read.ok)
		return {
			exitCode: BAD_INPUT,
			stdout: json ? `${JSON.stringify(errorOf(read.error), null, 2)}\n` : "",
			stderr: `${refusalInWords(read.error)}\n`,
		};
	const answer = verb.solve(read.value);
	return { exitCode: 0, stdout: json ? `${JSON.stringify(answer, null, 2)}\n` : verb.words(answer), stderr: "" };
}

function answerLines<Problem, Answer>(verb: Verb<Problem, Answer>, text: string): Said {
	let exitCode = 0;
	const answers: string[] = [];
	for (const line of text.split("\n")) {
		if (line.trim() === "") continue;
		const read = readText(verb.read, line);
		if (!read.ok) exitCode = BAD_INPUT;
		answers.push(`${JSON.stringify(read.ok ? verb.solve(read.value) : errorOf(read.error))}\n`);
	}
	return { exitCode, stdout: answers.join(""), stderr: "" };
}

function readText<Problem>(read: Verb<Problem, unknown>["read"], text: string): Result<Problem, FieldsRefusal> {
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
	return read(raw);
}

const errorOf = ({ code, say, paths, fields }: FieldsRefusal) => ({ error: { code, say, paths, fields } });

const refusalInWords = ({ say, fields }: FieldsRefusal): string =>
	[say, ...Object.entries(fields).map(([path, why]) => `  ${path}: ${why}`)].join("\n");
