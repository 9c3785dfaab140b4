import { describe, expect, it } from "vitest";
import { readUpload } from "@/lib/files/upload";

const deed = "01890000-0000-7000-8000-000000000000";
const read = (query: Record<string, string>, headers: Record<string, string> = {}) =>
	readUpload(new URLSearchParams(query), new Headers(headers));

describe("what an upload says of itself", () => {
	it("is read from its address and its length", () => {
		expect(
			read(
				{ machine: "12", kind: "paper", deed, name: "bill.pdf", takenAt: "2026-03-02T09:00:00+01:00", words: " the bill ", part: "p" },
				{ "content-length": "7" },
			),
		).toEqual({
			ok: true,
			value: {
				machine: "12",
				kind: "paper",
				deed,
				name: "bill.pdf",
				takenAt: "2026-03-02T08:00:00.000Z",
				words: "the bill",
				positionId: null,
				partId: "p",
				bagId: null,
				stepId: null,
				announced: 7,
			},
		});
	});

	it("is a photo of the shop, taken now, where it says nothing more", () => {
		expect(read({ deed })).toMatchObject({ ok: true, value: { machine: null, kind: "photo", takenAt: null, words: "", announced: null } });
	});

	it.each([
		["a kind that is none", { deed, kind: "film" }, "kind"],
		["no deed", {}, "deed"],
		["a moment that cannot be read", { deed, takenAt: "yesterday" }, "takenAt"],
		["too many words", { deed, words: "x".repeat(4001) }, "words"],
	])("is refused with %s", (_, query, field) => {
		expect(read(query as Record<string, string>)).toMatchObject({
			ok: false,
			error: { code: "unreadable", fields: { [field]: expect.any(String) } },
		});
	});
});
