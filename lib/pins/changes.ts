import { ok, type Result, refuse } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import type { Reader } from "@/lib/db/store";
import type { Env } from "@/lib/ledger/env";
import { overMeanwhile } from "@/lib/ledger/meanwhile";
import { record } from "@/lib/ledger/record";
import { add, change, deed } from "@/lib/ledger/rows";
import { thingOf } from "@/lib/pins/queries";
import { mayMark, mayPin, nextNumber, type PinThing, placeInWords } from "@/lib/pins/rules";
import { type AddPin, addPinSchema, type ChangePin, changePinSchema, type TakeOffPin, takeOffPinSchema } from "@/lib/pins/schema";

export type Pinned = { readonly pinId: string; readonly number: number };

/** Puts a pin on a photo. Two phones at once each get a number of their own. */
export async function addPin(input: AddPin, env: Env): Promise<Result<Pinned>> {
	const form = addPinSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { captureId, x, y, thing, words } = form.data;
	return record(env, async (read) => {
		const photo = await requirePhoto(read, captureId);
		if (!photo.ok) return photo;
		const name = await requireThing(read, photo.value, thing, words);
		if (!name.ok) return name;
		const given = await read.pin.findMany({ where: { captureId }, select: { number: true, stands: true } });
		const number = nextNumber(
			given.map((pin) => pin.number),
			given.filter(({ stands }) => stands === "yes").length,
		);
		if (!number.ok) return number;
		const id = env.newId();
		return ok(
			deed(
				photo.value,
				"pin.added",
				{ table: "Pin", id },
				{ say: `Put pin ${number.value} on a photo: ${name.value}.` },
				[add("Pin", { id, captureId, number: number.value, x, y, ...thing, words, stands: "yes" })],
				{ pinId: id, number: number.value },
			),
		);
	});
}

/** Moves a pin, or says anew what is there. Its number stays. */
export async function changePin(input: ChangePin, env: Env): Promise<Result<Pinned>> {
	const form = changePinSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { pinId, x, y, thing, words } = form.data;
	return record(env, async (read) => {
		const before = await requireStanding(read, pinId);
		if (!before.ok) return before;
		const photo = await requirePhoto(read, before.value.captureId);
		if (!photo.ok) return photo;
		const patch = await overMeanwhile(
			read,
			"Pin",
			before.value,
			env.seen ?? { seen: null, told: null },
			{ x, y, ...thing, words },
			{
				fields: { positionId: "thing", connectionId: "thing", fixingId: "thing" },
				together: [
					["x", "y"],
					["positionId", "connectionId", "fixingId"],
				],
			},
		);
		if (!patch.ok) return patch;
		const name = await requireThing(read, photo.value, patch.value, patch.value.words);
		if (!name.ok) return name;
		const { number } = before.value;
		const moved = patch.value.x !== before.value.x || patch.value.y !== before.value.y;
		return ok(
			deed(
				photo.value,
				"pin.changed",
				{ table: "Pin", id: pinId },
				{ say: `Pin ${number} of a photo: ${name.value}${moved ? `, moved to ${placeInWords(patch.value)}` : ""}.` },
				[change("Pin", before.value, patch.value)],
				{ pinId, number },
			),
		);
	});
}

/** Takes a pin off its photo, with the reason. Its number is not given out again. */
export async function takeOffPin(input: TakeOffPin, env: Env): Promise<Result<Pinned>> {
	const form = takeOffPinSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { pinId, why } = form.data;
	return record(env, async (read) => {
		const before = await requireStanding(read, pinId);
		if (!before.ok) return before;
		const { number, captureId } = before.value;
		const photo = await read.capture.findUniqueOrThrow({ where: { id: captureId }, select: { machineId: true } });
		return ok(
			deed(
				photo.machineId,
				"pin.taken-off",
				{ table: "Pin", id: pinId },
				{ say: `Took pin ${number} off a photo: ${why.replace(/[.\s]+$/, "")}.`, why },
				[change("Pin", before.value, { stands: "no" })],
				{ pinId, number },
			),
		);
	});
}

/** The machine of a photo that may be pinned. */
async function requirePhoto(read: Reader, captureId: string): Promise<Result<string>> {
	const capture = await read.capture.findUnique({
		where: { id: captureId },
		select: { stands: true, machineId: true, file: { select: { mediaType: true } } },
	});
	if (!capture) return refuse("no-capture", "That photo is not known. Load the page again.");
	return mayPin({ ...capture, mediaType: capture.file?.mediaType ?? null });
}

async function requireStanding(read: Reader, pinId: string) {
	const before = await read.pin.findUnique({ where: { id: pinId } });
	if (!before) return refuse("no-pin", "That pin is not known. Load the page again.");
	if (before.stands === "no") return refuse("pin-off", "Somebody took that pin off. Load the page again, and put a new one there.");
	return ok(before);
}

/** What the pin marks, in words, or why it may not. */
async function requireThing(read: Reader, machineId: string, ids: PinThing, words: string): Promise<Result<string>> {
	const thing = await thingOf(read, ids);
	const may = mayMark(machineId, thing, words);
	if (!may.ok) return may;
	const named = thing === null || thing === "unknown" ? [] : [thing.name];
	return ok([...named, ...(words === "" ? [] : [words.replace(/[.\s]+$/, "")])].join(": "));
}
