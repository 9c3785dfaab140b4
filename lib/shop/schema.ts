import { z } from "zod";
import { isTimeZone } from "@/lib/core/days";
import { line, optionalLine } from "@/lib/core/words";
import { parseCurrency } from "@/lib/money/currency";

export const currencyField = z
	.string("Write the three letters of the currency, like EUR.")
	.trim()
	.transform((text, check) => {
		const currency = parseCurrency(text);
		if (currency.ok) return currency.value;
		check.addIssue({ code: "custom", message: currency.error.say });
		return z.NEVER;
	});

export const addressField = z
	.string()
	.trim()
	.max(60, "Make the address shorter: the label's code must stay coarse enough to scan.")
	.regex(
		/^$|^[A-Za-z0-9.-]+(:\d{1,5})?$/,
		"Write a name or number like shop.local:3200 or 10.0.0.5:3200, without http:// and without a path.",
	)
	.default("");

const timeZoneField = z
	.string("Write the time zone, like Europe/Amsterdam.")
	.trim()
	.refine(isTimeZone, "Write the time zone as place names do, like Europe/Amsterdam or America/Chicago.");

const about = { name: line("the shop's name"), timeZone: timeZoneField, address: addressField };

export const openShopSchema = z.object({
	...about,
	currency: currencyField,
	personName: line("your name"),
	initials: line("your initials", 4),
	skills: optionalLine("what you do"),
});

/** The currency is not here: it is fixed with the first amount that is written. */
export const describeShopSchema = z.object(about);

export type OpenShop = z.output<typeof openShopSchema>;
export type DescribeShop = z.output<typeof describeShopSchema>;
