import { z } from "zod";
import { line, optionalLine } from "@/lib/core/words";

export const partySchema = z.object({
	kind: z.enum(["supplier", "owner", "specialist"], "Say what they are to the shop."),
	name: line("the name"),
	contact: optionalLine("how to reach them", 400),
});

export type NewParty = z.output<typeof partySchema>;
