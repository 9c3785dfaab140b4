import type { Day } from "@/lib/core/days";
import type { Reader } from "@/lib/db/store";
import { cameOf } from "@/lib/deliveries/rules";
import { costOfUse } from "@/lib/money/lineUse";
import { minor } from "@/lib/money/money";

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
				leadLowDays: true,
				leadLikelyDays: true,
				leadHighDays: true,
				lines: {
					orderBy: { number: "asc" },
					take: 4,
					select: { what: true, count: true, unit: true, deliveries: { where: { stands: "yes" }, take: 1, select: { id: true } } },
				},
				_count: { select: { lines: true } },
			},
		}),
	]);
	return { rows, count, from: (page - 1) * PAGE + 1, to: (page - 1) * PAGE + rows.length };
}

/** One purchase with its lines, what came and what was used of each, the parts that came of it, and what the seller gave back. */
export const purchaseByNumber = (read: Reader, number: number) =>
	read.purchase.findUnique({
		where: { number },
		include: {
			supplier: { select: { name: true } },
			credits: {
				orderBy: [{ day: "asc" }, { entry: "asc" }],
				take: 500,
				select: {
					id: true,
					useId: true,
					day: true,
					amountMinor: true,
					words: true,
					stands: true,
					machine: { select: { number: true, name: true } },
				},
			},
			lines: {
				orderBy: { number: "asc" },
				take: 200,
				include: {
					location: { select: { name: true } },
					deliveries: {
						orderBy: [{ day: "asc" }, { entry: "asc" }],
						take: 200,
						select: { id: true, day: true, count: true, words: true, stands: true, location: { select: { name: true } } },
					},
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

export type PurchasePage = NonNullable<Awaited<ReturnType<typeof purchaseByNumber>>>;

/** The currencies that were bought in, the last used first. */
export async function currenciesBoughtIn(read: Reader): Promise<string[]> {
	const used = await read.purchase.groupBy({ by: ["currency"], _max: { number: true } });
	return used.sort((a, b) => (b._max.number ?? 0) - (a._max.number ?? 0)).map(({ currency }) => currency);
}

/** Machines that a line can be used on: those not yet handed over, newest number first. */
export const machinesInWork = (read: Reader) =>
	read.machine.findMany({
		where: { state: { not: "left" } },
		orderBy: { number: "desc" },
		take: 200,
		select: { id: true, number: true, name: true },
	});

/** What is left of lines and here: stock, newest purchase first. What is still in the post is none. */
export async function inStock(read: Reader, most = 200) {
	const lines = await read.purchaseLine.findMany({
		where: { OR: [{ purchase: { arrivedDay: { not: null } } }, { deliveries: { some: { stands: "yes" } } }] },
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
			purchase: { select: { number: true, arrivedDay: true } },
			uses: { where: { kind: { not: "void" } }, orderBy: { entry: "asc" }, select: { count: true, amountMinor: true } },
			deliveries: { where: { stands: "yes" }, select: { count: true, stands: true } },
		},
	});
	return lines
		.map((line) => ({ ...line, ...hereOf(line) }))
		.filter(({ left }) => left > 0)
		.slice(0, most);
}

type LineHere = {
	readonly count: number;
	readonly landedMinor: number;
	readonly purchase: { readonly arrivedDay: string | null };
	readonly uses: readonly { readonly count: number; readonly amountMinor: number }[];
	readonly deliveries: readonly { readonly count: number; readonly stands: "yes" | "no" }[];
};

/** How many of a line are here and left, and what they stand for: what they would be charged at if all of them were used now. */
function hereOf(line: LineHere): { left: number; leftMinor: number } {
	const taken = line.uses.reduce((sum, { count }) => sum + count, 0);
	const left = cameOf(line, line.purchase.arrivedDay, line.deliveries) - taken;
	if (left <= 0) return { left: 0, leftMinor: 0 };
	const before = line.uses.map((use) => ({ count: use.count, charged: minor(use.amountMinor) }));
	const cost = costOfUse({ landed: minor(line.landedMinor), count: line.count }, before, left);
	return { left, leftMinor: cost.ok ? cost.value : 0 };
}

/** Purchases ordered in a period, both days included, and what sellers gave back in it, as the bookkeeper's table takes them. */
export async function purchasesOfPeriod(read: Reader, from: Day, until: Day, most = 5000) {
	const [bought, credits] = await Promise.all([
		read.purchase.findMany({
			where: { orderedDay: { gte: from, lte: until } },
			orderBy: { number: "asc" },
			take: most,
			include: { supplier: { select: { name: true } }, lines: { orderBy: { number: "asc" }, take: 200 } },
		}),
		read.credit.findMany({
			where: { stands: "yes", day: { gte: from, lte: until } },
			orderBy: [{ day: "asc" }, { entry: "asc" }, { id: "asc" }],
			take: most,
			select: { day: true, words: true, amountMinor: true, purchase: { select: { number: true, supplier: { select: { name: true } } } } },
		}),
	]);
	return {
		purchases: bought.map(({ supplier, ...purchase }) => ({ ...purchase, supplier: supplier.name })),
		credits: credits.map((credit) => ({
			purchase: credit.purchase.number,
			supplier: credit.purchase.supplier.name,
			day: credit.day,
			words: credit.words,
			amount: minor(credit.amountMinor),
		})),
	};
}
