// `asfound verify [--files] [--json]`: is the book what its ledger says?

import { BAD_INPUT, refused, type Said, WRONG } from "@/lib/cli/said";
import { MIGRATIONS, shopFolder } from "@/lib/cli/shopFolder";
import { type LedgerReport, verifyLedger } from "@/lib/ledger/verify";

export type VerifyVerbOptions = { readonly data?: string; readonly files?: boolean; readonly json?: boolean };

/** Runs the verb. Exit 0: sound; 1: something is wrong, and every sentence says what; 2: there is no shop to verify. */
export async function verifyVerb(options: VerifyVerbOptions): Promise<Said> {
	const json = options.json ?? false;
	const folder = shopFolder(options.data);
	if (!folder.ok) return refused(json, BAD_INPUT, folder.error.code, folder.error.say);
	let report: LedgerReport;
	try {
		report = await verifyLedger(folder.value, { files: options.files ?? false, migrations: MIGRATIONS });
	} catch (error) {
		// A file that SQLite cannot read to its end: the one thing wrong is that it is no longer a database.
		const why = error instanceof Error ? error.message : String(error);
		return refused(
			json,
			WRONG,
			"file-damaged",
			`The database file cannot be read: ${why}. Keep it as it is and restore the newest backup beside it.`,
		);
	}
	const exitCode = report.flawCount === 0 ? 0 : WRONG;
	if (json) return { exitCode, stdout: `${JSON.stringify({ sound: report.flawCount === 0, ...report }, null, 2)}\n`, stderr: "" };
	return { exitCode, stdout: `${inWords(report).join("\n")}\n`, stderr: "" };
}

function inWords({ entries, rows, files, erased, head, flawCount, flaws }: LedgerReport): string[] {
	const read = [
		counted(entries, "entry", "entries"),
		counted(rows, "row", "rows"),
		...(files === null ? [] : [counted(files, "file", "files")]),
		...(erased === 0 ? [] : [`${counted(erased, "seal", "seals")} with the withheld part erased`]),
	].join(", ");
	if (flawCount === 0) return [`The ledger verifies: ${read}.`, ...(head ? [`Its head is entry ${head.seq}, ${head.hash}.`] : [])];
	const unsaid = flawCount - flaws.length;
	return [
		`Read ${read}. ${flawCount === 1 ? "One thing is wrong" : `${flawCount} things are wrong`}:`,
		...flaws.map(({ say }) => `  ${say}`),
		...(unsaid > 0 ? [`  and ${unsaid} more`] : []),
	];
}

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
