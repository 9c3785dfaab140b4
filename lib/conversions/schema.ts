import { z } from "zod";
import { chosen, line, words } from "@/lib/core/words";

export const nameConversionSchema = z.object({
	machineId: chosen("the machine"),
	name: line("what the conversion is called"),
	purpose: z.enum(["ordinary", "safety"], "Say whether it was done for safety: then it stays in a reversal unless it is named."),
	words: words("what it is for", 1000),
});

const ids = z.array(z.string().max(64)).max(500).default([]);

const lists = { fittingsIn: ids, fittingsOut: ids, connections: ids, alterations: ids, steps: ids, tests: ids };

/** What a conversion groups: fittings it put in, fittings it ended, and the rest. `leave` names what does not belong to it after all. */
export const joinConversionSchema = z.object({ conversionId: chosen("the conversion"), ...lists, leave: z.object(lists).optional() });

/** What a form ticks: everything that shall belong to it. */
export const tickMembersSchema = z.object({ conversionId: chosen("the conversion"), ...lists });

export type NameConversion = z.output<typeof nameConversionSchema>;
export type JoinConversion = z.output<typeof joinConversionSchema>;
