// What a form sends of something that is only thought about.

import { describe, expect, test } from "vitest";
import { thoughtOf, thoughtSchema } from "@/lib/reversal/thought";

const chosen = { positionId: null, partId: null, undo: null };

describe("a thought", () => {
	test("is sent as it was chosen", () => {
		for (const thought of [
			thoughtOf({ ...chosen, does: "nothing" }),
			thoughtOf({ ...chosen, does: "parting", partId: "motor" }),
			thoughtOf({ ...chosen, does: "alter", partId: "shaft", undo: "never" }),
			thoughtOf({ ...chosen, does: "alter", positionId: "k21", undo: "trace" }),
		]) {
			expect(thought).not.toBeNull();
			expect(thoughtSchema.safeParse(thought)).toEqual({ success: true, data: thought });
		}
	});

	test("is none while too little is chosen", () => {
		expect(thoughtOf({ ...chosen, does: "alter", undo: "never" })).toBeNull();
		expect(thoughtOf({ ...chosen, does: "alter", partId: "shaft" })).toBeNull();
		expect(thoughtOf({ ...chosen, does: "parting" })).toBeNull();
		expect(thoughtOf({ ...chosen, does: "other", partId: "shaft" })).toBeNull();
	});

	test.each([
		null,
		"never",
		{ does: "drill" },
		{ does: "parting", partId: "" },
		{ does: "alter", positionId: "k21", partId: "shaft", undo: "never" },
		{ does: "alter", positionId: "k21", partId: null, undo: "perhaps" },
		{ does: "parting", partId: "x".repeat(65) },
	])("is not read from %j", (sent) => {
		expect(thoughtSchema.safeParse(sent).success).toBe(false);
	});
});
