// What waits on a phone until the shop has it: which is sent next, as what, and what becomes of it. Pure.
//
// The rules: everything is kept before anything is sent; it is sent in the order in which it was done; what the shop
// refuses is put aside with its words and holds up only what needs it; and what has no answer is sent again as it was,
// under the same id, which the shop does once.

/** What can wait. A photo is sent as its bytes, everything else as its answers. */
export type WaitingKind = "photo" | "take-out" | "put-back" | "tag";

export type Waiting = {
	/** Client-made id of the deed: sent twice, it is done once. */
	readonly deed: string;
	readonly kind: WaitingKind;
	/** When it was done, by the shop's clock as far as the phone knows it. */
	readonly at: string;
	/** The list on the phone says it with these words: "Lens carriage (k05) out". */
	readonly words: string;
	readonly machine: { readonly id: string; readonly number: number; readonly name: string } | null;
	/** Who did it: the phone may have gone to another hand by the time it is sent. */
	readonly person: string | null;
	readonly input: Readonly<Record<string, unknown>>;
	/** Photos that belong to it, by their deeds: without one that was refused it can still be. */
	readonly photos: readonly string[];
	/** A deed whose bag it goes into: without that it cannot be. */
	readonly bagOf: string | null;
	/** The labels are asked for as soon as it is done. */
	readonly wantsLabel: boolean;
	/** The page on which a refusal can be mended; null when there is none. */
	readonly mendAt: string | null;
	/** The draft of the form that it was typed in: kept until it is done, so that a refusal can be mended there. */
	readonly draft: string | null;
	/** Of a photo; its bytes are kept beside the queue. */
	readonly file: { readonly type: string; readonly name: string } | null;
	/** The answers as they went out first; null until then. Their answer may have been lost, and then the shop has done this, and nothing else under this id. */
	readonly sent: Readonly<Record<string, unknown>> | null;
	/** Why the shop refused it, and at which fields; null while it waits. */
	readonly refused: Refused | null;
};

export type Refused = { readonly code: string; readonly say: string; readonly fields: Readonly<Record<string, string>> };

/** What the shop answered to a deed that was done. */
export type Done = {
	readonly deed: string;
	readonly kind: WaitingKind;
	readonly words: string;
	readonly machine: number | null;
	readonly value: Readonly<Record<string, unknown>>;
	/** Tags whose labels were asked for and are not printed yet. */
	readonly labels: readonly string[];
	/** The id of their print, the same from whichever page or tab they are printed: printed once, they are in the book once. */
	readonly print: string;
};

/** What the shop said, as far as the queue must know. */
export type Answer =
	| { readonly kind: "done"; readonly value: Readonly<Record<string, unknown>> }
	| { readonly kind: "refused"; readonly refused: Refused }
	/** Nothing came back, or a word that trying later may help: everything stays as it is. */
	| { readonly kind: "later"; readonly say: string };

/** The next to be sent: the first that was not refused. Never one before another, so that the book has them in the order in which they were done. */
export const nextToSend = (waiting: readonly Waiting[]): Waiting | null => waiting.find((item) => item.refused === null) ?? null;

type Results = ReadonlyMap<string, Done>;

/** The answers as they go out, the same each time: photos and the bag by the ids that the shop gave them; or why it cannot go. */
export function readyToSend(
	item: Waiting,
	results: Results,
): { readonly input: Readonly<Record<string, unknown>> } | { readonly refused: Refused } {
	if (item.sent !== null) return { input: item.sent };
	const taken = item.photos.flatMap((deed) => textIn(results.get(deed)?.value, "captureId") ?? []);
	const before = Array.isArray(item.input.captureIds) ? item.input.captureIds : [];
	const withPhotos = taken.length === 0 ? item.input : { ...item.input, captureIds: [...before, ...taken] };
	if (item.bagOf === null) return { input: withPhotos };
	const bagId = textIn(results.get(item.bagOf)?.value, "bagId");
	if (bagId === null) {
		return {
			refused: {
				code: "bag-not-made",
				say: "The bag that it goes into is not in the book: what made it was not recorded. Open it again and say where it lies.",
				fields: {},
			},
		};
	}
	return { input: { ...withPhotos, into: { kind: "bag", bagId } } };
}

/** A text of the shop's answer, or null. */
export function textIn(value: Readonly<Record<string, unknown>> | undefined, key: string): string | null {
	const found = value?.[key];
	return typeof found === "string" && found !== "" ? found : null;
}

/** The tags to print when a deed that asked for labels is done: of the bag that was made for it, and of the part. */
export function labelsOf(item: Waiting, value: Readonly<Record<string, unknown>>): string[] {
	if (!item.wantsLabel) return [];
	const into = item.input.into;
	const isNew = item.bagOf === null && typeof into === "object" && into !== null && "kind" in into && into.kind === "new-bag";
	return [isNew ? textIn(value, "bagTag") : null, textIn(value, "partTag")].filter((tag) => tag !== null);
}

/** Milliseconds until the next try after so many in vain: 2 s, doubling, 30 s at most. */
export const pauseAfter = (tries: number): number => Math.min(30_000, 1000 * 2 ** Math.max(1, tries));

/**
 * What an answer means. 503 and 507 (busy, disk full), a person who is not chosen and everything that is no answer of
 * ours (no JSON: a proxy, a shop that is just starting) may be otherwise later; a refusal stays one.
 */
export function answerIn(status: number, said: unknown): Answer {
	if (isRecord(said) && said.ok === true) return { kind: "done", value: isRecord(said.value) ? said.value : {} };
	if (!isRecord(said) || said.ok !== false || !isRecord(said.error) || typeof said.error.say !== "string") {
		return { kind: "later", say: "The shop did not answer." };
	}
	const { code, say, fields } = said.error;
	if (status === 503 || status === 507 || LATER.has(String(code))) return { kind: "later", say };
	return { kind: "refused", refused: { code: String(code), say, fields: isRecord(fields) ? textsOf(fields) : {} } };
}

/** Refusals that are nobody's last word: who is asking can be said, who did it can be chosen, a book in use is free again. */
const LATER: ReadonlySet<string> = new Set(["nobody", "somebody-else", "not-from-here", "busy", "disk-full"]);

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === "object" && value !== null;
const textsOf = (fields: Record<string, unknown>): Record<string, string> =>
	Object.fromEntries(Object.entries(fields).flatMap(([key, words]) => (typeof words === "string" ? [[key, words]] : [])));
