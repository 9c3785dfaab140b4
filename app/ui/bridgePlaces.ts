// Where the bars of a bridge stand, as shares of its width. Pure.

type Ends = { readonly from: number; readonly to: number };

export type Place = {
	/** The bar's left edge and its length. */
	readonly start: number;
	readonly length: number;
	/** Where it hangs on the bar before it. */
	readonly joins: number;
};

/** One scale for all, from the least to the most that any bar reaches; nothing at all is a point at the left. */
export function placeBridge(bars: readonly Ends[]): Place[] {
	const least = Math.min(0, ...bars.flatMap(({ from, to }) => [from, to]));
	const most = Math.max(0, ...bars.flatMap(({ from, to }) => [from, to]));
	const at = (value: number): number => (most === least ? 0 : (value - least) / (most - least));
	return bars.map(({ from, to }, index) => ({
		start: at(Math.min(from, to)),
		length: at(Math.max(from, to)) - at(Math.min(from, to)),
		// The last bar stands on nothing again: what it joins is its own end.
		joins: at(index === bars.length - 1 ? to : from),
	}));
}
