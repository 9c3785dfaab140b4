// What becomes of the fixings when a part comes out or goes in, as rows.

import type { z } from "zod";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { inFixingSchema, outFixingSchema } from "@/lib/fittings/schema";
import { fixingSize, formatFixing } from "@/lib/fixings/fixingWords";
import { add, change, type RowChange, type Tables } from "@/lib/ledger/rows";

type Fixing = Tables["Fixing"];
export type OutFixing = z.output<typeof outFixingSchema>;
export type InFixing = z.output<typeof inFixingSchema>;
type FixingPlaceColumns = Pick<Fixing, "place" | "bagId">;

/** A fixing on record with the fittings that it holds or held. */
export type HeldFixing = { readonly fixing: Fixing; readonly fittingIds: readonly string[]; readonly holdsOtherOpen: boolean };

export type FixingRows = { readonly rows: RowChange[]; readonly words: string[] };

const described = ({ count, thread, length, head, drive, tightness, differs, note }: OutFixing | InFixing) => ({
	count,
	thread,
	length,
	head,
	drive,
	tightness,
	differs,
	note,
});

/**
 * Fixings that come off with the part of `fittingId`. One named twice is split, each share with its own place; one on
 * record that is not named goes with the part, unless it holds another part too.
 * `bags` are the bags that were named, by id, with their tags; `withPart` is where "with the part" leads.
 */
export function fixingsOut(
	named: readonly OutFixing[],
	onRecord: readonly HeldFixing[],
	of: { machineId: string; fittingId: string; withPart: FixingPlaceColumns; bags: ReadonlyMap<string, string>; newId: () => string },
): Result<FixingRows> {
	const rows: RowChange[] = [];
	const words: string[] = [];
	const known = new Map(onRecord.map((held) => [held.fixing.id, held]));
	const written = new Set<string>();
	for (const item of named) {
		const place = placeOf(item.went, of.withPart);
		words.push(`${formatFixing(item)}${wentInWords(item.went, of.bags)}`);
		const held = item.fixingId === null ? undefined : known.get(item.fixingId);
		if (item.fixingId !== null && !held) {
			return refuse("fixing-elsewhere", `${formatFixing(item)} does not hold this part. Enter it as a new line.`, {
				facts: { fixing: item.fixingId },
			});
		}
		if (held && !written.has(held.fixing.id)) {
			written.add(held.fixing.id);
			rows.push(change("Fixing", held.fixing, { ...described(item), ...place }));
			continue;
		}
		const id = of.newId();
		rows.push(add("Fixing", { id, machineId: of.machineId, ...described(item), ...place }));
		for (const fittingId of new Set([of.fittingId, ...(held?.fittingIds ?? [])])) {
			rows.push(add("Hold", { id: of.newId(), fixingId: id, fittingId }));
		}
	}
	for (const held of onRecord) {
		if (written.has(held.fixing.id) || held.holdsOtherOpen || held.fixing.place !== "home") continue;
		words.push(formatFixing(held.fixing));
		rows.push(change("Fixing", held.fixing, of.withPart));
	}
	return ok({ rows, words });
}

function placeOf(went: OutFixing["went"], withPart: FixingPlaceColumns): FixingPlaceColumns {
	switch (went.kind) {
		case "with-part":
			return withPart;
		case "bag":
			return { place: "bag", bagId: went.bagId };
		case "stays":
			return { place: "home", bagId: null };
		default:
			return { place: went.kind, bagId: null };
	}
}

function wentInWords(went: OutFixing["went"], bags: ReadonlyMap<string, string>): string {
	switch (went.kind) {
		case "with-part":
			return "";
		case "bag":
			return ` in ${bags.get(went.bagId) ?? "another bag"}`;
		case "bench":
			return " on the bench";
		case "left":
			return " left in place";
		case "stays":
			return " still holding";
		default:
			return ` ${went.kind}`;
	}
}

/** Fixings that hold the part of the new fitting: whole lots, shares of lots, and new ones. */
export function fixingsIn(
	named: readonly InFixing[],
	onRecord: readonly HeldFixing[],
	of: { machineId: string; fittingId: string; newId: () => string },
): Result<FixingRows> {
	const rows: RowChange[] = [];
	const words: string[] = [];
	const known = new Map(onRecord.map((held) => [held.fixing.id, held]));
	const written = new Set<string>();
	for (const item of named) {
		words.push(formatFixing(item));
		if (item.fixingId === null) {
			const id = of.newId();
			rows.push(add("Fixing", { id, machineId: of.machineId, ...described(item), place: "home", bagId: null }));
			rows.push(add("Hold", { id: of.newId(), fixingId: id, fittingId: of.fittingId }));
			continue;
		}
		const held = known.get(item.fixingId);
		if (!held || held.fixing.machineId !== of.machineId) {
			return refuse("no-fixing", "One of the fixings is not of this machine. Choose it from the list, or enter a new line.");
		}
		const { fixing } = held;
		if (written.has(fixing.id)) return refuse("fixing-twice", `${formatFixing(fixing)} is named twice. Give the count on one line.`);
		written.add(fixing.id);
		if (fixing.place === "scrapped") return refuse("fixing-scrapped", `${formatFixing(fixing)}: scrapped. Choose other fixings.`);
		if (item.count > fixing.count) {
			return refuse(
				"fixing-too-many",
				`There are only ${fixing.count} of ${fixingSize(fixing)} on record. Enter the others as a line of their own.`,
				{ facts: { fixing: fixing.id, count: fixing.count } },
			);
		}
		rows.push(change("Fixing", fixing, { ...described(item), place: "home", bagId: null }));
		rows.push(add("Hold", { id: of.newId(), fixingId: fixing.id, fittingId: of.fittingId }));
		if (item.count < fixing.count) rows.push(...restOf(fixing, held.fittingIds, fixing.count - item.count, of.newId));
	}
	return ok({ rows, words });
}

/** The members of a lot that stay where they are, as a lot of their own that still knows what it held. */
export function restOf(fixing: Fixing, fittingIds: readonly string[], count: number, newId: () => string): RowChange[] {
	const id = newId();
	const { entry: _, ...same } = fixing;
	return [add("Fixing", { ...same, id, count }), ...fittingIds.map((fittingId) => add("Hold", { id: newId(), fixingId: id, fittingId }))];
}
