// The command line: reads the words, calls the function that the screens call too, prints what it says.

import { readFileSync } from "node:fs";
import { Command, CommanderError, InvalidArgumentError } from "commander";
import { BAD_INPUT, type Said } from "@/lib/cli/said";
import { systemClock } from "@/lib/core/clock";

const program = new Command("asfound")
	.description("The command line of Asfound, a restoration job book and parts provenance ledger.")
	.exitOverride()
	.showHelpAfterError("(asfound --help lists the verbs; asfound VERB --help says what one takes)")
	.addHelpText("after", "\nExit codes: 0 good; 1 something is wrong; 2 the question cannot be read.");

const DATA = ["--data <folder>", "the shop's data folder (otherwise ASFOUND_DATA, otherwise ./data)"] as const;
const JSON_FLAG = ["--json", "answer as JSON"] as const;

async function print(answer: Said | Promise<Said>): Promise<void> {
	const { exitCode, stdout, stderr } = await answer;
	process.stdout.write(stdout);
	process.stderr.write(stderr);
	process.exitCode = exitCode;
}

function wholeNumber(text: string): number {
	if (!/^\d{1,9}$/.test(text)) throw new InvalidArgumentError("It is a whole number, like 12.");
	return Number(text);
}

function seconds(text: string): number {
	const value = Number(text);
	if (!/^\d{1,5}(\.\d{1,3})?$/.test(text) || value <= 0)
		throw new InvalidArgumentError("It is a number of seconds above nought, like 1 or 0.5.");
	return value;
}

/** The text of a file, or of standard input for "-". */
function inputOf(file: string): string {
	try {
		return readFileSync(file === "-" ? 0 : file, "utf8");
	} catch (error) {
		const why = error instanceof Error ? error.message : String(error);
		throw new CommanderError(BAD_INPUT, "asfound.input", `error: ${file === "-" ? "standard input" : file} cannot be read: ${why}`);
	}
}

program
	.command("verify")
	.description("recompute the ledger's chains and compare every row with it; name all that is wrong")
	.option("--files", "also read every stored file again")
	.option(...DATA)
	.option(...JSON_FLAG)
	.action(async (options) => print((await import("@/lib/cli/verifyVerb")).verifyVerb(options)));

program
	.command("show")
	.description("show a machine's build at a past instant, from the ledger alone")
	.requiredOption("--machine <number>", "the machine's number", wholeNumber)
	.option("--as-of <date>", "a day (its end is meant), or an instant; now when left out")
	.option("--known <date>", "go only by what had been entered by then")
	.option(...DATA)
	.option(...JSON_FLAG)
	.action(async (options) => print((await import("@/lib/cli/showVerb")).showVerb(options, systemClock())));

program
	.command("plan")
	.description("plan a reversal from a problem file (asfound.reversal-problem/1)")
	.argument("<file>", "the problem; - reads standard input")
	.option(...JSON_FLAG)
	.option("--lines", "one problem a line, one answer or error object a line")
	.action(async (file: string, options) => print((await import("@/lib/cli/planVerb")).planVerb(options, inputOf(file))));

program
	.command("schedule")
	.description("schedule activities with waits and resources from a problem file (asfound.schedule-problem/1)")
	.argument("<file>", "the problem; - reads standard input")
	.option(...JSON_FLAG)
	.option("--lines", "one problem a line, one answer or error object a line")
	.option(
		"--seconds <seconds>",
		"look for a shorter one for so long, for each problem; otherwise always the same amount of looking",
		seconds,
	)
	.option("--seed <number>", "where chance begins; 1 when left out", wholeNumber)
	.action(async (file: string, options) =>
		print((await import("@/lib/cli/scheduleVerb")).scheduleVerb(options, inputOf(file), systemClock)),
	);

try {
	await program.parseAsync();
} catch (error) {
	if (!(error instanceof CommanderError)) throw error;
	if (error.code === "asfound.input") process.stderr.write(`${error.message}\n`);
	// Commander has said what is wrong, and gives 0 for help.
	process.exitCode = error.exitCode === 0 ? 0 : BAD_INPUT;
}
