// What comes off to get at positions of a machine, from the record as it stands.

import type { Instant } from "@/lib/core/instants";
import type { Result } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import { reversalFacts } from "@/lib/reversal/queries";
import { type ReachSheet, reachSheet } from "@/lib/reversal/reachSheet";

export const reachOf = async (read: Reader, machineId: string, marks: readonly string[], now: Instant): Promise<Result<ReachSheet>> =>
	reachSheet(await reversalFacts(read, machineId), marks, now);
