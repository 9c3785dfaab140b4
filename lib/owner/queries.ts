import { type Day, day, dayOf } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { type Credited, sentBack } from "@/lib/credits/rules";
import type { Reader } from "@/lib/db/store";
import { minor } from "@/lib/money/money";
import { COST_KIND_WORDS } from "@/lib/money/schema";
import { type Account, type AccountPaper, accountOf } from "@/lib/owner/account";
import type { Chargeable } from "@/lib/owner/charged";
import { ANSWERED, GIVEN, givenFacts, handlingOf, saysAgreed } from "@/lib/owner/given";
import { MOST_LINES } from "@/lib/owner/schema";
import { requireShop } from "@/lib/shop/queries";
import { wantedOf, wantedPart } from "@/lib/wanted/queries";
import { toComeOf } from "@/lib/wanted/rules";

/** No more rows of one kind than this are read for an owner's account; a machine with more says so (`leftOut`). */
const MOST_ROWS = 5000;
const MOST_PAPERS = 200;

/** All of a machine that its owner can be charged for. */
export async function chargeableOf(read: Reader, machineId: string): Promise<Chargeable> {
	const { timeZone } = await requireShop(read);
	const found = await Promise.all([
		read.step.findMany({
			where: { machineId },
			orderBy: { number: "asc" },
			take: MOST_ROWS + 1,
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
			take: MOST_ROWS + 1,
			select: { stepId: true, personId: true, minutes: true, startedAt: true },
		}),
		read.person.findMany({
			orderBy: [{ name: "asc" }, { id: "asc" }],
			take: 500,
			select: { id: true, name: true, rates: { select: { fromDay: true, costMinor: true, chargeMinor: true } } },
		}),
		wantedOf(read, machineId),
		read.lineUse.findMany({
			where: { machineId, kind: { not: "void" } },
			orderBy: [{ day: "asc" }, { id: "asc" }],
			take: MOST_ROWS + 1,
			select: { id: true, kind: true, lineId: true, count: true, amountMinor: true, line: { select: { what: true } } },
		}),
		read.credit.findMany({
			where: { machineId, stands: "yes" },
			orderBy: [{ day: "asc" }, { id: "asc" }],
			take: MOST_ROWS + 1,
			select: { id: true, useId: true, amountMinor: true, purchase: { select: { number: true } } },
		}),
		read.costLine.findMany({
			where: { machineId, state: { in: ["planned", "spent"] } },
			orderBy: [{ day: "asc" }, { id: "asc" }],
			take: MOST_ROWS + 1,
			select: { id: true, kind: true, state: true, words: true, estimatedMinor: true, spentMinor: true },
		}),
	]);
	const leftOut: string[] = [];
	const first = <Row>(rows: Row[], kind: string): Row[] => {
		if (rows.length > MOST_ROWS) leftOut.push(kind);
		return rows.slice(0, MOST_ROWS);
	};
	const [, , persons, wanted] = found;
	const steps = first(found[0], "steps");
	const work = first(found[1], "pieces of time");
	const uses = first(found[4], "uses of what was bought");
	const credits = first(found[5], "credits");
	const costs = first(found[6], "other costs");
	const given = credits.map((credit): Credited => ({ useId: credit.useId, amount: minor(credit.amountMinor) }));
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
			const toCome = toComeOf(wantedPart(row));
			const { id, words, estimatedMinor, state, addedWhy, lineId } = row;
			return {
				id,
				words,
				lineId,
				estimated: minor(estimatedMinor),
				toCome,
				stands: state === "dropped" ? state : state === "open" || toCome > 0 ? "to-come" : "used",
				addedWhy,
			};
		}),
		uses: uses
			.filter(({ kind }) => kind === "used")
			.map(({ lineId, count, amountMinor, line }) => ({ lineId, count, amount: minor(amountMinor), what: line.what })),
		returns: uses
			.filter(({ kind }) => kind === "returned")
			.map(({ id, count, amountMinor, line }) => {
				const { kept, awaited } = sentBack({ id, cost: minor(amountMinor) }, given);
				return { id, what: line.what, count, kept, awaited };
			}),
		offPrice: credits.flatMap(({ id, useId, amountMinor, purchase }) =>
			useId === null ? [{ id, purchase: purchase.number, amount: minor(amountMinor) }] : [],
		),
		costs: costs.flatMap(({ id, kind, state, words, estimatedMinor, spentMinor }) =>
			state === "planned" || state === "spent"
				? [{ id, words, kindWords: COST_KIND_WORDS[kind], state, estimated: minor(estimatedMinor), spent: minor(spentMinor) }]
				: [],
		),
		leftOut,
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
	const told = await read.entry.findMany({
		where: { subject: { in: papers.map(({ id }) => `OwnerPaper/${id}`) }, action: { in: [GIVEN, ANSWERED] } },
		orderBy: { seq: "asc" },
		select: { seq: true, subject: true, action: true, open: true },
	});
	const given = told.filter(({ action }) => action === GIVEN);
	const entryOf = new Map(given.map((entry) => [entry.subject, entry]));
	const seals = await read.seal.findMany({ where: { seq: { in: given.map(({ seq }) => seq) } }, select: { seq: true, withheld: true } });
	const sealOf = new Map(seals.map(({ seq, withheld }) => [seq, withheld]));
	// A corrected answer goes on from when it was first said so.
	const agreedSince = new Map<string, number | null>();
	for (const { seq, subject, action, open } of told)
		if (action === ANSWERED) agreedSince.set(subject, saysAgreed(open, subject) ? (agreedSince.get(subject) ?? seq) : null);
	return papers
		.map((paper): AccountPaper => {
			const entry = entryOf.get(`OwnerPaper/${paper.id}`);
			if (!entry) throw new Error(`no entry gave paper ${paper.id}`);
			const facts = givenFacts(entry.open);
			const { about } = facts;
			return {
				id: paper.id,
				kind: paper.kind,
				number: paper.number,
				state: paper.state,
				day: day(paper.day),
				givenEntry: entry.seq,
				agreedEntry: paper.state === "agreed" ? (agreedSince.get(entry.subject) ?? null) : null,
				takesIn: facts.takesIn ?? null,
				limit: paper.limitMinor === null ? null : minor(paper.limitMinor),
				lines: paper.lines.map(({ netMinor, taxPercent }) => ({ net: minor(netMinor), taxPercent })),
				about,
				handling: handlingOf(facts, sealOf.get(entry.seq)),
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
