// What is in a bag as lines to read, one a thing, for where its page would be too much.

import { whatIsIn } from "@/lib/bags/queries";
import type { Reader } from "@/lib/db/store";
import { formatFixing } from "@/lib/fixings/fixingWords";

/** Parts, fixings and bags in a bag: "12-0147-K drive motor", "6 x 4BA x 1/2 cheese slotted"; one line says so when it is empty. */
export async function bagLines(read: Reader, bagId: string): Promise<string[]> {
	const { parts, fixings, bags, more } = await whatIsIn(read, bagId);
	const lines = [
		...parts.map((part) => [part.tag, part.count > 1 ? `${part.count} x ${part.name}` : part.name].filter(Boolean).join(" ")),
		...fixings.map(formatFixing),
		...bags.map((bag) => [bag.tag, bag.words].filter(Boolean).join(" ")),
		...(more > 0 ? [`and ${more} more`] : []),
	];
	return lines.length === 0 ? ["Nothing: it is empty."] : lines;
}
