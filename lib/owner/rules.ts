// What may be done with a paper for the owner, and with the owner's money. Pure.

import type { Day } from "@/lib/core/days";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { MinorUnits } from "@/lib/money/money";
import { type AccountPayment, type PaperKind, type PaperState, paidOf } from "@/lib/owner/account";

/** Whose machine it is, as far as papers for its owner go. */
export type Whose = { readonly ownership: "shop" | "customer" | "collection"; readonly ownerId: string | null };

/** Papers and payments are for a machine that somebody else owns, and for an owner who is named. */
export function mayDealWithOwner(machine: Whose): Result<string> {
	if (machine.ownership !== "customer")
		return refuse(
			"not-a-customers",
			"This machine is not a customer's: there is no owner to give a paper to. Say under About whose it is.",
		);
	if (machine.ownerId === null) return refuse("no-owner", "No owner is named on this machine. Name the owner under About first.");
	return ok(machine.ownerId);
}

/** A paper is given on a day that has come. */
export function mayGiveOn(day: Day, today: Day): Result<null> {
	if (day <= today) return ok(null);
	return refuse("day-ahead", "That day is still to come. Write the day on which it is handed over.", {
		fields: { day: "Still to come. Write today, or an earlier day." },
	});
}

/** The number of the next paper of a kind: they run through the shop without a gap. */
export const nextNumber = (highest: number | null): number => (highest ?? 0) + 1;

/** An answer can come, or be corrected, while the paper was not taken back; and not before it was given. */
export function mayAnswer(paper: { readonly state: PaperState; readonly day: string }, answeredOn: Day): Result<null> {
	if (paper.state === "withdrawn") return refuse("withdrawn", "This paper was taken back. Give a new one and have that answered.");
	if (answeredOn < paper.day) {
		const say = "Before the day on which the paper was given. Write when the answer came.";
		return refuse("answered-before", say, { fields: { answered: say } });
	}
	return ok(null);
}

/** Only what waits for its answer can be taken back. */
export function mayWithdraw(paper: { readonly state: PaperState; readonly kind: PaperKind }): Result<null> {
	if (paper.state === "given") return ok(null);
	if (paper.state === "withdrawn") return refuse("withdrawn", "This paper was taken back already.");
	return refuse("answered", "The owner has answered this paper. Correct the answer, or give a new paper in its place.");
}

/** Money can only be given back that came. */
export function mayRefund(standing: readonly AccountPayment[], amount: MinorUnits): Result<null> {
	if (amount <= paidOf(standing)) return ok(null);
	const say = "More than the owner has paid. Enter the deposit or payment first, or write less.";
	return refuse("refund-too-large", say, { fields: { amount: say } });
}

/** A payment is taken back once, and not while more was given back than would be left. */
export function mayTakeBack(payment: { readonly stands: "yes" | "no" }, others: readonly AccountPayment[]): Result<null> {
	if (payment.stands === "no") return refuse("payment-void", "That payment was taken back already.");
	if (paidOf(others) < 0) return refuse("refund-left", "Money was given back out of this payment. Take that back first.");
	return ok(null);
}
