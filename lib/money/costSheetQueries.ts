import { day, dayOf } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import type { Reader } from "@/lib/db/store";
import { costSheet } from "@/lib/money/costSheet";
import { minor } from "@/lib/money/money";
import { MOST_LINES } from "@/lib/money/queries";
import { COST_KIND_WORDS } from "@/lib/money/schema";
import { requireShop } from "@/lib/shop/queries";

/** Every cost that was spent on a machine, line by line. */
export async function costSheetOf(read: Reader, machineId: string) {
	const shop = await requireShop(read);
	const [work, uses, credits, costs] = await Promise.all([
		read.work.findMany({
			where: { machineId, how: { not: "void" }, minutes: { not: null } },
			orderBy: [{ startedAt: "asc" }, { id: "asc" }],
			take: MOST_LINES,
			select: {
				startedAt: true,
				minutes: true,
				step: { select: { number: true, title: true } },
				person: { select: { name: true, rates: { select: { fromDay: true, costMinor: true, chargeMinor: true } } } },
			},
		}),
		read.lineUse.findMany({
			where: { machineId, kind: { not: "void" } },
			orderBy: [{ day: "asc" }, { entry: "asc" }, { id: "asc" }],
			take: MOST_LINES,
			select: {
				id: true,
				kind: true,
				count: true,
				amountMinor: true,
				day: true,
				words: true,
				line: { select: { what: true, unit: true, purchase: { select: { number: true } } } },
			},
		}),
		read.credit.findMany({
			where: { machineId, stands: "yes" },
			orderBy: [{ day: "asc" }, { entry: "asc" }, { id: "asc" }],
			take: MOST_LINES,
			select: { useId: true, amountMinor: true, day: true, words: true, purchase: { select: { number: true } } },
		}),
		read.costLine.findMany({
			where: { machineId, state: { in: ["spent", "planned"] }, spentMinor: { not: 0 } },
			orderBy: [{ day: "asc" }, { id: "asc" }],
			take: MOST_LINES,
			select: { day: true, kind: true, words: true, spentMinor: true },
		}),
	]);
	const taken = (kind: "used" | "returned") =>
		uses
			.filter((use) => use.kind === kind)
			.map(({ id, count, amountMinor, day: on, words, line }) => ({
				id,
				day: day(on),
				words: `${count} ${line.unit === "piece" ? "x" : line.unit} ${line.what}${words ? `: ${words}` : ""}`,
				purchase: line.purchase.number,
				cost: minor(amountMinor),
			}));
	return costSheet({
		work: work.map(({ startedAt, minutes, step, person }) => ({
			day: dayOf(instant(startedAt), shop.timeZone),
			person: {
				name: person.name,
				rates: person.rates.map((rate) => ({
					from: day(rate.fromDay),
					costPerHour: minor(rate.costMinor),
					chargePerHour: minor(rate.chargeMinor),
				})),
			},
			step: `step ${step.number}: ${step.title}`,
			minutes: minutes ?? 0,
		})),
		uses: taken("used"),
		returns: taken("returned"),
		credits: credits.map((credit) => ({
			useId: credit.useId,
			amount: minor(credit.amountMinor),
			day: day(credit.day),
			words: credit.words,
			purchase: credit.purchase.number,
		})),
		others: costs.map((cost) => ({
			day: day(cost.day),
			kind: COST_KIND_WORDS[cost.kind],
			words: cost.words,
			spent: minor(cost.spentMinor),
		})),
	});
}
