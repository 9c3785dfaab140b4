import { ok, type Result } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import { machinesOfTags, timesPrinted } from "@/lib/labels/queries";
import { type RecordPrint, recordPrintSchema } from "@/lib/labels/schema";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, type EntryDraft } from "@/lib/ledger/rows";

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

/** 1st, 2nd, 3rd, 4th, 11th. Requires a whole number from 1. */
export function ordinal(count: number): string {
	const teen = count % 100 >= 11 && count % 100 <= 13;
	const ending = teen ? "th" : (["th", "st", "nd", "rd"][count % 10] ?? "th");
	return `${count}${ending}`;
}
