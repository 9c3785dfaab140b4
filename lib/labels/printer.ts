// Straight to a printer of the system, by the command that the shop set where the program is started (ASFOUND_PRINT). The
// command is never told by a page, and no shell reads it: whoever reaches a page could otherwise run anything here.

import { type ChildProcess, spawn } from "node:child_process";
import { config } from "@/lib/config";
import { ok, type Result, refuse } from "@/lib/core/result";

const WAIT_MS = 20_000;
/** So long after its end a program that failed is still listened to. */
const LAST_WORDS_MS = 500;
const MOST_SAID = 300;

/** Whether labels can go straight to a printer, without a PDF being opened first. */
export const isPrinterSet = (): boolean => config().print !== null;

/** The program and its words, or null when the shop has set none. */
export const printCommand = (): readonly string[] | null => config().print;

/**
 * Hands `pdf` to the command's standard input and waits until it ends; what it started may go on.
 * Refused, in the printer's own words where it had any: it is not there, it says no, it does not end in time.
 */
export function sendToPrinter(pdf: Buffer, [program = "", ...words]: readonly string[], waitMs: number = WAIT_MS): Promise<Result<null>> {
	return new Promise((resolve) => {
		const child = spawn(program, words, { shell: false, stdio: ["pipe", "pipe", "pipe"], detached: HAS_GROUPS });
		let said = "";
		const hear = (chunk: Buffer): void => {
			if (said.length < MOST_SAID) said += chunk.toString("utf8");
		};
		const answer = (result: Result<null>): void => {
			clearTimeout(late);
			resolve(result);
		};
		const late = setTimeout(() => {
			killAll(child);
			answer(
				refuse(
					"printer-late",
					`The printer's program did not answer in ${Math.round(waitMs / 1000)} seconds. Nothing is put in the book; look whether something came out, and print again or take the PDF.`,
				),
			);
		}, waitMs);
		child.stdout.on("data", hear);
		child.stderr.on("data", hear);
		child.on("error", (error: NodeJS.ErrnoException) =>
			answer(
				error.code === "ENOENT"
					? refuse("printer-missing", `There is no program ${program} on the shop's computer. Set ASFOUND_PRINT anew, or take the PDF.`)
					: refuse("printer-failed", `The printer's program could not be started: ${error.message}. Take the PDF.`),
			),
		);
		child.on("exit", (code) => {
			clearTimeout(late);
			if (code === 0) return answer(ok(null));
			const failed = (): void =>
				answer(
					refuse("printer-failed", `Not printed. ${ownWords(said, code)} Put it right and print again, or take the PDF.`, {
						facts: { code, said: said.slice(0, MOST_SAID) },
					}),
				);
			// Its last words may still be on their way; "close" does not come while something that it started holds them open.
			const heard = setTimeout(failed, LAST_WORDS_MS);
			child.on("close", () => {
				clearTimeout(heard);
				failed();
			});
		});
		// A program that ends without reading all of it has said why by its code.
		child.stdin.on("error", () => undefined);
		child.stdin.end(pdf);
	});
}

/** On Windows a program leads no group, and would open a window. */
const HAS_GROUPS = process.platform !== "win32";

/** Ends a program with all that it started; alone where it leads no group. */
function killAll(child: ChildProcess): void {
	if (!HAS_GROUPS || child.pid === undefined) {
		child.kill("SIGKILL");
		return;
	}
	try {
		process.kill(-child.pid, "SIGKILL");
	} catch {
		// The group is gone already, or is not ours to end.
		child.kill("SIGKILL");
	}
}

function ownWords(said: string, code: number | null): string {
	const words = said.replace(/\s+/g, " ").trim().slice(0, MOST_SAID);
	return words === "" ? `The printer's program ended with code ${code ?? "none"} and said nothing.` : `The printer says: ${words}`;
}
