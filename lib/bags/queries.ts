import type { BagFact } from "@/lib/bags/rules";
import type { Reader } from "@/lib/db/store";

/** A bag may be in a bag in a bag; deeper than this is a slip. */
const DEEPEST = 32;

const factColumns = {
	id: true,
	machineId: true,
	place: true,
	role: true,
	parentId: true,
	tag: { select: { id: true } },
	machine: { select: { number: true } },
} as const;

type FactRow = {
	id: string;
	machineId: string | null;
	place: BagFact["place"];
	role: BagFact["role"];
	parentId: string | null;
	tag: { id: string } | null;
	machine: { number: number } | null;
};

const factOf = (row: FactRow): BagFact => ({
	id: row.id,
	tag: row.tag?.id ?? "the bag",
	machineId: row.machineId,
	machineNumber: row.machine?.number ?? null,
	place: row.place,
	role: row.role,
});

/** The bag as the rules see it, or null. */
export async function bagFact(read: Reader, bagId: string): Promise<BagFact | null> {
	const row = await read.bag.findUnique({ where: { id: bagId }, select: factColumns });
	return row && factOf(row);
}

/** The bags around a bag, innermost first, without itself. */
export async function bagsAround(read: Reader, bagId: string): Promise<BagFact[]> {
	const around: BagFact[] = [];
	let inner = await read.bag.findUnique({ where: { id: bagId }, select: factColumns });
	while (inner?.parentId && around.length < DEEPEST) {
		inner = await read.bag.findUnique({ where: { id: inner.parentId }, select: factColumns });
		if (inner) around.push(factOf(inner));
	}
	return around;
}
