// What lines come to while they are being typed. Pure.

import type { CurrencyCode } from "@/lib/money/currency";
import { parseAmount } from "@/lib/money/money";
import { parsePercent } from "@/lib/owner/percent";
import { type TaxedLine, type Totals, totalsOf } from "@/lib/owner/totals";

type TypedLine = { readonly net?: string | number | undefined; readonly tax?: string | undefined } | undefined;

/** The totals, or null while an amount or a percentage cannot be read: a sum without a line would be wrong. */
export function typedTotals(lines: readonly TypedLine[], currency: CurrencyCode): Totals | null {
	const read: TaxedLine[] = [];
	for (const line of lines) {
		const net = parseAmount(String(line?.net ?? ""), currency, { mayBeNegative: true });
		const tax = parsePercent(line?.tax ?? "");
		if (!net.ok || !tax.ok) return null;
		read.push({ net: net.value, taxPercent: tax.value });
	}
	return read.length === 0 ? null : totalsOf(read);
}
