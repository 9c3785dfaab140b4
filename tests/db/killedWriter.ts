// A process that writes one deed after another and says each one's id as soon as `record` has returned. For kills.test.ts.
//   node --import tsx tests/db/killedWriter.ts FOLDER PERSON MACHINE PART

import { ok } from "@/lib/core/result";
import { openStore } from "@/lib/db/store";
import { envNow } from "@/lib/ledger/edge";
import { record } from "@/lib/ledger/record";
import { add, change } from "@/lib/ledger/rows";

const [folder = "", person = "", machineId = "", partId = ""] = process.argv.slice(2);
const store = await openStore(folder);
for (let count = 1; ; count++) {
	const env = envNow(store, person);
	const noteId = env.newId();
	// Two entries, one with a seal, a row changed and a row added: much that could be written by half.
	const done = await record(env, async (read) => {
		const part = await read.part.findUniqueOrThrow({ where: { id: partId } });
		const at = env.clock();
		return ok({
			entries: [
				{
					machine: machineId,
					action: "part.described",
					subject: { table: "Part", id: partId },
					facts: { say: `Looked at it again, ${count}.` },
					rows: [change("Part", part, { condition: `looked at, ${count}` })],
				},
				{
					machine: machineId,
					action: "note.said",
					subject: { table: "Note", id: noteId },
					facts: { say: "Noted what the seller told." },
					rows: [add("Note", { id: noteId, machineId, kind: "told", words: "x".repeat(2000), whoSaid: "the seller", at })],
				},
			],
			result: noteId,
		});
	});
	if (!done.ok) throw new Error(done.error.say);
	process.stdout.write(`${env.deed} ${noteId}\n`);
}
