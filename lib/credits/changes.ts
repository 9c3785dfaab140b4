import { dayOf } from "@/lib/core/days";
import { happenedBy } from "@/lib/core/happened";
import { ok, type Result, refuse } from "@/lib/core/result";
import { type Credited, mayCredit, type Returned } from "@/lib/credits/rules";
import type { GiveCredit, VoidCredit } from "@/lib/credits/schema";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, change, deed } from "@/lib/ledger/rows";
import { minor } from "@/lib/money/money";
import { requireShop } from "@/lib/shop/queries";

/** Records what a seller gave back. Gives the credit's id. */
export const giveCredit = (input: GiveCredit, env: Env): Promise<Result<string>> => {
	const id = env.newId();
	return record(env, async (read) => {
		const { currency, timeZone } = await requireShop(read);
		const happened = happenedBy(dayOf(env.clock(), timeZone), input.day);
		if (!happened.ok) return happened;
		const purchase = await read.purchase.findUnique({
			where: { id: input.purchaseId },
			select: {
				number: true,
				paidMinor: true,
				credits: { where: { stands: "yes" }, select: { useId: true, amountMinor: true } },
			},
		});
		if (!purchase) return refuse("no-such-purchase", "That purchase is not in the book. Load the page again.");
		const use =
			input.useId === null
				? null
				: await read.lineUse.findFirst({
						where: { id: input.useId, kind: "returned", line: { purchaseId: input.purchaseId } },
						select: { id: true, machineId: true, count: true, amountMinor: true, line: { select: { what: true } } },
					});
		if (input.useId !== null && use === null) {
			const say = "Nothing of that stands as sent back. Choose again.";
			return refuse("no-such-return", say, { fields: { useId: say } });
		}
		const machineId = use?.machineId ?? input.machineId;
		if (machineId !== null && (await read.machine.count({ where: { id: machineId } })) === 0) {
			const say = "That machine is not in the book. Choose again.";
			return refuse("no-such-machine", say, { fields: { machineId: say } });
		}
		const given = purchase.credits.map((credit): Credited => ({ useId: credit.useId, amount: minor(credit.amountMinor) }));
		const returned: Returned | null = use && { id: use.id, cost: minor(use.amountMinor) };
		const may = mayCredit(input.amount, { returned, given, paid: minor(purchase.paidMinor) }, currency);
		if (!may.ok) return may;
		return ok(
			deed(
				machineId,
				"credit.given",
				{ table: "Credit", id },
				{
					say: use
						? `The seller answered for ${use.count} ${use.line.what} sent back, purchase ${purchase.number}.`
						: `The seller took something off the price of purchase ${purchase.number}.`,
				},
				[
					add("Credit", {
						id,
						purchaseId: input.purchaseId,
						useId: input.useId,
						machineId,
						day: input.day,
						amountMinor: input.amount,
						words: input.words,
						stands: "yes",
					}),
				],
				id,
			),
		);
	});
};

/** Takes a credit back that was entered in error; it stays readable and counts for nothing. */
export const voidCredit = (input: VoidCredit, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const found = await read.credit.findUnique({ where: { id: input.creditId }, include: { purchase: { select: { number: true } } } });
		if (!found) return refuse("no-such-credit", "That credit is not in the book. Load the page again.");
		const { purchase, ...credit } = found;
		if (credit.stands === "no") return refuse("credit-void", "That credit was taken back already.");
		return ok(
			deed(
				credit.machineId,
				"credit.voided",
				{ table: "Credit", id: credit.id },
				{ say: `Entered in error, so not credited, purchase ${purchase.number}.` },
				[change("Credit", credit, { stands: "no", words: `${credit.words}. Taken back: ${input.why}` })],
				null,
			),
		);
	});
