// Tax on a paper for the owner against published invoices and a tax authority's rule.
import { describe, expect, it } from "vitest";
import { minor } from "@/lib/money/money";
import { totalsOf } from "@/lib/owner/totals";

const line = (net: number, taxPercent: string) => ({ net: minor(net), taxPercent });

describe("tax by rate", () => {
	// Published by OpenPEPPOL as an example invoice of EN 16931, peppol-bis-invoice-3, rules/national-examples/NO/
	// Norwegian-example-1.xml (seen): five lines, a freight charge and a discount; tax once a rate, 365.125 rounded to 365.13.
	it("an invoice with two rates, an exempt return, a charge and a discount", () => {
		const invoice = totalsOf([
			line(127_300, "25"),
			line(-396, "15"),
			line(496, "15"),
			line(-2500, "0"),
			line(18_750, "25"),
			line(10_000, "25"),
			line(-10_000, "25"),
		]);
		expect(invoice.taxes).toEqual([
			{ percent: "0", net: -2500, tax: 0 },
			{ percent: "15", net: 100, tax: 15 },
			{ percent: "25", net: 146_050, tax: 36_513 },
		]);
		expect([invoice.net, invoice.tax, invoice.total]).toEqual([143_650, 36_528, 180_178]);
	});

	// The same repository, rules/examples/Allowance-example.xml (seen).
	it("an invoice with an allowance and a charge that cancel out, and a line without tax", () => {
		const invoice = totalsOf([line(400_000, "25.0"), line(100_000, "0.0"), line(90_000, "25.0"), line(20_000, "25"), line(-20_000, "25")]);
		expect(invoice).toMatchObject({ net: 590_000, tax: 122_500, total: 712_500 });
	});

	// HM Revenue and Customs, internal manual VATREC12030 (seen): under half a penny down, half a penny or more up.
	it.each([
		[248, "1", 2], // 2.48
		[250, "1", 3], // 2.50
		[11_310, "20", 2262], // ten hours at 11.31; taxed hour by hour it would be 22.60
	])("%i at %s %% is taxed %i", (net, percent, tax) => expect(totalsOf([line(net, percent)]).tax).toBe(tax));
});
