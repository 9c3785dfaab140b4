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

/** Says what belongs to a conversion. What belonged to it before and is not named stays with it. */
export const joinConversion = (input: JoinConversion, env: Env): Promise<Result<{ joined: number }>> =>
	record(env, async (read) => {
		const conversion = await read.conversion.findUnique({ where: { id: input.conversionId } });
		if (!conversion) return refuse("no-such-conversion", "That conversion is not in the book. Load the page again.");
		const { id, machineId } = conversion;
		const fittings = await read.fitting.findMany({ where: { machineId, id: { in: [...input.fittingsIn, ...input.fittingsOut] } } });
		const goesIn = new Set(input.fittingsIn);
		const goesOut = new Set(input.fittingsOut);
		const mine = (ids: readonly string[]) => ({ where: { machineId, id: { in: [...ids] } } });
		const rows: RowChange[] = [
			...fittings.map((fitting) =>
				change("Fitting", fitting, {
					conversionId: goesIn.has(fitting.id) ? id : fitting.conversionId,
					outConversionId: goesOut.has(fitting.id) ? id : fitting.outConversionId,
				}),
			),
			...(await read.connection.findMany(mine(input.connections))).map((row) => change("Connection", row, { conversionId: id })),
			...(await read.alteration.findMany(mine(input.alterations))).map((row) => change("Alteration", row, { conversionId: id })),
			...(await read.step.findMany(mine(input.steps))).map((row) => change("Step", row, { conversionId: id })),
			...(await read.test.findMany(mine(input.tests))).map((row) => change("Test", row, { conversionId: id })),
		];
		if (rows.length === 0) return refuse("nothing-chosen", "Choose what belongs to the conversion.");
		return ok(
			deed(
				machineId,
				"conversion.joined",
				{ table: "Conversion", id },
				{
					say: `${rows.length} ${rows.length === 1 ? "thing belongs" : "things belong"} to conversion ${conversion.number}: ${conversion.name}.`,
				},
				rows,
				{ joined: rows.length },
			),
		);
	});
