// The real clock, ids and salts, for the edge of the program: a request, the command line.

import { randomBytes, randomUUID } from "node:crypto";
import { systemClock } from "@/lib/core/clock";
import { idMaker } from "@/lib/core/ids";
import type { Store } from "@/lib/db/store";
import type { Env } from "@/lib/ledger/env";

const newId = idMaker(systemClock, (count) => randomBytes(count));

/** An `Env` for one deed now. `deed` comes from the client; left out, the deed is made here and cannot be repeated. */
export const envNow = (store: Store, actor: string, deed: string = randomUUID()): Env => ({
	store,
	clock: systemClock,
	actor,
	deed,
	newId,
	salt: () => randomBytes(16).toString("hex"),
});
