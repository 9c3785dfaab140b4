import { describe, expect, it } from "vitest";
import { benchLines } from "@/lib/fittings/benchLines";
import { linesOf, offeredNext, reachOf, SHOWN } from "@/lib/fittings/benchList";
import { benchSheet } from "@/lib/fittings/benchSheet";
import { demoCopy } from "@/tests/support/demoCopy";

describe("the list that a page at the bench comes with", () => {
	it("is the beginning of the one that the phone makes of the machine's sheet, so that nothing moves under the thumb", {
		timeout: 120_000,
	}, async () => {
		const { store, close } = await demoCopy();
		try {
			const machines = await store.read.machine.findMany({ orderBy: { number: "asc" }, select: { id: true } });
			const told = await Promise.all(
				machines.map(async ({ id }) => {
					const [first, sheet] = await Promise.all([benchLines(store.read, id), benchSheet(store.read, id)]);
					const seats = sheet.seats.map(({ position, part }) => ({ positionId: position.id, partId: part.id }));
					const { opened, free, behind } = linesOf(
						sheet.seats,
						offeredNext(reachOf(sheet.reach), seats, sheet.lastOut),
						new Map(sheet.names),
					);
					expect(first).toEqual({
						lines: { opened: opened.slice(0, SHOWN), free: free.slice(0, SHOWN), behind: behind.slice(0, SHOWN) },
						counts: { opened: opened.length, free: free.length, behind: behind.length },
					});
					return first.counts;
				}),
			);
			// The demo has all three kinds of lines, so none of them agreed for want of any.
			const sum = (of: (counts: (typeof told)[number]) => number) => told.reduce((all, counts) => all + of(counts), 0);
			expect(Math.min(...[sum((c) => c.opened), sum((c) => c.free), sum((c) => c.behind)])).toBeGreaterThan(0);
		} finally {
			await close();
		}
	});
});
