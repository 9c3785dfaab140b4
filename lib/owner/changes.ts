import { type Day, day, dayOf } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, change, deed } from "@/lib/ledger/rows";
import { minor } from "@/lib/money/money";
import { agreedOf } from "@/lib/owner/account";
import { ANSWERED, GIVEN } from "@/lib/owner/given";
import { papersOf } from "@/lib/owner/queries";
import { mayAnswer, mayDealWithOwner, mayGiveOn, mayRefund, mayTakeBack, mayWithdraw, nextNumber } from "@/lib/owner/rules";
import {
	type AddPayment,
	type AnswerPaper,
	type GivePaper,
	PAPER_KIND_WORDS,
	PAYMENT_KIND_WORDS,
	type TakeBackPayment,
	type WithdrawPaper,
} from "@/lib/owner/schema";
import { requireShop } from "@/lib/shop/queries";

const NO_MACHINE = refuse("no-such-machine", "That machine is not in the book. Load the page again.");
const NO_PAPER = refuse("no-such-paper", "That paper is not in the book. Load the page again.");

/** Gives a paper: from then on it stands as it is. A new quote or statement takes the place of one that has no answer yet. */
export const givePaper = (input: GivePaper, env: Env): Promise<Result<{ paperId: string; number: number }>> => {
	const paperId = env.newId();
	return record(env, async (read) => {
		const machine = await read.machine.findUnique({ where: { id: input.machineId }, select: { ownership: true, ownerId: true } });
		if (!machine) return NO_MACHINE;
		const owner = mayDealWithOwner(machine);
		if (!owner.ok) return owner;
		const { timeZone } = await requireShop(read);
		const onDay = mayGiveOn(input.day, dayOf(env.clock(), timeZone));
		if (!onDay.ok) return onDay;
		const { kind } = input;
		const [highest, unanswered, payments, papers] = await Promise.all([
			read.ownerPaper.aggregate({ where: { kind }, _max: { number: true } }),
			kind === "more" ? [] : read.ownerPaper.findMany({ where: { machineId: input.machineId, kind, state: "given" } }),
			kind === "statement"
				? read.payment.findMany({
						where: { machineId: input.machineId, stands: "yes" },
						orderBy: [{ day: "asc" }, { entry: "asc" }],
						take: 500,
						select: { id: true },
					})
				: [],
			papersOf(read, input.machineId),
		]);
		const number = nextNumber(highest._max.number);
		const named = `${PAPER_KIND_WORDS[kind]} ${number}`;
		// What the form that proposed the lines knew to be agreed; what was agreed to since is not in them.
		const agreedBy = papers.filter(({ state, kind: of }) => state === "agreed" && of !== "statement").map(({ id }) => id);
		const takesIn = kind !== "quote" ? [] : agreedBy.filter((id) => input.takesIn?.includes(id) ?? true);
		const about = kind === "more" ? input.lines.flatMap((line) => line.about ?? []) : [];
		const known = await Promise.all([
			read.step.count({ where: { machineId: input.machineId, id: { in: about } } }),
			read.wanted.count({ where: { machineId: input.machineId, id: { in: about } } }),
		]);
		if (known[0] + known[1] < new Set(about).size)
			return refuse("not-of-machine", "A line stands for a step or part that is not this machine's. Load the page again.");
		const instead = unanswered.map((old) => `${PAPER_KIND_WORDS[kind].toLowerCase()} ${old.number}`);
		return ok({
			entries: [
				{
					machine: input.machineId,
					action: GIVEN,
					subject: { table: "OwnerPaper", id: paperId },
					facts: {
						say: `Gave the owner a paper: ${named}.${instead.length > 0 ? ` It takes the place of ${instead.join(", ")}.` : ""}`,
						owner: owner.value,
						about,
						payments: payments.map(({ id }) => id),
						agreed: agreedOf(papers).map(({ id }) => id),
						takesIn,
					},
					sealed: { handling: input.handling },
					rows: [
						...unanswered.map((old) => change("OwnerPaper", old, { state: "withdrawn", answerHow: `${named} takes its place` })),
						add("OwnerPaper", {
							id: paperId,
							machineId: input.machineId,
							kind,
							number,
							day: input.day,
							untilDay: input.untilDay,
							words: [input.why, input.terms].filter(Boolean).join("\n\n"),
							limitMinor: input.limit,
							state: "given",
							answeredAt: null,
							agreedBy: null,
							answerHow: "",
						}),
						...input.lines.map((line, index) =>
							add("OwnerPaperLine", {
								id: env.newId(),
								paperId,
								number: index + 1,
								words: line.words,
								netMinor: line.net,
								taxPercent: line.tax,
							}),
						),
					],
				},
			],
			result: { paperId, number },
		});
	});
};

/** Writes down what the owner answered, who, when and how; the same again corrects the answer. */
export const answerPaper = (input: AnswerPaper, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const before = await read.ownerPaper.findUnique({ where: { id: input.paperId } });
		if (!before) return NO_PAPER;
		const { timeZone } = await requireShop(read);
		const at = instant(input.at ?? env.clock());
		const may = mayAnswer(before, dayOf(at, timeZone));
		if (!may.ok) return may;
		const corrected = before.state === "given" ? "" : " The answer was corrected.";
		return ok(
			deed(
				before.machineId,
				ANSWERED,
				{ table: "OwnerPaper", id: before.id },
				{
					say: `The owner ${input.answer === "agreed" ? "agreed to" : "refused"} ${PAPER_KIND_WORDS[before.kind].toLowerCase()} ${before.number}.${corrected}`,
				},
				[change("OwnerPaper", before, { state: input.answer, answeredAt: at, agreedBy: input.by, answerHow: input.how })],
				null,
			),
		);
	});

/** Takes a paper back that has no answer yet; it stays readable. */
export const withdrawPaper = (input: WithdrawPaper, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const before = await read.ownerPaper.findUnique({ where: { id: input.paperId } });
		if (!before) return NO_PAPER;
		const may = mayWithdraw(before);
		if (!may.ok) return may;
		return ok(
			deed(
				before.machineId,
				"owner-paper.withdrawn",
				{ table: "OwnerPaper", id: before.id },
				{ say: `Took ${PAPER_KIND_WORDS[before.kind].toLowerCase()} ${before.number} back.` },
				[change("OwnerPaper", before, { state: "withdrawn", answerHow: input.why })],
				null,
			),
		);
	});

/** Money from the owner, or back to them. Gives its id. */
export const addPayment = (input: AddPayment, env: Env): Promise<Result<string>> => {
	const id = env.newId();
	return record(env, async (read) => {
		const machine = await read.machine.findUnique({ where: { id: input.machineId }, select: { ownership: true, ownerId: true } });
		if (!machine) return NO_MACHINE;
		const owner = mayDealWithOwner(machine);
		if (!owner.ok) return owner;
		const { timeZone } = await requireShop(read);
		const onDay = paidOnDay(input.day, dayOf(env.clock(), timeZone));
		if (!onDay.ok) return onDay;
		if (input.kind === "refund") {
			const standing = await read.payment.findMany({
				where: { machineId: input.machineId, stands: "yes" },
				select: { kind: true, amountMinor: true },
			});
			const may = mayRefund(
				standing.map(({ kind, amountMinor }) => ({ kind, amount: minor(amountMinor) })),
				input.amount,
			);
			if (!may.ok) return may;
		}
		const { amount, ...payment } = input;
		return ok(
			deed(
				input.machineId,
				"payment.added",
				{ table: "Payment", id },
				{ say: input.kind === "refund" ? "Gave money back to the owner." : `The owner paid: ${PAYMENT_KIND_WORDS[input.kind]}.` },
				[add("Payment", { id, ...payment, amountMinor: amount, stands: "yes" })],
				id,
			),
		);
	});
};

function paidOnDay(on: Day, today: Day): Result<null> {
	if (on <= today) return ok(null);
	return refuse("day-ahead", "That day is still to come. Enter the money when it is there.", { fields: { day: "Still to come." } });
}

/** Takes a payment back that was entered in error; it stays readable and counts for nothing. */
export const takeBackPayment = (input: TakeBackPayment, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const before = await read.payment.findUnique({ where: { id: input.paymentId } });
		if (!before) return refuse("no-such-payment", "That payment is not in the book. Load the page again.");
		const others = await read.payment.findMany({
			where: { machineId: before.machineId, stands: "yes", id: { not: before.id } },
			select: { kind: true, amountMinor: true },
		});
		const may = mayTakeBack(
			before,
			others.map(({ kind, amountMinor }) => ({ kind, amount: minor(amountMinor) })),
		);
		if (!may.ok) return may;
		return ok(
			deed(
				before.machineId,
				"payment.taken-back",
				{ table: "Payment", id: before.id },
				{ say: `Entered in error, so taken back: ${PAYMENT_KIND_WORDS[before.kind]} of ${day(before.day)}.` },
				[change("Payment", before, { stands: "no", words: `${before.words}. Taken back: ${input.why}` })],
				null,
			),
		);
	});
