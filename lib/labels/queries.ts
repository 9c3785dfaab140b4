import type { Reader } from "@/lib/db/store";
import { readTag } from "@/lib/tags/readTag";

/** The machine id of each tag: of its part or bag, or by its number when it is a ready-made tag. Null for the shop's own. */
export async function machinesOfTags(read: Reader, tags: readonly string[]): Promise<Map<string, string | null>> {
	const rows = await read.tag.findMany({
		where: { id: { in: [...tags] } },
		select: { id: true, part: { select: { machineId: true } }, bag: { select: { machineId: true } } },
	});
	const known = new Map(rows.map((row) => [row.id, row.part?.machineId ?? row.bag?.machineId ?? null]));
	const numbers = new Map<string, number>();
	for (const tag of tags) {
		const said = readTag(tag);
		if (!known.has(tag) && said.ok) numbers.set(tag, said.value.machine);
	}
	if (numbers.size === 0) return known;
	const machines = await read.machine.findMany({
		where: { number: { in: [...new Set(numbers.values())] } },
		select: { id: true, number: true },
	});
	for (const [tag, number] of numbers) known.set(tag, machines.find((machine) => machine.number === number)?.id ?? null);
	return known;
}

/** How often each tag was sent to paper; a tag that never was is left out. */
export async function timesPrinted(read: Reader, tags: readonly string[]): Promise<Map<string, number>> {
	const rows = await read.labelPrint.groupBy({ by: ["tag"], where: { tag: { in: [...tags] } }, _count: { _all: true } });
	return new Map(rows.map((row) => [row.tag, row._count._all]));
}
