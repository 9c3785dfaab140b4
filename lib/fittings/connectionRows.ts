// What becomes of the wires when a part comes out or goes in, as rows.

import type { z } from "zod";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { inConnectionSchema, outConnectionSchema } from "@/lib/fittings/schema";
import { add, change, type RowChange, type Tables } from "@/lib/ledger/rows";

type Connection = Tables["Connection"];
export type OutConnection = z.output<typeof outConnectionSchema>;
export type InConnection = z.output<typeof inConnectionSchema>;

/** What was said of a wire; what was left empty keeps what is on record. */
const said = (item: OutConnection | InConnection, before: Connection) => ({
	from: item.from || before.from,
	to: item.to || before.to,
	colour: item.colour || before.colour,
	base: item.base || before.base,
	tracer: item.tracer || before.tracer,
	gauge: item.gauge || before.gauge,
	tagFrom: item.tagFrom || before.tagFrom,
	tagTo: item.tagTo || before.tagTo,
	note: item.note || before.note,
});

const texts = (item: OutConnection | InConnection) => ({
	from: item.from,
	to: item.to,
	colour: item.colour,
	base: item.base,
	tracer: item.tracer,
	gauge: item.gauge,
	tagFrom: item.tagFrom,
	tagTo: item.tagTo,
	note: item.note,
});

/** Wires of a part that comes out. One on record that is not named is parked: nothing is connected to a part that is out. */
export function connectionsOut(
	named: readonly OutConnection[],
	onRecord: readonly Connection[],
	of: { machineId: string; fittingId: string; conversionId: string | null; newId: () => string },
): Result<{ rows: RowChange[]; undone: number }> {
	const rows: RowChange[] = [];
	let undone = 0;
	const known = new Map(onRecord.map((wire) => [wire.id, wire]));
	for (const item of named) {
		if (item.state !== "connected") undone += 1;
		if (item.connectionId === null) {
			rows.push(
				add("Connection", {
					id: of.newId(),
					machineId: of.machineId,
					fittingId: of.fittingId,
					...texts(item),
					state: item.state,
					conversionId: null,
				}),
			);
			continue;
		}
		const before = known.get(item.connectionId);
		if (!before) return refuse("no-wire", "One of the wires is not at this part. Enter it as a new line.");
		known.delete(before.id);
		rows.push(change("Connection", before, { ...said(item, before), state: item.state }));
	}
	for (const before of known.values()) {
		if (before.state !== "connected") continue;
		undone += 1;
		rows.push(change("Connection", before, { state: "parked" }));
	}
	return ok({ rows, undone });
}

/** Wires of a part that goes in: those of the record move to the new fitting. */
export function connectionsIn(
	named: readonly InConnection[],
	onRecord: readonly Connection[],
	of: { machineId: string; fittingId: string; conversionId: string | null; newId: () => string },
): Result<{ rows: RowChange[]; connected: number }> {
	const rows: RowChange[] = [];
	let connected = 0;
	const known = new Map(onRecord.map((wire) => [wire.id, wire]));
	for (const item of named) {
		if (item.state === "connected") connected += 1;
		if (item.connectionId === null) {
			rows.push(
				add("Connection", {
					id: of.newId(),
					machineId: of.machineId,
					fittingId: of.fittingId,
					...texts(item),
					state: item.state,
					conversionId: of.conversionId,
				}),
			);
			continue;
		}
		const before = known.get(item.connectionId);
		if (!before || before.machineId !== of.machineId) {
			return refuse("no-wire", "One of the wires is not of this machine. Choose it from the list, or enter a new line.");
		}
		known.delete(before.id);
		if (before.state === "connected") {
			return refuse("wire-connected", `The wire from ${before.from} to ${before.to || "nowhere"} is connected already. Leave it out here.`);
		}
		rows.push(change("Connection", before, { ...said(item, before), fittingId: of.fittingId, state: item.state }));
	}
	return ok({ rows, connected });
}
