// RFC 8785, JSON Canonicalization Scheme. Source: cyberphone/json-canonicalization, testdata (seen); numbers: RFC 8785
// appendix B (seen by way of l1h3r/serde_jcs); what must be refused: RFC 8785 3.2.2.2 and 3.2.2.3 (from memory).
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { canonical } from "@/lib/ledger/canonical";

const file = (name: string) => readFileSync(path.join(import.meta.dirname, "data/rfc8785", name), "utf8");
const rows = (name: string) =>
	file(name)
		.trim()
		.split("\n")
		.slice(1)
		.map((line) => line.split(","));
const numberOf = (hex: string) => Buffer.from(hex, "hex").readDoubleBE();

describe("RFC 8785", () => {
	it.each(["arrays", "french", "structures", "values"])("the published document %s comes out byte for byte", (name) => {
		const text = canonical(JSON.parse(file(`input/${name}.json`)));
		expect(text).toBe(file(`output/${name}.json`).replace(/\n$/, ""));
		expect(Buffer.from(text, "utf8").toString("hex")).toBe(file(`outhex/${name}.txt`).replace(/\s/g, ""));
	});

	it.each(rows("numbers.csv"))("the number with the bits %s is written %s", (hex, text) => {
		expect(canonical(numberOf(hex ?? ""))).toBe(text);
	});

	it("the published lists are not empty", () => {
		expect([rows("numbers.csv").length, rows("must-refuse.csv").length]).toEqual([14, 3]);
	});

	it.each(rows("must-refuse.csv"))("the bits %s (%s) are no JSON number", (hex) => {
		expect(() => canonical(numberOf(hex ?? ""))).toThrow("not a JSON value");
	});

	it("minus zero is written 0, and a lone surrogate is refused", () => {
		expect(canonical(numberOf("8000000000000000"))).toBe("0");
		expect(() => canonical("\udead")).toThrow("half a surrogate pair");
	});
});
