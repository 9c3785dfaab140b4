// Sends one file's bytes to the shop and says how far it is. XMLHttpRequest, since fetch cannot tell how much has gone out.

import { type Refusal, type Result, refuse } from "@/lib/core/result";

export type Kept = { readonly captureId: string | null; readonly sha: string };

/** What is said of the file besides its bytes. `deed` stays the same from try to try, so that it is kept once. */
export type SendWords = {
	readonly machine: number;
	readonly kind: "photo" | "paper" | "digital";
	readonly deed: string;
};

/** Resolves with the shop's answer; a shop that cannot be reached is a refusal that keeps the file on this device. */
export function sendFile(file: File, words: SendWords, onPart: (part: number) => void): Promise<Result<Kept>> {
	const query = new URLSearchParams({
		machine: String(words.machine),
		kind: words.kind,
		deed: words.deed,
		name: file.name,
		takenAt: new Date(file.lastModified).toISOString(),
	});
	return new Promise((resolve) => {
		const request = new XMLHttpRequest();
		request.open("POST", `/api/upload?${query}`);
		request.setRequestHeader("content-type", file.type || "application/octet-stream");
		request.responseType = "json";
		request.upload.onprogress = (event) => {
			if (event.lengthComputable && event.total > 0) onPart(event.loaded / event.total);
		};
		request.onload = () => resolve(readAnswer(request.response));
		request.onerror = () => resolve(NOT_REACHED);
		request.send(file);
	});
}

const NOT_REACHED = refuse("no-answer", "The shop could not be reached. The file is still here: send it again when the network is back.");

function readAnswer(said: unknown): Result<Kept> {
	if (typeof said !== "object" || said === null || !("ok" in said)) return NOT_REACHED;
	if (said.ok === true && "value" in said && isKept(said.value)) return { ok: true, value: said.value };
	if (said.ok === false && "error" in said && isRefusal(said.error)) return { ok: false, error: said.error };
	return NOT_REACHED;
}

const isKept = (value: unknown): value is Kept =>
	typeof value === "object" && value !== null && "sha" in value && typeof value.sha === "string" && "captureId" in value;

const isRefusal = (error: unknown): error is Refusal =>
	typeof error === "object" && error !== null && "say" in error && typeof error.say === "string" && "code" in error;
