// Reads about a machine's tests: limits as they were set, and every run.

import type { Reader } from "@/lib/db/store";
import { type Limit, limitInWords, readLimit } from "@/lib/tests/limits";

/** No machine's list shows more tests than this, and no test more runs. */
export const MOST_TESTS = 300;
export const MOST_RUNS = 200;

const RUN = {
	id: true,
	phase: true,
	value: true,
	words: true,
	verdict: true,
	instrument: true,
	at: true,
	captureId: true,
	person: { select: { name: true, initials: true } },
} as const;
const EARLIEST: ({ at: "asc" } | { id: "asc" })[] = [{ at: "asc" }, { id: "asc" }];
const SHOWN = {
	id: true,
	number: true,
	name: true,
	unit: true,
	limit: true,
	limitSource: true,
	position: { select: { mark: true, name: true } },
	part: { select: { name: true, tag: { select: { id: true } } } },
	step: { select: { number: true, title: true } },
	conversion: { select: { number: true, name: true } },
	runs: { orderBy: EARLIEST, take: MOST_RUNS, select: RUN },
} as const;

type Stored = { readonly limit: string };
/** A stored test with its limit as a limit and in words; null where none was set. */
function withLimit<Test extends Stored>(test: Test): Omit<Test, "limit"> & { limit: Limit | null; limitWords: string | null } {
	if (test.limit === "null") return { ...test, limit: null, limitWords: null };
	const limit = readLimit(test.limit);
	// A limit of another version of the program stays readable as it was written.
	return limit.ok
		? { ...test, limit: limit.value, limitWords: limitInWords(limit.value) }
		: { ...test, limit: null, limitWords: test.limit };
}

/** A machine's tests by number, each with all its runs, earliest first. Failed runs are among them. */
export const testsOf = async (read: Reader, machineId: string) =>
	(await read.test.findMany({ where: { machineId }, orderBy: { number: "asc" }, take: MOST_TESTS, select: SHOWN })).map(withLimit);
export type TestRow = Awaited<ReturnType<typeof testsOf>>[number];
export type RunRow = TestRow["runs"][number];

/** One test by its number in the machine. */
export async function testOf(read: Reader, machineId: string, number: number) {
	const test = await read.test.findUnique({ where: { machineId_number: { machineId, number } }, select: SHOWN });
	return test ? withLimit(test) : null;
}

/** Instruments named in earlier runs, latest first, to offer while typing. */
export async function instrumentsUsed(read: Reader): Promise<string[]> {
	const used = await read.testRun.findMany({
		where: { instrument: { not: "" } },
		orderBy: { at: "desc" },
		distinct: ["instrument"],
		take: 50,
		select: { instrument: true },
	});
	return used.map(({ instrument }) => instrument);
}
