import canonicalize from "canonicalize";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { canonicalOf, isCanonical } from "@/lib/ledger/verifyText";

const seed = 20260302;

describe("canonical text is recognised", () => {
	it("whatever JSON value it holds", () => {
		fc.assert(
			fc.property(fc.jsonValue({ stringUnit: "binary" }), (value) => {
				// fast-check may make -0, which JSON.parse and RFC 8785 both write as 0.
				expect(isCanonical(canonicalize(value) ?? "")).toBe(true);
			}),
			{ seed, numRuns: 2000 },
		);
	});

	it("and nothing else is taken for it: any other way to write the value is refused", () => {
		fc.assert(
			fc.property(fc.jsonValue({ stringUnit: "binary" }), (value) => {
				const text = canonicalize(value) ?? "";
				for (const other of [JSON.stringify(value, null, 1), ` ${text}`, `${text} `, JSON.stringify(value)])
					expect(isCanonical(other)).toBe(other === text);
				expect(canonicalOf(JSON.stringify(value, null, 1))).toBe(text);
			}),
			{ seed, numRuns: 2000 },
		);
	});

	it.each([
		["keys out of order", '{"b":1,"a":2}'],
		["a key twice", '{"a":1,"a":1}'],
		["a space after a colon", '{"a": 1}'],
		["a space in a list", "[1, 2]"],
		["a number with a point too many", '{"a":1.0}'],
		["a number in another notation", "[1e3]"],
		["a number below zero that is none", "[-0]"],
		["a letter written as an escape", '["\\u0041"]'],
		["a slash with an escape that it does not need", '["\\/"]'],
		["a control character by its number that has a letter", '["\\u000a"]'],
		["a control character in large digits", '["\\u001F"]'],
		["an escape that there is none of", '["\\x41"]'],
		["a backslash at the end", '["\\'],
		["escaped keys out of order", '{"\\n":1,"\\t":2}'],
		["half a surrogate pair as it is", `["${"\ud83d"}"]`],
		["half a surrogate pair", '["\\ud83d"]'],
		["a bare control character", '["\u0001"]'],
		["a string without an end", '["a]'],
		["a list without an end", "[1"],
		["a comma too many", "[1,]"],
		["two values", "1 2"],
		["nothing", ""],
		["a word that is no JSON", "nul"],
		["a nest deeper than any entry", "[".repeat(5000) + "]".repeat(5000)],
	])("not with %s", (_, text) => {
		expect(isCanonical(text)).toBe(false);
	});
});
