import type { Means } from "./means";

/** An amount already written out ("1 234.50"), kept on one line. In a column name the currency once, in its head. */
export function Money({ amount, currency, means }: { readonly amount: string; readonly currency?: string; readonly means?: Means }) {
	return (
		<span className="af-amount" data-means={means}>
			{amount}
			{currency ? <span className="af-currency">{currency}</span> : null}
		</span>
	);
}
