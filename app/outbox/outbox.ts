"use client";

import { useSyncExternalStore } from "react";
import { clientId } from "@/app/ui/clientId";
import { answerIn, type Done, labelsOf, nextToSend, pauseAfter, type Refused, readyToSend, type Waiting } from "@/lib/outbox/queue";
import { openPhoneStore, type PhoneStore } from "./phoneStore";
import { printed, sent } from "./sent";

/** The queue as pages see it. */
export type Outbox = {
	/** False until the phone was asked what it holds. */
	readonly isRead: boolean;
	/** False where nothing outlasts the page. */
	readonly keeps: boolean;
	/** In the order in which it was done; what was refused among it. */
	readonly waiting: readonly Waiting[];
	readonly done: ReadonlyMap<string, Done>;
	/** The deed that is under way. */
	readonly sending: string | null;
	/** Why nothing goes at the moment; null while it does, or there is nothing to go. */
	readonly held: string | null;
};

/** What became of a deed: done, refused (and off the queue: the form that asked shows it), or still waiting on the phone. */
export type Outcome =
	| { readonly kind: "done"; readonly done: Done }
	| { readonly kind: "refused"; readonly refused: Refused }
	| { readonly kind: "waits"; readonly say: string };

const EMPTY: Outbox = { isRead: false, keeps: true, waiting: [], done: new Map(), sending: null, held: null };

let outbox = EMPTY;
let opened: Promise<PhoneStore> | null = null;
let listens = false;
/** Labels that the shop's own printer is asked for, by the deeds that asked. */
const printing = new Map<string, Promise<boolean>>();
let going = false;
let wanted = false;
let tries = 0;
let again: ReturnType<typeof setTimeout> | undefined;
const listeners = new Set<() => void>();
const channel = typeof BroadcastChannel === "undefined" || typeof window === "undefined" ? null : new BroadcastChannel("asfound-outbox");

const show = (patch: Partial<Outbox>) => {
	outbox = { ...outbox, ...patch };
	for (const listener of listeners) listener();
};

/** Opens what the phone keeps, once a page, and goes on with what waits from before. */
export function phone(): Promise<PhoneStore> {
	if (opened) return opened;
	opened = openPhoneStore(() => {
		opened = null;
	});
	listen();
	opened.then(() => go(true));
	return opened;
}

function listen(): void {
	if (listens) return;
	listens = true;
	const wake = () => void go(true);
	window.addEventListener("online", wake);
	window.addEventListener("pageshow", wake);
	document.addEventListener("visibilitychange", () => {
		if (document.visibilityState === "visible") wake();
	});
	if (channel) channel.onmessage = () => void refresh();
}

async function refresh(): Promise<void> {
	const store = await phone();
	const { waiting, done } = await store.read();
	show({ isRead: true, keeps: store.keeps, waiting, done: new Map(done.map((one) => [one.deed, one])) });
}

async function changed(): Promise<void> {
	await refresh();
	channel?.postMessage("changed");
}

/** What is the same for most of what waits. */
const PLAIN = { photos: [], bagOf: null, wantsLabel: false, mendAt: null, draft: null, file: null } as const;
type Queued = Omit<Waiting, "refused" | "sent" | keyof typeof PLAIN> & Partial<Pick<Waiting, keyof typeof PLAIN>>;

/** Keeps it on the phone, then sends what there is to send. Kept means on the disk: what comes back afterwards changes nothing. */
export async function queue(item: Queued, bytes?: ArrayBuffer): Promise<void> {
	const store = await phone();
	await store.put({ ...PLAIN, ...item, sent: null, refused: null }, bytes);
	await changed();
	void go(true);
}

/** Leaves a waiting deed out: it was never done, as far as the book goes. */
export async function leaveOut(deed: string): Promise<void> {
	const store = await phone();
	await store.remove(deed);
	await changed();
}

/** Leaves a deed out if it was never sent. False when it was: then the shop may have done it, and only a deed behind it takes it back. */
export async function leaveOutUnsent(deed: string): Promise<boolean> {
	const store = await phone();
	const isOut = await store.removeUnsent(deed);
	await changed();
	return isOut;
}

/** Sends what was refused once more, as it was: the reason may be gone. */
export async function tryAgain(deed: string): Promise<void> {
	const store = await phone();
	const item = outbox.waiting.find((one) => one.deed === deed);
	// A refusal is an answer: nothing was done under this id, and what has come since may go along.
	if (item) await store.change({ ...item, sent: null, refused: null });
	await changed();
	void go(true);
}

/** The labels of a deed that are left to be printed by hand, once the shop's own printer has had its turn. */
export async function labelsLeft(deed: string): Promise<readonly string[]> {
	await printing.get(deed);
	return outbox.done.get(deed)?.labels ?? [];
}

/** The labels of these deeds were printed, or are not wanted any more. */
export async function labelsSeenTo(deeds: readonly string[]): Promise<void> {
	const store = await phone();
	for (const deed of deeds) {
		const done = outbox.done.get(deed);
		if (done) await store.changeDone({ ...done, labels: [] });
	}
	await changed();
}

/**
 * What became of a deed, waiting `patience` milliseconds at most. One that the shop refuses is taken off the queue, since
 * whoever asks shows the words and still has what was typed.
 */
export function outcomeOf(deed: string, patience: number): Promise<Outcome> {
	return new Promise((resolve) => {
		let late: ReturnType<typeof setTimeout> | undefined;
		const finish = (outcome: Outcome) => {
			clearTimeout(late);
			listeners.delete(look);
			resolve(outcome);
		};
		const look = () => {
			const done = outbox.done.get(deed);
			if (done) return finish({ kind: "done", done });
			const item = outbox.waiting.find((one) => one.deed === deed);
			if (item?.refused) {
				const { refused } = item;
				listeners.delete(look);
				// Off the queue first: what is pressed next goes under the same id.
				void leaveOut(deed).then(() => finish({ kind: "refused", refused }));
				return;
			}
			if (item && outbox.held !== null && outbox.sending === null) finish({ kind: "waits", say: outbox.held });
		};
		late = setTimeout(() => finish({ kind: "waits", say: SLOW }), patience);
		listeners.add(look);
		look();
	});
}
const SLOW = "The shop takes its time.";

/** Sends in order until nothing is left or something holds it up. One loop a page; across pages the ids make a second sending harmless. */
async function go(now = false): Promise<void> {
	if (now) clearTimeout(again);
	// Queued while the loop was ending, it would be left behind.
	wanted = true;
	if (going) return;
	going = true;
	try {
		let later: string | null = null;
		while (wanted && later === null) {
			wanted = false;
			later = await sendAll(await phone());
		}
		show({ sending: null, held: later });
		if (later !== null) again = setTimeout(() => void go(), pauseAfter(++tries));
	} catch (error) {
		// Full, or shut by the browser: what was kept before is still there, and is tried again.
		console.error("what this phone keeps could not be read or written", error);
		show({ sending: null, held: "This phone cannot write what it keeps: its storage may be full." });
		again = setTimeout(() => void go(), pauseAfter(++tries));
	} finally {
		going = false;
	}
}

/** Why it stopped, or null when nothing is left to send. */
async function sendAll(store: PhoneStore): Promise<string | null> {
	await refresh();
	for (let item = nextToSend(outbox.waiting); item !== null; item = nextToSend(outbox.waiting)) {
		show({ sending: item.deed });
		const ready = readyToSend(item, outbox.done);
		if ("refused" in ready) {
			await store.change({ ...item, refused: ready.refused });
			await changed();
			continue;
		}
		const input = await store.saySent(item.deed, ready.input);
		await changed();
		// Left out a moment ago, here or in another tab, it is not sent any more.
		if (input === null) continue;
		const { status, said } = await sent(item, input, item.file ? await store.bytesOf(item.deed) : undefined);
		const answer = answerIn(status, said);
		if (answer.kind === "later") return answer.say;
		tries = 0;
		if (answer.kind === "refused") await store.change({ ...item, sent: input, refused: answer.refused });
		else await settle(store, item, answer.value);
		show({ held: null });
		await changed();
	}
	return null;
}

async function settle(store: PhoneStore, item: Waiting, value: Done["value"]): Promise<void> {
	const { deed, kind, words, machine } = item;
	if (item.draft !== null) await store.dropDraft(item.draft);
	const labels = labelsOf(item, value);
	const kept = await store.settle({ deed, kind, words, machine: machine?.number ?? null, value, labels, print: clientId() });
	// Where the shop has a printer of its own, the labels are out before the hand has put the part down.
	if (kept.labels.length > 0) printing.set(deed, printAll(store, kept));
}

async function printAll(store: PhoneStore, done: Done): Promise<boolean> {
	const isOut = await printed(done.labels, done.print);
	if (isOut) await store.changeDone({ ...done, labels: [] });
	await changed();
	return isOut;
}

const subscribe = (listener: () => void) => {
	listeners.add(listener);
	void phone();
	return () => {
		listeners.delete(listener);
	};
};

/** The queue of this phone, kept up to date also with what other tabs do. */
export const useOutbox = (): Outbox =>
	useSyncExternalStore(
		subscribe,
		() => outbox,
		() => EMPTY,
	);
