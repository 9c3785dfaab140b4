// Takes a photo or a paper: the body is the file. No multipart, so that the memory stays flat; its own guard, since the
// proxy would cut the body.

import { Readable } from "node:stream";
import type { ReadableStream as WebStream } from "node:stream/web";
import { hereAndNow } from "@/app/hereAndNow";
import { addCapture } from "@/lib/captures/changes";
import { err, type Refusal, type Result, refuse } from "@/lib/core/result";
import { shopStore } from "@/lib/db/shopStore";
import { registerFile } from "@/lib/files/changes";
import { keepFile } from "@/lib/files/keepFile";
import { MOST_BYTES } from "@/lib/files/mediaTypes";
import { readUpload, type Upload } from "@/lib/files/upload";
import { refusalOf } from "@/lib/http/guard";

/** What a browser gets for a file that was kept; `captureId` is null for a file that belongs to a device. */
type Kept = { readonly captureId: string | null; readonly sha: string };

export async function POST(request: Request): Promise<Response> {
	const body = request.body === null ? null : Readable.fromWeb(request.body as WebStream<Uint8Array>);
	const kept = await keep(request, body);
	if (kept.ok) return Response.json(kept);
	// A body that is left unread makes the browser report a broken connection instead of the sentence.
	if (body && !body.destroyed) await drain(body);
	return Response.json(kept, { status: statusOf(kept.error) });
}

async function keep(request: Request, body: Readable | null): Promise<Result<Kept>> {
	const refusal = refusalOf(request);
	if (refusal) return refuse("not-from-here", refusal);
	const query = new URL(request.url).searchParams;
	const upload = readUpload(query, request.headers);
	if (!upload.ok) return upload;
	const env = await hereAndNow({ deed: upload.value.deed, doneBy: query.get("doneBy") });
	if (!env.ok) return env;
	if (!body) return refuse("no-file", "There is no file in it. Choose one and send it again.");
	const { read, folder } = await shopStore();
	const machineId = await machineIdOf(read, upload.value.machine);
	if (!machineId.ok) return machineId;
	const file = await keepFile(folder, {
		body,
		name: upload.value.name,
		announced: upload.value.announced,
		anyType: upload.value.kind === "digital",
	});
	if (!file.ok) return file;
	if (upload.value.kind === "digital") {
		const registered = await registerFile({ file: file.value, machineId: machineId.value }, env.value);
		return registered.ok ? { ok: true, value: { captureId: null, sha: registered.value.sha } } : registered;
	}
	const { kind, takenAt, words, positionId, partId, bagId, stepId } = upload.value;
	const added = await addCapture(
		{ machineId: machineId.value, kind, file: file.value, takenAt, words, positionId, partId, bagId, stepId },
		env.value,
	);
	return added.ok ? { ok: true, value: { captureId: added.value.captureId, sha: file.value.sha } } : added;
}

/** By its number or its id; null for the shop alone. */
async function machineIdOf(
	read: Awaited<ReturnType<typeof shopStore>>["read"],
	machine: Upload["machine"],
): Promise<Result<string | null>> {
	if (machine === null) return { ok: true, value: null };
	const where = /^\d{1,9}$/.test(machine) ? { number: Number(machine) } : { id: machine };
	const found = await read.machine.findUnique({ where, select: { id: true } });
	return found
		? { ok: true, value: found.id }
		: err({ code: "no-machine", say: "That machine is not known. Load the page again and send it once more." });
}

async function drain(body: Readable): Promise<void> {
	let left = 2 * MOST_BYTES;
	try {
		for await (const chunk of body) {
			left -= (chunk as Uint8Array).length;
			if (left < 0) return;
		}
	} catch (error) {
		// The sender has gone; there is nobody left to tell.
		if (!(error instanceof Error)) throw error;
	}
}

function statusOf({ code }: Refusal): number {
	switch (code) {
		case "not-from-here":
		case "somebody-else":
			return 403;
		case "nobody":
			return 401;
		case "file-too-large":
			return 413;
		case "type-not-kept":
		case "phone-format":
			return 415;
		case "disk-full":
			return 507;
		case "busy":
			return 503;
		default:
			return 422;
	}
}
