// What a verb of the command line says, for lib/cli/asfound.ts to print: so that a verb can be tried without a process.

export type Said = { readonly exitCode: number; readonly stdout: string; readonly stderr: string };

/** Something is wrong with the shop, or with the answer. */
export const WRONG = 1;
/** The question itself cannot be read: a bad option, a bad file. */
export const BAD_INPUT = 2;

export const said = (stdout: string, exitCode = 0): Said => ({ exitCode, stdout, stderr: "" });

/** A refusal: the sentence for a person, and with --json an error object on standard output as well. */
export const refused = (json: boolean, exitCode: number, code: string, sentence: string): Said => ({
	exitCode,
	stdout: json ? `${JSON.stringify({ error: { code, say: sentence } }, null, 2)}\n` : "",
	stderr: `${sentence}\n`,
});
