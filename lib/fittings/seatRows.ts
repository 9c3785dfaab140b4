// Reads the rows that a deed at a position needs.

import { bagFact, outInBag } from "@/lib/bags/nesting";
import { mayHold } from "@/lib/bags/rules";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import type { HeldFixing } from "@/lib/fittings/fixingRows";
import type { PartFact, SeatFact } from "@/lib/fittings/rules";
import { change, type RowChange, type Tables } from "@/lib/ledger/rows";
import { sidesOf } from "@/lib/positions/sides";

export type Seat = { readonly fact: SeatFact; readonly machine: { readonly id: string; readonly number: number; readonly name: string } };

/** The position with its machine. */
export async function seatOfId(read: Reader, positionId: string): Promise<Result<Seat>> {
	const row = await read.position.findUnique({
		where: { id: positionId },
		select: {
			id: true,
			machineId: true,
			mark: true,
			name: true,
			kind: true,
			sides: true,
			machine: { select: { id: true, number: true, name: true } },
		},
	});
	if (!row) return refuse("no-position", "That position is not known. Choose one from the build.");
	const { machine, sides, ...position } = row;
	return ok({ fact: { ...position, sides: sidesOf(sides) }, machine });
}

/** The part as the rules see it, with its row. */
export async function partOfId(read: Reader, partId: string): Promise<{ fact: PartFact; row: Tables["Part"] } | null> {
	const found = await read.part.findUnique({
		where: { id: partId },
		include: { tag: { select: { id: true } }, machine: { select: { number: true } }, position: { select: { name: true } } },
	});
	if (!found) return null;
	const { tag, machine, position, ...row } = found;
	return {
		row,
		fact: {
			id: row.id,
			name: row.name,
			tag: tag?.id ?? null,
			machineId: row.machineId,
			machineNumber: machine.number,
			origin: row.origin,
			place: row.place,
			fittedIn: position?.name ?? null,
			outIn: await outInBag(read, row.bagId),
		},
	};
}

/** Fixings with what they hold: those of one fitting, and those named by id. */
export async function heldFixings(read: Reader, fittingId: string | null, fixingIds: readonly string[]): Promise<HeldFixing[]> {
	const rows = await read.fixing.findMany({
		where: { OR: [{ holds: { some: { fittingId: fittingId ?? "" } } }, { id: { in: [...fixingIds] } }] },
		orderBy: { id: "asc" },
		include: { holds: { select: { fittingId: true, fitting: { select: { untilAt: true } } } } },
	});
	return rows.map(({ holds, ...fixing }) => ({
		fixing,
		fittingIds: holds.map((hold) => hold.fittingId),
		holdsOtherOpen: holds.some((hold) => hold.fittingId !== fittingId && hold.fitting.untilAt === null),
	}));
}

/** Tags of the bags named, each fit to hold something of the machine. */
export async function bagsNamed(read: Reader, bagIds: readonly string[], machineId: string): Promise<Result<Map<string, string>>> {
	const tags = new Map<string, string>();
	for (const id of new Set(bagIds)) {
		const bag = await bagFact(read, id);
		if (!bag) return refuse("no-bag", "One of the bags is not known. Scan its tag, or choose one from the list.");
		const may = mayHold(bag, machineId);
		if (!may.ok) return may;
		tags.set(id, bag.tag);
	}
	return ok(tags);
}

/** Whether the step and the conversion named are of the machine. */
export async function mayName(
	read: Reader,
	machineId: string,
	named: { stepId: string | null; conversionId: string | null },
): Promise<Result<true>> {
	if (named.stepId !== null && !(await read.step.findFirst({ where: { id: named.stepId, machineId }, select: { id: true } }))) {
		return refuse("no-step", "That step is not of this machine. Choose one from its list.");
	}
	if (
		named.conversionId !== null &&
		!(await read.conversion.findFirst({ where: { id: named.conversionId, machineId }, select: { id: true } }))
	) {
		return refuse("no-conversion", "That conversion is not of this machine. Choose one from its list.");
	}
	return ok(true);
}

/** Photos taken beforehand, tied to the position, the part and the step; what was tied already stays so. */
export async function captureRows(
	read: Reader,
	captureIds: readonly string[],
	to: { machineId: string; positionId: string; partId: string; stepId: string | null },
): Promise<Result<RowChange[]>> {
	const captures = await read.capture.findMany({ where: { id: { in: [...new Set(captureIds)] } }, orderBy: { id: "asc" } });
	if (captures.length < new Set(captureIds).size) {
		return refuse("no-photo", "One of the photos is not here yet. Wait until it is sent, or leave it out.");
	}
	const foreign = captures.some((capture) => capture.machineId !== null && capture.machineId !== to.machineId);
	if (foreign) return refuse("photo-of-another", "One of the photos is of another machine. Leave it out.");
	return ok(
		captures.map((capture) =>
			change("Capture", capture, {
				machineId: to.machineId,
				positionId: capture.positionId ?? to.positionId,
				partId: capture.partId ?? to.partId,
				stepId: capture.stepId ?? to.stepId,
			}),
		),
	);
}
