// ISO 4217. Source: the list by way of datasets/currency-codes (seen).
import { readFileSync } from "node:fs";
import path from "node:path";
import { expect, it } from "vitest";
import { currencies, isCurrency, minorDigits } from "@/lib/money/currency";

const rows = readFileSync(path.join(import.meta.dirname, "data/money/iso4217.csv"), "utf8")
	.trim()
	.split("\n")
	.slice(1)
	.map((line) => {
		const [code = "", numeric = "", digits = ""] = line.split(",");
		return { code, numeric, digits };
	});

it("the list has 178 codes, and each has the digits that the standard gives it", () => {
	expect(rows).toHaveLength(178);
	for (const { code, digits } of rows) {
		expect([code, isCurrency(code)]).toEqual([code, digits !== "-"]);
		if (isCurrency(code)) expect([code, minorDigits(code)]).toEqual([code, Number(digits)]);
	}
	expect(currencies()).toHaveLength(rows.filter(({ digits }) => digits !== "-").length);
});

it.each([
	["JPY", 0],
	["ISK", 0],
	["USD", 2],
	["KWD", 3],
	["CLF", 4],
] as const)("%s has %i digits", (code, digits) => {
	expect(minorDigits(code)).toBe(digits);
});
