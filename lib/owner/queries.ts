import { type Day, day, dayOf } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import type { Reader } from "@/lib/db/store";
import { minor } from "@/lib/money/money";
import { COST_KIND_WORDS } from "@/lib/money/schema";
import { type Account, type AccountPaper, accountOf } from "@/lib/owner/account";
import type { Chargeable } from "@/lib/owner/charged";
import { GIVEN, givenFacts } from "@/lib/owner/given";
import { MOST_LINES } from "@/lib/owner/schema";
import { requireShop } from "@/lib/shop/queries";
import { wantedOf, wantedPart } from "@/lib/wanted/queries";
import { toComeOf } from "@/lib/wanted/rules";

/** No machine has more rows of one kind than this in its owner's account. */
const MOST_ROWS = 5000;
const MOST_PAPERS = 200;

/** All of a machine that its owner can be charged for. */
export async function chargeableOf(read: Reader, machineId: string): Promise<Chargeable> {
	const { timeZone } = await requireShop(read);
	const [steps, work, persons, wanted, uses, costs] = await Promise.all([
		read.step.findMany({
			where: { machineId },
			orderBy: { number: "asc" },
			take: MOST_ROWS,
			select: {
				id: true,
				number: true,
				title: true,
				kind: true,
				lowMinutes: true,
				likelyMinutes: true,
				highMinutes: true,
				state: true,
				addedWhy: true,
				crew: { where: { stands: "yes" }, select: { personId: true } },
			},
		}),
		read.work.findMany({
			where: { machineId, how: { not: "void" }, minutes: { not: null } },
			orderBy: [{ startedAt: "asc" }, { id: "asc" }],
			take: MOST_ROWS,
			select: { stepId: true, personId: true, minutes: true, startedAt: true },
		}),
		read.person.findMany({
			orderBy: [{ name: "asc" }, { id: "asc" }],
			take: 500,
			select: { id: true, name: true, rates: { select: { fromDay: true, costMinor: true, chargeMinor: true } } },
		}),
		wantedOf(read, machineId),
		read.lineUse.findMany({
			where: { machineId, kind: "used" },
			orderBy: [{ day: "asc" }, { id: "asc" }],
			take: MOST_ROWS,
			select: { lineId: true, count: true, amountMinor: true, line: { select: { what: true } } },
		}),
		read.costLine.findMany({
			where: { machineId, state: { in: ["planned", "spent"] } },
			orderBy: [{ day: "asc" }, { id: "asc" }],
			take: MOST_ROWS,
			select: { id: true, kind: true, state: true, words: true, estimatedMinor: true, spentMinor: true },
		}),
	]);
	return {
		steps: steps.map(({ lowMinutes, likelyMinutes, highMinutes, crew, ...step }) => ({
			...step,
			low: lowMinutes,
			likely: likelyMinutes,
			high: highMinutes,
			crew: crew.map(({ personId }) => personId),
		})),
		work: work.flatMap(({ stepId, personId, minutes, startedAt }) =>
			minutes === null ? [] : [{ stepId, personId, minutes, day: dayOf(instant(startedAt), timeZone) }],
		),
		persons: persons.map(({ id, name, rates }) => ({
			id,
			name,
			rates: rates.map((rate) => ({ from: day(rate.fromDay), costPerHour: minor(rate.costMinor), chargePerHour: minor(rate.chargeMinor) })),
		})),
		wanted: wanted.map((row) => {
			const toCome = toComeOf(wantedPart(row, machineId));
			const { id, words, estimatedMinor, state, addedWhy } = row;
			return {
				id,
				words,
				estimated: minor(estimatedMinor),
				toCome,
				stands: state === "dropped" ? state : state === "open" || toCome > 0 ? "to-come" : "used",
				addedWhy,
			};
		}),
		uses: uses.map(({ lineId, count, amountMinor, line }) => ({ lineId, count, amount: minor(amountMinor), what: line.what })),
		costs: costs.flatMap(({ id, kind, state, words, estimatedMinor, spentMinor }) =>
			state === "planned" || state === "spent"
				? [{ id, words, kindWords: COST_KIND_WORDS[kind], state, estimated: minor(estimatedMinor), spent: minor(spentMinor) }]
				: [],
		),
	};
}

/** The papers for a machine's owner, in the order in which they were given. */
export async function papersOf(read: Reader, machineId: string): Promise<AccountPaper[]> {
	const papers = await read.ownerPaper.findMany({
		where: { machineId },
		orderBy: { id: "asc" },
		take: MOST_PAPERS,
		include: { lines: { orderBy: { number: "asc" }, take: MOST_LINES, select: { netMinor: true, taxPercent: true } } },
	});
	const given = await read.entry.findMany({
		where: { subject: { in: papers.map(({ id }) => `OwnerPaper/${id}`) }, action: GIVEN },
		select: { seq: true, subject: true, open: true },
	});
	const entryOf = new Map(given.map((entry) => [entry.subject, entry]));
	return papers
		.map((paper): AccountPaper => {
			const entry = entryOf.get(`OwnerPaper/${paper.id}`);
			if (!entry) throw new Error(`no entry gave paper ${paper.id}`);
			const { about, handling } = givenFacts(entry.open);
			return {
				id: paper.id,
				kind: paper.kind,
				number: paper.number,
				state: paper.state,
				day: day(paper.day),
				givenEntry: entry.seq,
				limit: paper.limitMinor === null ? null : minor(paper.limitMinor),
				lines: paper.lines.map(({ netMinor, taxPercent }) => ({ net: minor(netMinor), taxPercent })),
				about,
				handling,
			};
		})
		.sort((a, b) => a.givenEntry - b.givenEntry);
}

/** Money from the owner and back, by day, with what was taken back. */
export const paymentsOf = (read: Reader, machineId: string) =>
	read.payment.findMany({
		where: { machineId },
		orderBy: [{ day: "asc" }, { id: "asc" }],
		take: 500,
		select: { id: true, kind: true, day: true, amountMinor: true, words: true, stands: true },
	});
export type PaymentRow = Awaited<ReturnType<typeof paymentsOf>>[number];

export type OwnerBook = {
	readonly account: Account;
	readonly of: Chargeable;
	readonly papers: readonly AccountPaper[];
	readonly payments: readonly PaymentRow[];
};

/** Where a machine stands with its owner today, and what that is made of. */
export async function ownerBook(read: Reader, machineId: string, today: Day): Promise<OwnerBook> {
	const [of, papers, payments] = await Promise.all([chargeableOf(read, machineId), papersOf(read, machineId), paymentsOf(read, machineId)]);
	const standing = payments.filter(({ stands }) => stands === "yes").map(({ kind, amountMinor }) => ({ kind, amount: minor(amountMinor) }));
	return { account: accountOf({ of, papers, payments: standing, today }), of, papers, payments };
}

/** One paper as it was handed over: to whom, its lines, and on a statement what was paid and agreed by then. Null when there is none. */
export async function ownerPaper(read: Reader, machineId: string, id: string) {
	const paper = await read.ownerPaper.findFirst({
		where: { id, machineId },
		include: { lines: { orderBy: { number: "asc" }, take: MOST_LINES } },
	});
	if (!paper) return null;
	const entry = await read.entry.findFirst({ where: { subject: `OwnerPaper/${id}`, action: GIVEN }, select: { open: true } });
	if (!entry) throw new Error(`no entry gave paper ${id}`);
	const facts = givenFacts(entry.open);
	const [owner, payments, agreed] = await Promise.all([
		read.party.findUnique({ where: { id: facts.owner }, select: { name: true } }),
		read.payment.findMany({ where: { id: { in: facts.payments } }, orderBy: [{ day: "asc" }, { id: "asc" }] }),
		read.ownerPaper.findMany({
			where: { id: { in: facts.agreed } },
			orderBy: { id: "asc" },
			include: { lines: { orderBy: { number: "asc" }, select: { netMinor: true, taxPercent: true } } },
		}),
	]);
	return { ...paper, owner: owner?.name ?? "", payments, agreed };
}
export type OwnerPaperPage = NonNullable<Awaited<ReturnType<typeof ownerPaper>>>;
