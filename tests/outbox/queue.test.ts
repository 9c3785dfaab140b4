import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { answerIn, type Done, labelsOf, nextToSend, pauseAfter, readyToSend } from "@/lib/outbox/queue";
import { aDeed } from "@/tests/outbox/aDeed";

const done = (deed: string, value: Record<string, unknown>): Done => ({
	deed,
	kind: "photo",
	words: "",
	machine: null,
	value,
	labels: [],
	print: "",
});
const refused = { code: "x", say: "No.", fields: {} };

describe("what is sent next", () => {
	it("is the first that was not refused, in the order in which it was done", () => {
		const items = fc.array(fc.boolean(), { maxLength: 12 });
		fc.assert(
			fc.property(items, (refusals) => {
				const queue = refusals.map((isRefused, at) => aDeed(String(at), { refused: isRefused ? refused : null }));
				const at = refusals.indexOf(false);
				expect(nextToSend(queue)?.deed ?? null).toBe(at < 0 ? null : String(at));
			}),
		);
	});

	it("goes with the ids of its photos that arrived, after those it had before, and without one that was refused", () => {
		const item = aDeed("a", { photos: ["p1", "p2"], input: { captureIds: ["old"], works: "works" } });
		const results = new Map([["p1", done("p1", { captureId: "c1" })]]);
		expect(readyToSend(item, results)).toEqual({ input: { captureIds: ["old", "c1"], works: "works" } });
	});

	it("goes again as it went first, whatever has come since: the shop may have done it so", () => {
		const item = aDeed("a", { photos: ["p1"], bagOf: "gone", sent: { works: "works", captureIds: [] } });
		const results = new Map([["p1", done("p1", { captureId: "c1" })]]);
		expect(readyToSend(item, results)).toEqual({ input: { works: "works", captureIds: [] } });
	});

	it("goes into the bag that an earlier deed made, and is put aside when that one was not recorded", () => {
		const item = aDeed("b", { bagOf: "a", input: { into: { kind: "bench" } } });
		expect(readyToSend(item, new Map([["a", done("a", { bagId: "bag" })]]))).toEqual({ input: { into: { kind: "bag", bagId: "bag" } } });
		expect(readyToSend(item, new Map())).toMatchObject({ refused: { code: "bag-not-made" } });
	});
});

describe("an answer of the shop", () => {
	it.each([
		[200, { ok: true, value: { bagId: "b" } }, { kind: "done", value: { bagId: "b" } }],
		[
			422,
			{ ok: false, error: { code: "empty", say: "It is empty.", fields: { at: "Too early.", n: 1 } } },
			{ kind: "refused", refused: { code: "empty", say: "It is empty.", fields: { at: "Too early." } } },
		],
		[503, { ok: false, error: { code: "busy", say: "Busy." } }, { kind: "later", say: "Busy." }],
		[401, { ok: false, error: { code: "nobody", say: "Say who you are." } }, { kind: "later", say: "Say who you are." }],
		[403, { ok: false, error: { code: "somebody-else", say: "Somebody else." } }, { kind: "later", say: "Somebody else." }],
		[0, null, { kind: "later", say: "The shop did not answer." }],
		[502, "<html>", { kind: "later", say: "The shop did not answer." }],
		[200, { ok: false }, { kind: "later", say: "The shop did not answer." }],
	])("%s %j", (status, said, answer) => {
		expect(answerIn(status, said)).toEqual(answer);
	});

	it("that does not come is asked for again, less and less often, and at least every half minute", () => {
		const pauses = Array.from({ length: 20 }, (_, tries) => pauseAfter(tries));
		expect(pauses).toEqual(pauses.toSorted((a, b) => a - b));
		expect([pauses[1], pauses.at(-1)]).toEqual([2000, 30_000]);
	});
});

describe("labels asked for", () => {
	const value = { bagTag: "12-0201-B", partTag: "12-0005-5" };
	it("are those of the bag that was made and of the part", () => {
		expect(labelsOf(aDeed("a", { wantsLabel: true, input: { into: { kind: "new-bag" } } }), value)).toEqual(["12-0201-B", "12-0005-5"]);
	});
	it("leave out a bag that was there before, or that an earlier deed made", () => {
		expect(labelsOf(aDeed("a", { wantsLabel: true, input: { into: { kind: "bag" } } }), value)).toEqual(["12-0005-5"]);
		expect(labelsOf(aDeed("a", { wantsLabel: true, bagOf: "x", input: { into: { kind: "new-bag" } } }), value)).toEqual(["12-0005-5"]);
	});
	it("are none where none were asked for", () => {
		expect(labelsOf(aDeed("a", { input: { into: { kind: "new-bag" } } }), value)).toEqual([]);
	});
});
