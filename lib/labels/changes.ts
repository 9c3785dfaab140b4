import { ordinal } from "@/lib/core/ordinal";
import { ok, type Result, refuse } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import type { Reader } from "@/lib/db/store";
import {
	type CorrectStock,
	geometryOf,
	nudgeInWords,
	type PutAwayStock,
	type SayNudge,
	sizeInWords,
	stockOfRow,
} from "@/lib/labels/ownStock";
import { printCommand, sendToPrinter } from "@/lib/labels/printer";
import { labelsOnPaper, stockOrFirst } from "@/lib/labels/printQueries";
import { machinesOfTags, timesPrinted } from "@/lib/labels/queries";
import { type PrintLabels, printLabelsSchema, type RecordPrint, recordPrintSchema } from "@/lib/labels/schema";
import { STOCKS, type Stock } from "@/lib/labels/stock";
import { stockById } from "@/lib/labels/stockQueries";
import type { Env } from "@/lib/ledger/env";
import { overMeanwhile, UNSEEN } from "@/lib/ledger/meanwhile";
import { record, recordedOtherwise } from "@/lib/ledger/record";
import { add, change, deed, type EntryDraft } from "@/lib/ledger/rows";

/** Records that labels went to paper: one entry a machine. Gives the how-manieth print each tag has now. */
export async function recordPrint(input: RecordPrint, env: Env): Promise<Result<{ printed: { tag: string; times: number }[] }>> {
	const form = recordPrintSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { stock, copies, at = env.clock() } = form.data;
	const tags = [...new Set(form.data.tags)];
	return record(env, async (read) => {
		const [machines, before] = await Promise.all([machinesOfTags(read, tags), timesPrinted(read, tags)]);
		const byMachine = new Map<string | null, string[]>();
		for (const tag of tags) {
			const machine = machines.get(tag) ?? null;
			byMachine.set(machine, [...(byMachine.get(machine) ?? []), tag]);
		}
		const entries: EntryDraft[] = [...byMachine].map(([machine, ofMachine]) => {
			const rows = ofMachine.map((tag) => add("LabelPrint", { id: env.newId(), machineId: machine, tag, stock, copies, at }));
			const again = ofMachine.filter((tag) => (before.get(tag) ?? 0) > 0);
			const named = ofMachine.length <= 6 ? ofMachine.join(", ") : `${ofMachine.slice(0, 5).join(", ")} and ${ofMachine.length - 5} more`;
			const times =
				again.length === 0
					? ""
					: ofMachine.length === 1
						? ` (${ordinal((before.get(ofMachine[0] ?? "") ?? 0) + 1)} print)`
						: ` (${again.length} of them again)`;
			return {
				machine,
				action: "label.printed",
				subject: { table: "LabelPrint", id: rows[0]?.id ?? "" },
				facts: { say: `Printed ${ofMachine.length === 1 ? "the label" : "labels"} ${named}${times}.`, tags: ofMachine, stock, copies },
				rows,
			};
		});
		return ok({ entries, result: { printed: tags.map((tag) => ({ tag, times: (before.get(tag) ?? 0) + 1 })) } });
	});
}

/** Prints under way, by deed, and the last in the row: one after the other, so that each knows which print it is. */
type Printing = {
	readonly underWay: Map<string, { readonly asked: string | undefined; readonly run: Promise<Result<Printed>> }>;
	last: Promise<unknown>;
};
type Printed = { printed: { tag: string; times: number }[] };

/** One for the whole program, however many of its parts are loaded apart. */
function printing(): Printing {
	const kept = globalThis as typeof globalThis & { asfoundPrinting?: Printing };
	kept.asfoundPrinting ??= { underWay: new Map(), last: Promise.resolve() };
	return kept.asfoundPrinting;
}

/**
 * Sends labels straight to the printer, and puts the print in the book once the printer has taken it. Refused, with nothing
 * in the book, when no printer is set or it failed. The same deed again gives the same answer, and nothing is printed twice;
 * the same deed that asks for something else is refused.
 */
export async function printLabels(
	input: PrintLabels,
	env: Env,
	command: readonly string[] | null = printCommand(),
): Promise<Result<Printed>> {
	const now = printing();
	const same = now.underWay.get(env.deed);
	if (same) return same.asked === env.asked ? same.run : recordedOtherwise();
	const run = now.last.then(() => sendAndRecord(input, env, command));
	now.underWay.set(env.deed, { asked: env.asked, run });
	now.last = run.then(
		() => undefined,
		() => undefined,
	);
	return run.finally(() => now.underWay.delete(env.deed));
}

async function sendAndRecord(input: PrintLabels, env: Env, command: readonly string[] | null): Promise<Result<Printed>> {
	const form = printLabelsSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { read } = env.store;
	const { tags, copies, startAt } = form.data;
	const stock = await stockOrFirst(read, form.data.stock);
	const isDone = await read.receipt.findUnique({ where: { deed: env.deed }, select: { deed: true } });
	if (!isDone) {
		if (command === null) {
			return refuse("no-printer", "No printer is set. Take the labels as a PDF, or set ASFOUND_PRINT where the program is started.");
		}
		const made = await labelsOnPaper(read, { tags, stock, startAt, copies, outlines: false, deed: env.deed, madeAt: env.clock() });
		if (!made.ok) return made;
		const sent = await sendToPrinter(made.value.pdf, command);
		if (!sent.ok) return sent;
	}
	return recordPrint({ tags, stock: stock.id, copies }, env);
}

/** Adds stock of the shop's own. Gives its id. */
export function addStock(stock: Stock, env: Env): Promise<Result<{ stockId: string }>> {
	return record(env, async (read) => {
		const may = mayBeNamed(await ownNames(read), stock.name, null);
		if (!may.ok) return may;
		const id = env.newId();
		const row = add("LabelStock", { id, name: stock.name, ...geometryOf(stock), stands: "yes" });
		const say = `Label stock: ${stock.name}, ${sizeInWords(stock)}.`;
		return ok(deed(null, "stock.added", { table: "LabelStock", id }, { say }, [row], { stockId: id }));
	});
}

/** How a stock is cut only makes sense as a whole. */
const GEOMETRY = [
	"kind",
	"width",
	"height",
	"longest",
	"pageWidth",
	"pageHeight",
	"columns",
	"rows",
	"top",
	"left",
	"pitchX",
	"pitchY",
] as const;

/** Measures a stock anew, or names it anew. */
export function correctStock({ stockId, stock }: CorrectStock, env: Env): Promise<Result<{ stockId: string }>> {
	return record(env, async (read) => {
		const before = await read.labelStock.findUnique({ where: { id: stockId } });
		if (!before) return noStock();
		const may = mayBeNamed(await ownNames(read), stock.name, stockId);
		if (!may.ok) return may;
		const said = { name: stock.name, ...geometryOf(stock) };
		const laid = await overMeanwhile(read, "LabelStock", before, env.seen ?? UNSEEN, said, { together: [GEOMETRY] });
		if (!laid.ok) return laid;
		const now = stockOfRow({ id: stockId, ...laid.value });
		const say = `Corrected the label stock ${now.name}: ${sizeInWords(now)}.`;
		const row = change("LabelStock", before, laid.value);
		return ok(deed(null, "stock.corrected", { table: "LabelStock", id: stockId }, { say }, [row], { stockId }));
	});
}

/** Takes a stock out of the lists, or back into them. What was printed on it stays on record. */
export function putAwayStock({ stockId, stands }: PutAwayStock, env: Env): Promise<Result<{ stockId: string }>> {
	return record(env, async (read) => {
		const before = await read.labelStock.findUnique({ where: { id: stockId } });
		if (!before) return noStock();
		if (before.stands === stands) return refuse("stands-so", `${before.name} is ${stands === "yes" ? "in" : "out of"} the list already.`);
		const say = stands === "no" ? `Put the label stock ${before.name} away.` : `The label stock ${before.name} is in use again.`;
		const row = change("LabelStock", before, { stands });
		return ok(
			deed(null, stands === "no" ? "stock.put-away" : "stock.used-again", { table: "LabelStock", id: stockId }, { say }, [row], {
				stockId,
			}),
		);
	});
}

/** Says how far prints on a stock are moved from now on, since the printer draws off the mark. */
export function sayNudge({ stock: stockId, right, down }: SayNudge, env: Env): Promise<Result<{ words: string }>> {
	return record(env, async (read) => {
		const known = await stockById(read, stockId);
		if (!known) return noStock();
		const before = await read.stockNudge.findUnique({ where: { stock: stockId } });
		if ((before?.right ?? 0) === right && (before?.down ?? 0) === down) {
			return refuse(
				"nudged-so",
				`Prints on ${known.stock.name} go ${nudgeInWords({ right, down })} already. Type what the test grid shows.`,
			);
		}
		const id = before?.id ?? env.newId();
		const row = before ? change("StockNudge", before, { right, down }) : add("StockNudge", { id, stock: stockId, right, down });
		const words = nudgeInWords({ right, down });
		const say = `Prints on ${known.stock.name} go ${words}.`;
		return ok(deed(null, "stock.nudged", { table: "StockNudge", id }, { say }, [row], { words }));
	});
}

const noStock = () => refuse("no-such-stock", "That label stock is not on record. Choose one from the list.");

const ownNames = (read: Reader) => read.labelStock.findMany({ take: 500, select: { id: true, name: true } });

/** Two stocks of one name could not be told apart in a list. */
function mayBeNamed(own: readonly { id: string; name: string }[], name: string, stockId: string | null): Result<null> {
	const same = (other: string): boolean => other.toLowerCase() === name.toLowerCase();
	if (!own.some((other) => other.id !== stockId && same(other.name)) && !STOCKS.some((other) => same(other.name))) return ok(null);
	const say = "There is a stock of this name. Give it another, with what sets it apart.";
	return refuse("name-taken", say, { fields: { name: say } });
}
