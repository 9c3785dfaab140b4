import type { JoinConversion, NameConversion } from "@/lib/conversions/schema";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, change, deed, type RowChange } from "@/lib/ledger/rows";

/** Names a set of changes made for one purpose. Gives its id and number in the machine. */
export const nameConversion = (input: NameConversion, env: Env): Promise<Result<{ id: string; number: number }>> => {
	const id = env.newId();
	return record(env, async (read) => {
		const last = await read.conversion.findFirst({
			where: { machineId: input.machineId },
			orderBy: { number: "desc" },
			select: { number: true },
		});
		const number = (last?.number ?? 0) + 1;
		const safety = input.purpose === "safety" ? ", done for safety: a reversal leaves it unless it is named" : "";
		return ok(
			deed(
				input.machineId,
				"conversion.named",
				{ table: "Conversion", id },
				{ say: `Named conversion ${number}: ${input.name}${safety}.`, number },
				[add("Conversion", { id, number, ...input })],
				{ id, number },
			),
		);
	});
};

/** Says what belongs to a conversion, and what does not after all. What is not named stays as it is. */
export const joinConversion = (input: JoinConversion, env: Env): Promise<Result<{ joined: number; left: number }>> =>
	record(env, async (read) => {
		const conversion = await read.conversion.findUnique({ where: { id: input.conversionId } });
		if (!conversion) return refuse("no-such-conversion", "That conversion is not in the book. Load the page again.");
		const { id, machineId } = conversion;
		const { leave } = input;
		const named = [input, ...(leave ? [leave] : [])].flatMap((lists) => [
			...lists.fittingsIn,
			...lists.fittingsOut,
			...lists.connections,
			...lists.alterations,
			...lists.steps,
			...lists.tests,
		]);
		if (named.length === 0) return refuse("nothing-chosen", "Choose what belongs to the conversion.");

		let joined = 0;
		let left = 0;
		/** The conversion that a row shall belong to, counting what changes. */
		const ruled = (row: string, now: string | null, joins: readonly string[], leaves: readonly string[] = []): string | null => {
			if (joins.includes(row) && now !== id) {
				joined += 1;
				return id;
			}
			if (leaves.includes(row) && now === id) {
				left += 1;
				return null;
			}
			return now;
		};
		const among = (joins: readonly string[], leaves: readonly string[] = []) => ({
			where: { machineId, id: { in: [...joins, ...leaves] } },
		});

		const rows: RowChange[] = [];
		const fittings = await read.fitting.findMany(
			among([...input.fittingsIn, ...input.fittingsOut], leave && [...leave.fittingsIn, ...leave.fittingsOut]),
		);
		for (const row of fittings) {
			const conversionId = ruled(row.id, row.conversionId, input.fittingsIn, leave?.fittingsIn);
			const outConversionId = ruled(row.id, row.outConversionId, input.fittingsOut, leave?.fittingsOut);
			if (conversionId !== row.conversionId || outConversionId !== row.outConversionId)
				rows.push(change("Fitting", row, { conversionId, outConversionId }));
		}
		for (const row of await read.connection.findMany(among(input.connections, leave?.connections))) {
			const conversionId = ruled(row.id, row.conversionId, input.connections, leave?.connections);
			if (conversionId !== row.conversionId) rows.push(change("Connection", row, { conversionId }));
		}
		for (const row of await read.alteration.findMany(among(input.alterations, leave?.alterations))) {
			const conversionId = ruled(row.id, row.conversionId, input.alterations, leave?.alterations);
			if (conversionId !== row.conversionId) rows.push(change("Alteration", row, { conversionId }));
		}
		for (const row of await read.step.findMany(among(input.steps, leave?.steps))) {
			const conversionId = ruled(row.id, row.conversionId, input.steps, leave?.steps);
			if (conversionId !== row.conversionId) rows.push(change("Step", row, { conversionId }));
		}
		for (const row of await read.test.findMany(among(input.tests, leave?.tests))) {
			const conversionId = ruled(row.id, row.conversionId, input.tests, leave?.tests);
			if (conversionId !== row.conversionId) rows.push(change("Test", row, { conversionId }));
		}
		if (rows.length === 0) return refuse("nothing-changed", "It stands so already: nothing was changed.");
		const things = (count: number, verb: string) => `${count} ${count === 1 ? `thing ${verb}s` : `things ${verb}`}`;
		const words = [joined > 0 ? `${things(joined, "belong")} to` : "", left > 0 ? `${things(left, "leave")}` : ""].filter(Boolean);
		const say = `${words.join(", ")} conversion ${conversion.number}: ${conversion.name}.`;
		return ok(deed(machineId, "conversion.joined", { table: "Conversion", id }, { say, joined, left }, rows, { joined, left }));
	});
