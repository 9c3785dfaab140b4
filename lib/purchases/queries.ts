import type { Reader } from "@/lib/db/store";

const PAGE = 50;

/** Purchases, newest first, one page of them: who, when, what, how much is left in stock. */
export async function purchases(read: Reader, page: number) {
	const [count, rows] = await Promise.all([
		read.purchase.count(),
		read.purchase.findMany({
			orderBy: { number: "desc" },
			skip: (page - 1) * PAGE,
			take: PAGE,
			select: {
				number: true,
				orderedDay: true,
				arrivedDay: true,
				currency: true,
				paidMinor: true,
				addedWhy: true,
				supplier: { select: { name: true } },
				lines: { orderBy: { number: "asc" }, take: 4, select: { what: true, count: true } },
				_count: { select: { lines: true } },
			},
		}),
	]);
	return { rows, count, from: (page - 1) * PAGE + 1, to: (page - 1) * PAGE + rows.length };
}

/** One purchase with its lines, what was used of each, and the parts that came of it. */
export const purchaseByNumber = (read: Reader, number: number) =>
	read.purchase.findUnique({
		where: { number },
		include: {
			supplier: { select: { name: true } },
			lines: {
				orderBy: { number: "asc" },
				take: 200,
				include: {
					location: { select: { name: true } },
					uses: {
						orderBy: { entry: "asc" },
						take: 500,
						select: {
							id: true,
							kind: true,
							count: true,
							amountMinor: true,
							day: true,
							words: true,
							machine: { select: { number: true, name: true } },
							part: { select: { name: true, tag: { select: { id: true } } } },
						},
					},
				},
			},
		},
	});

/** Machines that a line can be used on: those not yet handed over, newest number first. */
export const machinesInWork = (read: Reader) =>
	read.machine.findMany({
		where: { state: { not: "left" } },
		orderBy: { number: "desc" },
		take: 200,
		select: { id: true, number: true, name: true },
	});

/** What is left of lines: stock, newest purchase first. */
export async function inStock(read: Reader, most = 200) {
	const lines = await read.purchaseLine.findMany({
		where: { purchase: { arrivedDay: { not: null } } },
		orderBy: { entry: "desc" },
		take: most * 5,
		select: {
			id: true,
			number: true,
			what: true,
			unit: true,
			count: true,
			landedMinor: true,
			location: { select: { name: true } },
			purchase: { select: { number: true } },
			uses: { where: { kind: { not: "void" } }, select: { count: true, amountMinor: true } },
		},
	});
	return lines
		.map((line) => ({
			...line,
			left: line.count - line.uses.reduce((sum, use) => sum + use.count, 0),
			leftMinor: line.landedMinor - line.uses.reduce((sum, use) => sum + use.amountMinor, 0),
		}))
		.filter(({ left }) => left > 0)
		.slice(0, most);
}
