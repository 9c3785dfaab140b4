// Another order of the same operations, kept to what each must come after.

import type { Operation } from "@/lib/reversal/plan";

export function anyOrder(operations: readonly Operation[], random: () => number): Operation[] {
	const left = [...operations];
	const done = new Set<string>();
	const order: Operation[] = [];
	while (left.length > 0) {
		const ready = left.filter(({ after }) => after.every((before) => done.has(before)));
		const next = ready[Math.floor(random() * ready.length)];
		if (next === undefined) throw new Error("operations wait for each other");
		left.splice(left.indexOf(next), 1);
		done.add(next.id);
		order.push(next);
	}
	return order;
}
