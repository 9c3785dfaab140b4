// What a phone keeps of the shop's: deeds and photos that wait, answers to those that were sent, drafts, and the last sheet
// of a machine. In IndexedDB, which works on plain HTTP; where a browser keeps nothing (some private windows), in memory,
// and the pages say so.

import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { Done, Waiting } from "@/lib/outbox/queue";

/** A form as it was typed and not recorded. */
export type Draft = { readonly key: string; readonly at: string; readonly value: unknown };

interface Schema extends DBSchema {
	waiting: { key: number; value: Waiting; indexes: { deed: string } };
	done: { key: string; value: Done & { readonly doneAt: string } };
	drafts: { key: string; value: Draft };
}

export type Kept = { readonly waiting: readonly Waiting[]; readonly done: readonly Done[] };

export type PhoneStore = {
	/** False where nothing outlasts the page. */
	readonly keeps: boolean;
	readonly read: () => Promise<Kept>;
	readonly put: (item: Waiting) => Promise<void>;
	/** Writes over the one of the same deed; does nothing when it is gone. */
	readonly change: (item: Waiting) => Promise<void>;
	readonly remove: (deed: string) => Promise<void>;
	/** From now on the shop may have done it, whatever comes back. False when it is gone. */
	readonly sayTried: (deed: string) => Promise<boolean>;
	/** Takes it off the queue if it was never sent: then it never was. False when it was sent, or is gone. */
	readonly removeUntried: (deed: string) => Promise<boolean>;
	/** Takes a deed off the queue and keeps its answer, in one go. */
	readonly settle: (answer: Done) => Promise<void>;
	readonly changeDone: (answer: Done) => Promise<void>;
	readonly draft: (key: string) => Promise<Draft | undefined>;
	readonly keepDraft: (draft: Draft) => Promise<void>;
	readonly dropDraft: (key: string) => Promise<void>;
};

/** As many answers are kept as a long day at the bench has deeds. */
const MOST_DONE = 500;
/** A write is on the disk before it is called kept: the battery may be dead a second later. */
const SAFELY = { durability: "strict" } as const;

export async function openPhoneStore(): Promise<PhoneStore> {
	try {
		return inBrowser(
			await openDB<Schema>("asfound", 1, {
				upgrade: (db) => {
					db.createObjectStore("waiting", { autoIncrement: true }).createIndex("deed", "deed", { unique: true });
					db.createObjectStore("done", { keyPath: "deed" });
					db.createObjectStore("drafts", { keyPath: "key" });
				},
			}),
		);
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
		put: async (item) => {
			const tx = db.transaction("waiting", "readwrite", SAFELY);
			// The same deed twice is one deed, in its first place.
			if ((await tx.store.index("deed").getKey(item.deed)) === undefined) await tx.store.add(item);
			await tx.done;
		},
		change: async (item) => {
			const tx = db.transaction("waiting", "readwrite", SAFELY);
			const key = await tx.store.index("deed").getKey(item.deed);
			if (key !== undefined) await tx.store.put(item, key);
			await tx.done;
		},
		remove: async (deed) => {
			const tx = db.transaction("waiting", "readwrite", SAFELY);
			const key = await tx.store.index("deed").getKey(deed);
			if (key !== undefined) await tx.store.delete(key);
			await tx.done;
		},
		sayTried: async (deed) => {
			const tx = db.transaction("waiting", "readwrite", SAFELY);
			const key = await tx.store.index("deed").getKey(deed);
			const item = key === undefined ? undefined : await tx.store.get(key);
			if (item) await tx.store.put({ ...item, tried: true }, key);
			await tx.done;
			return item !== undefined;
		},
		removeUntried: async (deed) => {
			const tx = db.transaction("waiting", "readwrite", SAFELY);
			const key = await tx.store.index("deed").getKey(deed);
			const item = key === undefined ? undefined : await tx.store.get(key);
			const isUnsent = key !== undefined && item?.tried === false;
			if (isUnsent) await tx.store.delete(key);
			await tx.done;
			return isUnsent;
		},
		settle: async (answer) => {
			const tx = db.transaction(["waiting", "done"], "readwrite", SAFELY);
			const waiting = tx.objectStore("waiting");
			const key = await waiting.index("deed").getKey(answer.deed);
			if (key !== undefined) await waiting.delete(key);
			const done = tx.objectStore("done");
			await done.put({ ...answer, doneAt: new Date().toISOString() });
			if ((await done.count()) > MOST_DONE) {
				const all = await done.getAll();
				const old = all.sort((a, b) => (a.doneAt < b.doneAt ? -1 : 1)).slice(0, all.length - MOST_DONE);
				await Promise.all(old.map((one) => done.delete(one.deed)));
			}
			await tx.done;
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

function inMemory(): PhoneStore {
	const waiting: Waiting[] = [];
	const done = new Map<string, Done>();
	const drafts = new Map<string, Draft>();
	const at = (deed: string) => waiting.findIndex((item) => item.deed === deed);
	const remove = (deed: string) => {
		if (at(deed) >= 0) waiting.splice(at(deed), 1);
	};
	return {
		keeps: false,
		read: async () => ({ waiting: [...waiting], done: [...done.values()] }),
		put: async (item) => {
			if (at(item.deed) < 0) waiting.push(item);
		},
		change: async (item) => {
			if (at(item.deed) >= 0) waiting[at(item.deed)] = item;
		},
		remove: async (deed) => remove(deed),
		sayTried: async (deed) => {
			const item = waiting[at(deed)];
			if (item) waiting[at(deed)] = { ...item, tried: true };
			return item !== undefined;
		},
		removeUntried: async (deed) => {
			const isUnsent = waiting[at(deed)]?.tried === false;
			if (isUnsent) remove(deed);
			return isUnsent;
		},
		settle: async (answer) => {
			remove(answer.deed);
			done.set(answer.deed, answer);
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
