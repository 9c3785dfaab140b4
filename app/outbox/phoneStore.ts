// What a phone keeps of the shop's: deeds and photos that wait, answers to those that were sent, drafts, and the last sheet
// of a machine. In IndexedDB, which works on plain HTTP; where a browser keeps nothing (some private windows), in memory,
// and the pages say so.

import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { Done, Waiting } from "@/lib/outbox/queue";

/** A form as it was typed and not recorded. */
export type Draft = { readonly key: string; readonly at: string; readonly value: unknown };

interface Schema extends DBSchema {
	waiting: { key: number; value: Waiting; indexes: { deed: string } };
	/** The bytes of photos that wait, by their deeds: the list is read often, and they are large. */
	photos: { key: string; value: ArrayBuffer };
	done: { key: string; value: Done & { readonly doneAt: string } };
	drafts: { key: string; value: Draft };
}

export type Kept = { readonly waiting: readonly Waiting[]; readonly done: readonly Done[] };

export type PhoneStore = {
	/** False where nothing outlasts the page. */
	readonly keeps: boolean;
	readonly read: () => Promise<Kept>;
	/** At the end of the queue, with a photo's bytes. A deed that is there already stays as it is; throws when it says something else. */
	readonly put: (item: Waiting, bytes?: ArrayBuffer) => Promise<void>;
	readonly bytesOf: (deed: string) => Promise<ArrayBuffer | undefined>;
	/** Writes over the one of the same deed; does nothing when it is gone. */
	readonly change: (item: Waiting) => Promise<void>;
	readonly remove: (deed: string) => Promise<void>;
	/** From now on the shop may have done it with these answers, whatever comes back. Those it goes with, or null when it is gone. */
	readonly saySent: (deed: string, input: NonNullable<Waiting["sent"]>) => Promise<Waiting["sent"]>;
	/** Takes it off the queue if it was never sent: then it never was. False when it was sent, or is gone. */
	readonly removeUnsent: (deed: string) => Promise<boolean>;
	/** Takes a deed off the queue and keeps its answer, in one go. Gives the answer that is kept: the first, where two tabs sent it. */
	readonly settle: (answer: Done) => Promise<Done>;
	readonly changeDone: (answer: Done) => Promise<void>;
	readonly draft: (key: string) => Promise<Draft | undefined>;
	readonly keepDraft: (draft: Draft) => Promise<void>;
	readonly dropDraft: (key: string) => Promise<void>;
};

/** As many answers are kept as a long day at the bench has deeds. */
const MOST_DONE = 500;
/** A write is on the disk before it is called kept: the battery may be dead a second later. */
const SAFELY = { durability: "strict" } as const;

/** `onGone` when the browser has shut the store, and it must be opened anew. */
export async function openPhoneStore(onGone: () => void): Promise<PhoneStore> {
	try {
		const db = await openDB<Schema>("asfound", 2, {
			upgrade: async (db, before, _, tx) => {
				if (before < 1) {
					db.createObjectStore("waiting", { autoIncrement: true }).createIndex("deed", "deed", { unique: true });
					db.createObjectStore("done", { keyPath: "deed" });
					db.createObjectStore("drafts", { keyPath: "key" });
				}
				const photos = db.createObjectStore("photos");
				const waiting = tx.objectStore("waiting");
				for await (const { primaryKey, value } of waiting) {
					const { deed, file } = value;
					if (file === null || !("bytes" in file) || !(file.bytes instanceof ArrayBuffer)) continue;
					await photos.put(file.bytes, deed);
					await waiting.put({ ...value, sent: null, file: { type: file.type, name: file.name } }, primaryKey);
				}
			},
			// Another tab has a newer program: it must not wait for this one.
			blocking: () => {
				db.close();
				onGone();
			},
			terminated: onGone,
		});
		return inBrowser(db);
	} catch (error) {
		console.info("this browser keeps nothing", error);
		return inMemory();
	}
}

function inBrowser(db: IDBPDatabase<Schema>): PhoneStore {
	return {
		keeps: true,
		read: async () => {
			const [waiting, done] = await Promise.all([db.getAll("waiting"), db.getAll("done")]);
			return { waiting, done };
		},
		put: async (item, bytes) => {
			const tx = db.transaction(["waiting", "photos"], "readwrite", SAFELY);
			const waiting = tx.objectStore("waiting");
			const there = await waiting.index("deed").get(item.deed);
			if (there === undefined) {
				await waiting.add(item);
				if (bytes) await tx.objectStore("photos").put(bytes, item.deed);
			}
			await tx.done;
			if (there) mustBeTheSame(there, item);
		},
		bytesOf: (deed) => db.get("photos", deed),
		change: async (item) => {
			const tx = db.transaction("waiting", "readwrite", SAFELY);
			const key = await tx.store.index("deed").getKey(item.deed);
			if (key !== undefined) await tx.store.put(item, key);
			await tx.done;
		},
		remove: async (deed) => {
			const tx = db.transaction(["waiting", "photos"], "readwrite", SAFELY);
			const waiting = tx.objectStore("waiting");
			const key = await waiting.index("deed").getKey(deed);
			if (key !== undefined) await waiting.delete(key);
			await tx.objectStore("photos").delete(deed);
			await tx.done;
		},
		saySent: async (deed, input) => {
			const tx = db.transaction("waiting", "readwrite", SAFELY);
			const key = await tx.store.index("deed").getKey(deed);
			const item = key === undefined ? undefined : await tx.store.get(key);
			const sent = item === undefined ? null : (item.sent ?? input);
			if (item) await tx.store.put({ ...item, sent }, key);
			await tx.done;
			return sent;
		},
		removeUnsent: async (deed) => {
			const tx = db.transaction("waiting", "readwrite", SAFELY);
			const key = await tx.store.index("deed").getKey(deed);
			const item = key === undefined ? undefined : await tx.store.get(key);
			const isUnsent = key !== undefined && item?.sent === null;
			if (isUnsent) await tx.store.delete(key);
			await tx.done;
			return isUnsent;
		},
		settle: async (answer) => {
			const tx = db.transaction(["waiting", "photos", "done"], "readwrite", SAFELY);
			const waiting = tx.objectStore("waiting");
			const key = await waiting.index("deed").getKey(answer.deed);
			if (key !== undefined) await waiting.delete(key);
			await tx.objectStore("photos").delete(answer.deed);
			const done = tx.objectStore("done");
			const before = await done.get(answer.deed);
			if (!before) await done.put({ ...answer, doneAt: new Date().toISOString() });
			if ((await done.count()) > MOST_DONE) {
				const all = await done.getAll();
				const old = all.sort((a, b) => (a.doneAt < b.doneAt ? -1 : 1)).slice(0, all.length - MOST_DONE);
				await Promise.all(old.map((one) => done.delete(one.deed)));
			}
			await tx.done;
			return before ?? answer;
		},
		changeDone: async (answer) => {
			await db.put("done", { ...answer, doneAt: new Date().toISOString() });
		},
		draft: (key) => db.get("drafts", key),
		keepDraft: async (draft) => {
			await db.put("drafts", draft);
		},
		dropDraft: (key) => db.delete("drafts", key),
	};
}

/** The same deed twice is one deed, in its first place; another deed under its id would be lost in silence. */
function mustBeTheSame(there: Waiting, item: Waiting): void {
	if (there.kind !== item.kind || JSON.stringify(there.input) !== JSON.stringify(item.input))
		throw new Error(`Two deeds under one id: "${there.words}" and "${item.words}".`);
}

function inMemory(): PhoneStore {
	const waiting: Waiting[] = [];
	const photos = new Map<string, ArrayBuffer>();
	const done = new Map<string, Done>();
	const drafts = new Map<string, Draft>();
	const at = (deed: string) => waiting.findIndex((item) => item.deed === deed);
	const remove = (deed: string) => {
		if (at(deed) >= 0) waiting.splice(at(deed), 1);
		photos.delete(deed);
	};
	return {
		keeps: false,
		read: async () => ({ waiting: [...waiting], done: [...done.values()] }),
		put: async (item, bytes) => {
			const there = waiting[at(item.deed)];
			if (there) return mustBeTheSame(there, item);
			waiting.push(item);
			if (bytes) photos.set(item.deed, bytes);
		},
		bytesOf: async (deed) => photos.get(deed),
		change: async (item) => {
			if (at(item.deed) >= 0) waiting[at(item.deed)] = item;
		},
		remove: async (deed) => remove(deed),
		saySent: async (deed, input) => {
			const item = waiting[at(deed)];
			if (!item) return null;
			const sent = item.sent ?? input;
			waiting[at(deed)] = { ...item, sent };
			return sent;
		},
		removeUnsent: async (deed) => {
			const isUnsent = waiting[at(deed)]?.sent === null;
			if (isUnsent) remove(deed);
			return isUnsent;
		},
		settle: async (answer) => {
			remove(answer.deed);
			const kept = done.get(answer.deed) ?? answer;
			done.set(answer.deed, kept);
			return kept;
		},
		changeDone: async (answer) => {
			done.set(answer.deed, answer);
		},
		draft: async (key) => drafts.get(key),
		keepDraft: async (draft) => {
			drafts.set(draft.key, draft);
		},
		dropDraft: async (key) => {
			drafts.delete(key);
		},
	};
}
