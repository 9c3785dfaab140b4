import type { Waiting } from "@/lib/outbox/queue";
import { hearShopTime } from "./shopTime";

/** A shop that has said nothing for so long is not there. */
const PATIENCE_MS = 90_000;
/** A large photo over a poor network takes its time: 20 KB a second and more get through. */
const BYTES_A_MS = 20;

/** Sends one and gives what came back; status 0 and nothing said when nothing did. */
export async function sent(
	item: Waiting,
	input: Readonly<Record<string, unknown>>,
	bytes: ArrayBuffer | undefined,
): Promise<{ readonly status: number; readonly said: unknown }> {
	try {
		const answer = await fetch(...requestOf(item, input, bytes));
		hearShopTime(answer.headers.get("date"));
		return { status: answer.status, said: await answer.json() };
	} catch (error) {
		// No network, no shop, or no JSON: either way it stays here.
		console.info("not sent", item.deed, error);
		return { status: 0, said: null };
	}
}

function requestOf(
	item: Waiting,
	input: Readonly<Record<string, unknown>>,
	bytes: ArrayBuffer = new ArrayBuffer(0),
): [string, RequestInit] {
	const signal = AbortSignal.timeout(PATIENCE_MS + Math.ceil(bytes.byteLength / BYTES_A_MS));
	if (item.file) {
		const query = new URLSearchParams({
			...(item.machine ? { machine: item.machine.id } : {}),
			deed: item.deed,
			name: item.file.name,
			taken: item.at,
			...(item.person ? { doneBy: item.person } : {}),
		});
		for (const key of ["position", "part", "bag", "step"]) {
			const id = input[key];
			if (typeof id === "string" && id !== "") query.set(key, id);
		}
		return [
			`/api/upload?${query}`,
			{ method: "POST", body: bytes, headers: { "content-type": item.file.type || "application/octet-stream" }, signal },
		];
	}
	const body = JSON.stringify({ ...input, deed: item.deed, kind: item.kind, doneBy: item.person, at: item.at });
	return ["/api/deeds", { method: "POST", body, headers: { "content-type": "application/json" }, signal }];
}

/** Asks the shop's printer for labels. False where it has none, or did not print: they then stay asked for, and are printed by hand. */
export async function printed(tags: readonly string[], deed: string): Promise<boolean> {
	try {
		const body = JSON.stringify({ tags, deed });
		const signal = AbortSignal.timeout(PRINTER_MS);
		const answer = await fetch("/api/print", { method: "POST", body, headers: { "content-type": "application/json" }, signal });
		const said: unknown = await answer.json();
		return typeof said === "object" && said !== null && "ok" in said && said.ok === true;
	} catch (error) {
		console.info("labels not printed", error);
		return false;
	}
}
const PRINTER_MS = 20_000;
