// Numbers of which the least is always at hand: a binary heap.

export type LeastFirst = {
	readonly add: (value: number) => void;
	/** The least one, left where it is; undefined when there is none. */
	readonly least: () => number | undefined;
	/** Takes the least one away. */
	readonly drop: () => void;
};

/** An empty heap. Adding and dropping take time by the logarithm of how many it holds. */
export function leastFirst(): LeastFirst {
	const heap: number[] = [];
	const at = (n: number): number => heap[n] ?? Number.POSITIVE_INFINITY;
	return {
		least: () => heap[0],
		add: (value) => {
			let n = heap.length;
			for (let up = (n - 1) >> 1; n > 0 && at(up) > value; up = (n - 1) >> 1) {
				heap[n] = at(up);
				n = up;
			}
			heap[n] = value;
		},
		drop: () => {
			const last = heap.pop();
			if (last === undefined || heap.length === 0) return;
			let n = 0;
			for (;;) {
				const left = 2 * n + 1;
				const less = at(left + 1) < at(left) ? left + 1 : left;
				if (at(less) >= last) break;
				heap[n] = at(less);
				n = less;
			}
			heap[n] = last;
		},
	};
}
