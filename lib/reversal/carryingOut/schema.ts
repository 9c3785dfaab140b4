import { z } from "zod";
import { type Instant, isInstant } from "@/lib/core/instants";
import { chosen, line, optionalLine } from "@/lib/core/words";

export const targetSchema = z.enum(["asFound", "asMade", "moment"], "Say what to go back to.");
const ids = (what: string) => z.array(chosen(what)).max(5000).default([]);

/** The question of a reversal, as it stands in the book while the reversal is carried out. */
export const startReversalSchema = z.object({
	machineId: chosen("the machine"),
	target: targetSchema,
	/** The moment to go back to, when the target is one. */
	targetAt: z
		.string()
		.refine(isInstant, "Write the moment like 2026-03-02T08:00:00.000Z.")
		.transform((text) => text as Instant)
		.nullish(),
	conversionIds: ids("a conversion"),
	positionIds: ids("a position"),
	reason: optionalLine("why a danger is put back", 300),
});

const reversalId = chosen("the reversal");

export const madeSafeSchema = z.object({ reversalId, words: line("what it was proved dead with", 300) });
export const leaveOutSchema = z.object({
	reversalId,
	positionId: chosen("the position"),
	stuck: z.enum(["yes", "no"], "Say whether it is stuck."),
	why: line("why it stays as it is", 300),
});
export const takeUpSchema = z.object({ reversalId, positionId: chosen("the position") });
export const finishReversalSchema = z.object({ reversalId, words: optionalLine("what the checks showed", 1000) });
export const stopReversalSchema = z.object({ reversalId, words: line("why it stops here", 300) });

/** What stands in the column `leftOut`. */
export const leftOutSchema = z.array(z.object({ position: z.string(), why: z.string(), stuck: z.enum(["yes", "no"]) }));
/** What stands in the column `frozen`. */
export const frozenSchema = z.object({ scope: z.array(z.string()).nullable(), alterations: z.array(z.string()) });
/** What stands in the column `startBuild`. */
export const startBuildSchema = z.record(z.string(), z.string());
/** What stands in the columns `conversionIds` and `positionIds`. */
export const idsSchema = z.array(z.string());

export type StartReversal = z.output<typeof startReversalSchema>;
export type MadeSafe = z.output<typeof madeSafeSchema>;
export type LeaveOut = z.output<typeof leaveOutSchema>;
export type TakeUp = z.output<typeof takeUpSchema>;
export type FinishReversal = z.output<typeof finishReversalSchema>;
export type StopReversal = z.output<typeof stopReversalSchema>;
