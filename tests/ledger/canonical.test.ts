import canonicalize from "canonicalize";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { canonical } from "@/lib/ledger/canonical";

const json = fc.jsonValue({ maxDepth: 4 }).filter((value) => !/\\ud[89a-f]/.test(JSON.stringify(value)));

describe("the canonical text of a value", () => {
	it("is what the published package writes, on everything that both take", () => {
		fc.assert(
			fc.property(json, (value) => {
				expect(canonical(value)).toBe(canonicalize(value));
			}),
			{ seed: 26, numRuns: 1000 },
		);
	});

	it("says the same as the value, and canonical text stays as it is", () => {
		fc.assert(
			fc.property(json, (value) => {
				const text = canonical(value);
				// -0 is written 0, so it is compared as JSON and not as a value.
				expect(JSON.parse(text)).toEqual(JSON.parse(JSON.stringify(value)));
				expect(canonical(JSON.parse(text))).toBe(text);
			}),
			{ seed: 27, numRuns: 1000 },
		);
	});

	it("does not depend on the order in which fields were written", () => {
		fc.assert(
			fc.property(fc.dictionary(fc.string({ unit: "binary" }), json), (value) => {
				const turned = Object.fromEntries(Object.entries(value).reverse());
				expect(canonical(turned)).toBe(canonical(value));
			}),
			{ seed: 28 },
		);
	});

	it("sorts by UTF-16 code units: an emoji comes before a private-use sign", () => {
		expect(canonical({ "\ufb33": 1, "\ud83d\ude00": 2, "\u20ac": 3, "\r": 4, "1": 5, "\u00f6": 6, "\u0080": 7 })).toBe(
			'{"\\r":4,"1":5,"\u0080":7,"\u00f6":6,"\u20ac":3,"\ud83d\ude00":2,"\ufb33":1}',
		);
	});

	it("takes fields by any name, also those that every object has", () => {
		const hostile: unknown = JSON.parse('{"__proto__":{"b":1,"a":2},"constructor":1,"toJSON":"no function","length":3}');
		expect(canonical(hostile)).toBe('{"__proto__":{"a":2,"b":1},"constructor":1,"length":3,"toJSON":"no function"}');
	});

	const circle: Record<string, unknown> = {};
	circle.again = circle;
	it.each<[string, unknown, string]>([
		["a field that is undefined", { part: undefined }, "undefined at part"],
		["an undefined in a list", { parts: ["lamp", undefined] }, "undefined at parts.1"],
		["a hole in a list", new Array(2), "undefined at 0"],
		["nothing at all", undefined, "undefined at the top"],
		["NaN", { minutes: Number.NaN }, "NaN at minutes"],
		["infinity", [Number.POSITIVE_INFINITY], "Infinity at 0"],
		["minus infinity", -Number.POSITIVE_INFINITY, "-Infinity at the top"],
		["a bigint", { cents: 1n }, "bigint at cents"],
		["a symbol", Symbol("x"), "symbol at the top"],
		["a function", { toJSON: () => "sly" }, "function at toJSON"],
		["a date", { at: new Date(0) }, "an object of Date at at"],
		["a map", new Map(), "an object of Map at the top"],
		["bytes", { salt: new Uint8Array(2) }, "an object of Uint8Array at salt"],
		["half a surrogate pair", { name: "lamp\ud83d" }, "half a surrogate pair at name"],
		["the other half", ["\ude00"], "half a surrogate pair at 0"],
		["half a surrogate pair in a name", { "\ud83d": 1 }, "half a surrogate pair at \ud83d"],
		["a circle", circle, "nested more than 200 deep, or a circle at again.again"],
	])("refuses %s and names the place", (_what, value, place) => {
		expect(() => canonical(value)).toThrow(place);
	});

	it("refuses a hostile nest of brackets instead of running out of stack", () => {
		const deep: unknown = JSON.parse(`${"[".repeat(5000)}${"]".repeat(5000)}`);
		expect(() => canonical(deep)).toThrow("nested more than 200 deep");
	});
});
