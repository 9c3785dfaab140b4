import { z } from "zod";
import { chosen, line, words } from "@/lib/core/words";

export const addDigitalItemSchema = z.object({
	machineId: chosen("the machine"),
	/** The device that needs it. */
	partId: chosen("the device that needs it"),
	name: line("the name", 120),
	version: line("the version", 60),
	fileSha: z.string().regex(/^[0-9a-f]{64}$/, "Choose the file first."),
	/** Which pin goes where. */
	pins: words("the pin map", 4000),
	loading: words("how it is loaded", 4000).refine((text) => text !== "", "Write how it is loaded: the next person will need it."),
});
export type AddDigitalItem = z.input<typeof addDigitalItemSchema>;
