// Everything that a deed needs from outside: the shop's store, the clock, who acts, ids and salts.
// Handed in, so that the demo shop and the tests can hand in others.

import type { Instant } from "@/lib/core/instants";
import type { Store } from "@/lib/db/store";
import type { Seen } from "@/lib/ledger/meanwhile";

export type Env = {
	readonly store: Store;
	readonly clock: () => Instant;
	/** Person id of whoever does it. */
	readonly actor: string;
	/** Client-made id of this deed: sent twice, it is done once. */
	readonly deed: string;
	/** What the page goes by that asks for this, when it corrects what stands; left out when nobody knows. */
	readonly seen?: Seen;
	/** Digest of what was asked. The same deed with other answers is then told from a repeat. */
	readonly asked?: string;
	readonly newId: () => string;
	/** 128 random bits as 32 hex digits. */
	readonly salt: () => string;
};
