import { type ShownIds, shownBy } from "@/lib/captures/queries";
import { capturedInWords, mayCapture, type Shown, shownBelongs, shownInWords, withoutStop } from "@/lib/captures/rules";
import {
	type AddCapture,
	addCaptureSchema,
	type FileUnder,
	fileUnderSchema,
	type SayLater,
	type SayWords,
	sayLaterSchema,
	sayWordsSchema,
	type WithdrawCapture,
	type WithdrawSeveral,
	withdrawCaptureSchema,
	withdrawSeveralSchema,
} from "@/lib/captures/schema";
import { readShows } from "@/lib/captures/shows";
import { ok, type Result, refuse } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import type { Reader } from "@/lib/db/store";
import { requireOnDisk, rowOfFile } from "@/lib/files/changes";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, change, deed, type EntryDraft, type Tables } from "@/lib/ledger/rows";

/** Keeps a photo, a drawing or a paper that keepFile has brought in, or a scanned tag: the file and what it shows in one deed. */
export async function addCapture(input: AddCapture, env: Env): Promise<Result<{ captureId: string; sha: string | null }>> {
	const form = addCaptureSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { machineId, kind, file, tag, words } = form.data;
	if (file) {
		const there = await requireOnDisk(env.store.folder, file.sha);
		if (!there.ok) return there;
	}
	const now = env.clock();
	// A phone's clock may be ahead of the shop's; nothing was taken later than now.
	const takenAt = form.data.takenAt === null || form.data.takenAt > now ? now : form.data.takenAt;
	return record(env, async (read) => {
		const may = mayCapture(kind, file?.mediaType ?? null, tag);
		if (!may.ok) return may;
		if (machineId !== null && (await read.machine.count({ where: { id: machineId } })) === 0) {
			return refuse("no-machine", "That machine is not known. Choose one from the list.");
		}
		const shown = await requireShown(read, machineId, form.data);
		if (!shown.ok) return shown;
		const id = env.newId();
		return ok(
			deed(
				machineId,
				kind === "tag" ? "tag.scanned" : "capture.added",
				{ table: "Capture", id },
				{
					say: capturedInWords(kind, shown.value, { words, fileName: file?.name ?? null, tag }),
					...(file ? { sha256: file.sha } : {}),
				},
				[
					...(file ? await rowOfFile(read, file) : []),
					add("Capture", {
						id,
						machineId,
						kind,
						fileSha: file?.sha ?? null,
						tag,
						takenAt,
						words,
						wordsAt: words === "" ? null : now,
						...idsOf(form.data),
						stands: "yes",
					}),
				],
				{ captureId: id, sha: file?.sha ?? null },
			),
		);
	});
}

/** Adds or betters the words of a capture, and what it shows. When it was taken stays; when the words came is kept beside it. */
export async function sayWords(input: SayWords, env: Env): Promise<Result<{ captureId: string }>> {
	const form = sayWordsSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { captureId, words } = form.data;
	return record(env, async (read) => {
		const before = await requireStanding(read, captureId);
		if (!before.ok) return before;
		const shown = await requireShown(read, before.value.machineId, form.data);
		if (!shown.ok) return shown;
		const of = shownInWords(shown.value);
		return ok(
			deed(
				before.value.machineId,
				"capture.described",
				{ table: "Capture", id: captureId },
				{
					say: `${before.value.wordsAt === null ? "Said" : "Said anew"} what a ${before.value.kind}${of === null ? "" : ` of ${of}`} shows: ${withoutStop(words)}.`,
				},
				[change("Capture", before.value, { words, wordsAt: env.clock(), ...idsOf(form.data) })],
				{ captureId },
			),
		);
	});
}

/** Withdraws a capture, with the reason. It stays in the ledger and on the disk; lists leave it out. */
export async function withdrawCapture(input: WithdrawCapture, env: Env): Promise<Result<{ captureId: string }>> {
	const form = withdrawCaptureSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { captureId, why } = form.data;
	return record(env, async (read) => {
		const before = await requireStanding(read, captureId);
		if (!before.ok) return before;
		const of = shownInWords((await shownBy(read, before.value)).shown);
		return ok(
			deed(
				before.value.machineId,
				"capture.withdrawn",
				{ table: "Capture", id: captureId },
				{ say: `Withdrew a ${before.value.kind}${of === null ? "" : ` of ${of}`}: ${withoutStop(why)}.`, why },
				[change("Capture", before.value, { stands: "no" })],
				{ captureId },
			),
		);
	});
}

/**
 * Says of one or several captures without words what they show, all the same, in one deed with an entry for each. What they
 * are known to show stays, and what is chosen comes to it.
 */
export async function sayLater(input: SayLater, env: Env): Promise<Result<{ count: number }>> {
	const form = sayLaterSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { captureIds, words } = form.data;
	const chosen = readShows(form.data.shows) ?? {};
	return ofEach(captureIds, env, async (read, before) => {
		if (before.wordsAt !== null)
			return refuse("has-words", `Somebody said meanwhile what it shows: ${withoutStop(before.words)}. Load the page again.`);
		const ids = { ...idsOf(before), ...chosen };
		const shown = await requireShown(read, before.machineId, ids);
		if (!shown.ok) {
			const sentence = Object.values(shown.error.fields ?? {})[0] ?? shown.error.say;
			return refuse(shown.error.code, shown.error.say, { fields: { shows: sentence } });
		}
		const of = shownInWords(shown.value);
		return ok({
			action: "capture.described",
			facts: { say: `Said what a ${KIND_WORDS[before.kind]}${of === null ? "" : ` of ${of}`} shows: ${withoutStop(words)}.` },
			rows: [change("Capture", before, { words, wordsAt: env.clock(), ...ids })],
		});
	});
}

/** Files captures that are of no machine yet under one. */
export async function fileUnder(input: FileUnder, env: Env): Promise<Result<{ count: number }>> {
	const form = fileUnderSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { captureIds, machineId } = form.data;
	return ofEach(captureIds, env, async (read, before) => {
		if (before.machineId !== null) return refuse("has-machine", "It is filed under a machine already. Load the page again.");
		const machine = await read.machine.findUnique({ where: { id: machineId }, select: { number: true } });
		if (!machine)
			return refuse("no-machine", "That machine is not known. Choose one from the list.", { fields: { machineId: "Choose another." } });
		const shown = await requireShown(read, machineId, idsOf(before));
		if (!shown.ok) return shown;
		return ok({
			machine: machineId,
			action: "capture.filed",
			facts: { say: `Filed a ${KIND_WORDS[before.kind]} under machine ${machine.number}.` },
			rows: [change("Capture", before, { machineId })],
		});
	});
}

/** Withdraws several captures for one reason. */
export async function withdrawSeveral(input: WithdrawSeveral, env: Env): Promise<Result<{ count: number }>> {
	const form = withdrawSeveralSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { captureIds, why } = form.data;
	return ofEach(captureIds, env, async (read, before) => {
		const of = shownInWords((await shownBy(read, before)).shown);
		return ok({
			action: "capture.withdrawn",
			facts: { say: `Withdrew a ${KIND_WORDS[before.kind]}${of === null ? "" : ` of ${of}`}: ${withoutStop(why)}.`, why },
			rows: [change("Capture", before, { stands: "no" })],
		});
	});
}

/** One deed over several captures: all of them, or none. */
async function ofEach(
	captureIds: readonly string[],
	env: Env,
	decide: (
		read: Reader,
		before: Tables["Capture"],
	) => Promise<Result<Pick<EntryDraft, "action" | "facts" | "rows"> & { readonly machine?: string }>>,
): Promise<Result<{ count: number }>> {
	return record(env, async (read) => {
		const entries: EntryDraft[] = [];
		for (const id of new Set(captureIds)) {
			const before = await requireStanding(read, id);
			if (!before.ok) return before;
			const entry = await decide(read, before.value);
			if (!entry.ok) return entry;
			entries.push({ machine: before.value.machineId, subject: { table: "Capture", id }, ...entry.value });
		}
		return ok({ entries, result: { count: entries.length } });
	});
}

const KIND_WORDS = { photo: "photo", drawing: "drawing", paper: "paper", tag: "scanned tag" } as const;

const idsOf = ({ positionId, partId, bagId, stepId }: ShownIds): ShownIds => ({ positionId, partId, bagId, stepId });

async function requireShown(read: Reader, machineId: string | null, ids: ShownIds): Promise<Result<Shown>> {
	const { shown, unknown } = await shownBy(read, ids);
	if (unknown)
		return refuse(`no-${unknown}`, `That ${unknown} is not known. Choose one from the list.`, {
			fields: { [`${unknown}Id`]: "Choose another." },
		});
	const belongs = shownBelongs(machineId, shown);
	return belongs.ok ? ok(shown) : belongs;
}

async function requireStanding(read: Reader, captureId: string) {
	const before = await read.capture.findUnique({ where: { id: captureId } });
	if (!before) return refuse("no-capture", "That photo or paper is not known. Choose one from the list.");
	if (before.stands === "no") return refuse("capture-withdrawn", "It was withdrawn already. Load the page again.");
	return ok(before);
}
