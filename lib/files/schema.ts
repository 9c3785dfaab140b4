import { z } from "zod";

/** A file that keepFile has brought in. */
export const keptFileSchema = z.object({
	sha: z.string().regex(/^[0-9a-f]{64}$/, "The file has no digest. Send it again."),
	bytes: z.number().int().positive("The file is empty. Send it again."),
	mediaType: z.string().min(1).max(100),
	name: z.string().min(1).max(120),
});
