// A machine's money in one line, for its card in the shop.

import type { Day } from "@/lib/core/days";
import type { Reader } from "@/lib/db/store";
import { type CurrencyCode, isCurrency } from "@/lib/money/currency";
import { formatAmount, type MinorUnits, minor } from "@/lib/money/money";
import { machineMoney } from "@/lib/money/queries";

/** "432.00 of 610.00 EUR, 58.00 over at completion", by machine id. */
export async function costWords(read: Reader, machineIds: readonly string[], today: Day): Promise<Map<string, string>> {
	const words = new Map<string, string>();
	for (const id of machineIds) {
		const money = await machineMoney(read, id, today);
		if (money && isCurrency(money.currency))
			words.set(id, costLine(money.summary.total, money.currency, money.labour.missingRates.length > 0));
	}
	return words;
}

/** Spent against estimated, how the estimate stands at completion, and what is not in it. Amounts in minor units of one currency. */
export function costLine(
	total: { readonly estimated: MinorUnits; readonly spent: MinorUnits; readonly atCompletion: MinorUnits },
	currency: CurrencyCode,
	rateMissing = false,
): string {
	const spent = formatAmount(total.spent, currency);
	const without = rateMissing ? "; time without a rate is not in it" : "";
	if (total.estimated === 0) return `${spent} ${currency}, no estimate yet${without}`;
	const over = minor(total.atCompletion - total.estimated);
	const end = over === 0 ? "" : `, ${formatAmount(minor(Math.abs(over)), currency)} ${over > 0 ? "over" : "under"} at completion`;
	return `${spent} of ${formatAmount(total.estimated, currency)} ${currency}${end}${without}`;
}
