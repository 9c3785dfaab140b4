// The store of this process: one, opened on first use. Kept on globalThis, since the framework may load a module twice.

import { config } from "@/lib/config";
import { migrate } from "@/lib/db/migrate";
import { databaseFile, openStore, type Store } from "@/lib/db/store";

const held = globalThis as typeof globalThis & { asfoundStore?: Promise<Store> };

/** Opens the configured data folder, migrated, once a process. */
export function shopStore(): Promise<Store> {
	held.asfoundStore ??= (async () => {
		const { dataFolder } = config();
		migrate(databaseFile(dataFolder), undefined, () => undefined);
		return openStore(dataFolder);
	})().catch((error: unknown) => {
		delete held.asfoundStore; // the next request tries again: the file may have been busy
		throw error;
	});
	return held.asfoundStore;
}
