// Small deeds about what holds a part, what is wired to it and how it is set: at intake, and in the evening from the photos.

import { lower } from "@/lib/bags/rules";
import { ok, type Result, refuse } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import type { Reader } from "@/lib/db/store";
import { restOf } from "@/lib/fittings/fixingRows";
import {
	type ChangeConnection,
	changeConnectionSchema,
	type MoveFixing,
	moveFixingSchema,
	type SayConnection,
	type SayFixing,
	type SaySetting,
	sayConnectionSchema,
	sayFixingSchema,
	saySettingSchema,
} from "@/lib/fittings/schema";
import { bagsNamed, mayName } from "@/lib/fittings/seatRows";
import { wireInWords } from "@/lib/fittings/wireWords";
import { formatFixing } from "@/lib/fixings/fixingWords";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, change, deed } from "@/lib/ledger/rows";

/** Says what holds the parts of one or more positions, or describes a fixing of the record anew. Gives the fixing's id. */
export async function sayFixing(input: SayFixing, env: Env): Promise<Result<{ fixingId: string }>> {
	const form = sayFixingSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { fixingId, positionIds, lies, ...described } = form.data;
	return record(env, async (read) => {
		const seats: FittingAt[] = [];
		for (const id of new Set(positionIds)) {
			const at = await fittingAt(read, id);
			if (!at.ok) return at;
			seats.push(at.value);
		}
		const before =
			fixingId === null
				? null
				: await read.fixing.findUnique({ where: { id: fixingId }, include: { holds: { select: { fittingId: true } } } });
		if (fixingId !== null && !before) return refuse("no-fixing", "That fixing is not known. Choose it from the list.");
		const machineId = before?.machineId ?? seats[0]?.machineId;
		if (machineId === undefined) return refuse("holds-nothing", "Say which part it holds: choose its position.");
		if (seats.some((at) => at.machineId !== machineId)) {
			return refuse("two-machines", "A fixing holds parts of one machine. Choose positions of the same build.");
		}
		const home = seats.some((at) => at.open);
		const at = lies ?? { kind: home ? ("home" as const) : ("bench" as const) };
		if (at.kind === "bag") {
			const bags = await bagsNamed(read, [at.bagId], machineId);
			if (!bags.ok) return bags;
		}
		const place = { place: at.kind, bagId: at.kind === "bag" ? at.bagId : null };
		const where = seats.map((seat) => `${lower(seat.name)} (${seat.mark})`).join(", ");
		const say = `${before ? "Described" : "Said"} what holds ${where || "a part"}: ${formatFixing(described)}.`;
		const id = before?.id ?? env.newId();
		const held = new Set(before?.holds.map((hold) => hold.fittingId) ?? []);
		const holds = seats
			.filter((seat) => !held.has(seat.fittingId))
			.map((seat) => add("Hold", { id: env.newId(), fixingId: id, fittingId: seat.fittingId }));
		const row = before
			? change("Fixing", withoutHolds(before), { ...described, ...(lies ? place : {}) })
			: add("Fixing", { id, machineId, ...described, ...place });
		return ok(deed(machineId, "fixing.said", { table: "Fixing", id }, { say }, [row, ...holds], { fixingId: id }));
	});
}

/** Lays a fixing, or some of its lot, elsewhere: into a bag, on the bench, or says that it is lost. */
export async function moveFixing(input: MoveFixing, env: Env): Promise<Result<{ fixingId: string }>> {
	const form = moveFixingSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { fixingId, to, note } = form.data;
	return record(env, async (read) => {
		const before = await read.fixing.findUnique({ where: { id: fixingId }, include: { holds: { select: { fittingId: true } } } });
		if (!before) return refuse("no-fixing", "That fixing is not known. Choose it from the list.");
		const count = form.data.count ?? before.count;
		if (count > before.count) {
			return refuse("fixing-too-many", `There are only ${before.count} of them. Give a smaller count.`, { fields: { count: "Too many." } });
		}
		const bags = await bagsNamed(read, to.kind === "bag" ? [to.bagId] : [], before.machineId);
		if (!bags.ok) return bags;
		const row = withoutHolds(before);
		const moved = change("Fixing", row, {
			count,
			place: to.kind,
			bagId: to.kind === "bag" ? to.bagId : null,
			note: note || before.note,
		});
		const rest =
			count < before.count
				? restOf(
						row,
						before.holds.map((hold) => hold.fittingId),
						before.count - count,
						env.newId,
					)
				: [];
		const where = to.kind === "bag" ? `in ${bags.value.get(to.bagId) ?? "a bag"}` : to.kind === "bench" ? "on the bench" : to.kind;
		return ok(
			deed(
				before.machineId,
				"fixing.moved",
				{ table: "Fixing", id: fixingId },
				{ say: `${formatFixing({ ...before, count })}: ${where}.${note ? ` ${note}` : ""}` },
				[moved, ...rest],
				{ fixingId },
			),
		);
	});
}

/** Says that a wire or hose is at the part of a position. Gives its id. */
export async function sayConnection(input: SayConnection, env: Env): Promise<Result<{ connectionId: string }>> {
	const form = sayConnectionSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { positionId, conversionId, ...said } = form.data;
	return record(env, async (read) => {
		const at = await fittingAt(read, positionId);
		if (!at.ok) return at;
		const named = await mayName(read, at.value.machineId, { stepId: null, conversionId });
		if (!named.ok) return named;
		if (said.state === "connected" && !at.value.open) {
			return refuse(
				"part-is-out",
				`${at.value.name} (${at.value.mark}) is empty: nothing is connected there. Say that the wire is parked or removed.`,
			);
		}
		const id = env.newId();
		return ok(
			deed(
				at.value.machineId,
				"wire.said",
				{ table: "Connection", id },
				{ say: `Wire at ${lower(at.value.name)} (${at.value.mark}): ${wireInWords(said)}, ${said.state}.` },
				[add("Connection", { id, machineId: at.value.machineId, fittingId: at.value.fittingId, ...said, conversionId })],
				{ connectionId: id },
			),
		);
	});
}

/** Changes a wire: connects, parks or removes it, tags its ends, or moves it to the part of another position. */
export async function changeConnection(input: ChangeConnection, env: Env): Promise<Result<{ connectionId: string }>> {
	const form = changeConnectionSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { connectionId, positionId, conversionId, ...said } = form.data;
	return record(env, async (read) => {
		const before = await read.connection.findUnique({ where: { id: connectionId } });
		if (!before) return refuse("no-wire", "That wire is not known. Choose it from the list.");
		const at = positionId === undefined ? null : await fittingAt(read, positionId);
		if (at && !at.ok) return at;
		if (at && at.value.machineId !== before.machineId)
			return refuse("two-machines", "A wire stays in its machine. Choose a position of the same build.");
		const named = await mayName(read, before.machineId, { stepId: null, conversionId: conversionId ?? null });
		if (!named.ok) return named;
		const given = Object.fromEntries(Object.entries(said).filter(([, value]) => value !== undefined)) as Partial<typeof before>;
		const after = { ...before, ...given };
		const open =
			at === null
				? await read.fitting.findUnique({ where: { id: before.fittingId }, select: { untilAt: true } }).then((row) => row?.untilAt === null)
				: at.value.open;
		if (after.state === "connected" && !open) {
			return refuse(
				"part-is-out",
				"The part of this wire is out, so nothing is connected there. Put the part in, or choose the position that it goes to now.",
			);
		}
		return ok(
			deed(
				before.machineId,
				"wire.changed",
				{ table: "Connection", id: connectionId },
				{ say: `Wire ${wireInWords(after)}: ${after.state}${at ? ` at ${lower(at.value.name)} (${at.value.mark})` : ""}.` },
				[
					change("Connection", before, {
						...given,
						...(at ? { fittingId: at.value.fittingId } : {}),
						...(conversionId === undefined ? {} : { conversionId }),
					}),
				],
				{ connectionId },
			),
		);
	});
}

/** Says how a part is set, or was when it came out: turns, gaps, marks, lengths. Gives the setting's id. */
export async function saySetting(input: SaySetting, env: Env): Promise<Result<{ settingId: string }>> {
	const form = saySettingSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { positionId, kind, value, captureId } = form.data;
	return record(env, async (read) => {
		const at = await fittingAt(read, positionId);
		if (!at.ok) return at;
		if (captureId !== null && !(await read.capture.findUnique({ where: { id: captureId }, select: { id: true } }))) {
			return refuse("no-photo", "That photo is not here yet. Wait until it is sent, or leave it out.");
		}
		const id = env.newId();
		return ok(
			deed(
				at.value.machineId,
				"setting.said",
				{ table: "Setting", id },
				{ say: `Setting of ${lower(at.value.name)} (${at.value.mark}): ${kind} ${value}.` },
				[add("Setting", { id, machineId: at.value.machineId, fittingId: at.value.fittingId, kind, value, captureId })],
				{ settingId: id },
			),
		);
	});
}

type FittingAt = {
	readonly fittingId: string;
	readonly machineId: string;
	readonly name: string;
	readonly mark: string;
	/** Whether the part is there now. */
	readonly open: boolean;
};

/** The fitting in a position: the one now, or the last one. */
async function fittingAt(read: Reader, positionId: string): Promise<Result<FittingAt>> {
	const position = await read.position.findUnique({ where: { id: positionId }, select: { machineId: true, name: true, mark: true } });
	if (!position) return refuse("no-position", "That position is not known. Choose one from the build.");
	const open = await read.fitting.findFirst({ where: { positionId, untilAt: null }, select: { id: true } });
	const fitting =
		open ?? (await read.fitting.findFirst({ where: { positionId }, orderBy: [{ untilAt: "desc" }, { id: "desc" }], select: { id: true } }));
	if (!fitting) {
		return refuse("never-filled", `${position.name} (${position.mark}) never held a part. Put one in first, or say what was found there.`);
	}
	return ok({ ...position, fittingId: fitting.id, open: open !== null });
}

function withoutHolds<T extends { holds: unknown }>(row: T): Omit<T, "holds"> {
	const { holds: _, ...fixing } = row;
	return fixing;
}
