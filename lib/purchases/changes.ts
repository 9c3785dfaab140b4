import { type Day, dayOf } from "@/lib/core/days";
import { decimal } from "@/lib/core/decimals";
import { happenedBy } from "@/lib/core/happened";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import { cameOf, hereSince, mayTake, mayTakeOn } from "@/lib/deliveries/rules";
import type { Env } from "@/lib/ledger/env";
import { overMeanwhile, UNSEEN } from "@/lib/ledger/meanwhile";
import { record } from "@/lib/ledger/record";
import { add, change, deed, type RowChange } from "@/lib/ledger/rows";
import { isCurrency } from "@/lib/money/currency";
import { landed } from "@/lib/money/landed";
import { costOfUse } from "@/lib/money/lineUse";
import { type MinorUnits, minor } from "@/lib/money/money";
import { newPart, onTheBench } from "@/lib/parts/newPart";
import { nextPartNumbers } from "@/lib/parts/numbering";
import { tagsGiven } from "@/lib/parts/queries";
import { counted, listed, partOf } from "@/lib/purchases/counted";
import { leadColumns, leadOf } from "@/lib/purchases/lead";
import type { Buy, ChangeLead, DrawFromLine, PartFromLine, ReturnLine, VoidUse } from "@/lib/purchases/schema";
import { requireShop } from "@/lib/shop/queries";

const NO_LINE = refuse("no-such-line", "That line is not in the book. Load the page again.");

/** Records a purchase, its pots spread over its lines so that they add up to what was paid. Gives its number and the lines' ids. */
export const buy = (input: Buy, env: Env): Promise<Result<{ id: string; number: number; lineIds: string[] }>> => {
	const id = env.newId();
	return record(env, async (read) => {
		const shop = await requireShop(read);
		const { arrivedDay } = input;
		if (arrivedDay !== null && arrivedDay < input.orderedDay) {
			const say = "It cannot have come before it was ordered. Check the two days.";
			return refuse("came-before-ordered", say, { fields: { arrivedDay: say } });
		}
		const happened = arrivedDay === null ? ok(null) : happenedBy(dayOf(env.clock(), shop.timeZone), arrivedDay, "arrivedDay");
		if (!happened.ok) return happened;
		if (!isCurrency(input.currency)) return refuse("currency-unknown", "Choose the currency of the purchase again.");
		const lines = input.lines.map((line) => ({ ...line, id: env.newId() }));
		const pot = (amount: MinorUnits, where: "purchase" | "shop", by: "value" | "weight" = "value") => ({ minor: amount, in: where, by });
		const spreadOut = landed({
			shopCurrency: shop.currency,
			currency: input.currency,
			rate: decimal(input.rate),
			lines: lines.map((line) => ({ id: line.id, net: line.net, weightGrams: line.weightGrams })),
			pots: {
				discount: pot(input.discount, "purchase"),
				// Only freight goes by weight: a discount, duty and tax follow the price.
				freight: pot(input.freight, "purchase", input.spreadBy),
				duty: pot(input.duty, "shop"),
				handling: pot(input.handling, "shop", input.spreadBy),
				tax: pot(input.tax, "shop"),
			},
			paid: input.paid,
		});
		if (!spreadOut.ok) return withField(spreadOut, lines);
		const landedOf = new Map(spreadOut.value.lines.map((line) => [line.id, line.landed]));
		const last = await read.purchase.findFirst({ orderBy: { number: "desc" }, select: { number: true } });
		const number = (last?.number ?? 0) + 1;
		const party = await supplierOf(read, input, env);
		if (!party.ok) return party;
		return ok(
			deed(
				null,
				"purchase.made",
				{ table: "Purchase", id },
				{
					say: `Bought, purchase ${number}: ${lines.map(listed).join(", ")}.`,
					number,
				},
				[
					...party.value.rows,
					add("Purchase", {
						id,
						number,
						supplierId: party.value.id,
						orderedDay: input.orderedDay,
						arrivedDay,
						currency: input.currency,
						rate: input.rate,
						discountMinor: input.discount,
						freightMinor: input.freight,
						dutyMinor: input.duty,
						handlingMinor: input.handling,
						taxMinor: input.tax,
						spreadBy: input.spreadBy,
						...leadColumns(input.lead),
						paidMinor: spreadOut.value.total.landed,
						addedWhy: input.addedWhy,
						note: input.note,
					}),
					...lines.map((line, index) =>
						add("PurchaseLine", {
							id: line.id,
							purchaseId: id,
							number: index + 1,
							what: line.what,
							count: line.count,
							unit: line.unit,
							netMinor: line.net,
							weightGrams: line.weightGrams,
							landedMinor: landedOf.get(line.id) ?? 0,
							locationId: null,
						}),
					),
					// What was here when the paper was entered came as any other delivery does, and can be taken back like one.
					...(arrivedDay === null
						? []
						: lines.map((line) =>
								add("Delivery", {
									id: env.newId(),
									lineId: line.id,
									day: arrivedDay,
									count: line.count,
									locationId: null,
									words: "",
									stands: "yes",
								}),
							)),
				],
				{ id, number, lineIds: lines.map((line) => line.id) },
			),
		);
	});
};

/** A refusal of the spreading, put at the field of the form that it speaks of. */
function withField(refusal: ReturnType<typeof landed> & { ok: false }, lines: readonly { readonly id: string }[]): Result<never> {
	const { code, say, facts } = refusal.error;
	const index = lines.findIndex((line) => line.id === facts?.line);
	const field =
		index >= 0
			? `lines.${index}.${code === "line-not-weighed" ? "weightGrams" : "net"}`
			: typeof facts?.pot === "string"
				? facts.pot
				: "paid";
	return refuse(code, say, { fields: { [field]: say }, ...(facts ? { facts } : {}) });
}

async function supplierOf(read: Reader, input: Buy, env: Env): Promise<Result<{ id: string; rows: RowChange[] }>> {
	if (input.supplierId !== null) {
		const known = await read.party.count({ where: { id: input.supplierId } });
		return known > 0
			? ok({ id: input.supplierId, rows: [] })
			: refuse("no-such-supplier", "That supplier is not in the book. Choose again.", { fields: { supplierId: "Choose again." } });
	}
	const id = env.newId();
	return ok({ id, rows: [add("Party", { id, kind: "supplier", name: input.supplierName, contact: null })] });
}

const MEANWHILE = {
	fields: { leadLowDays: "lead.low", leadLikelyDays: "lead.likely", leadHighDays: "lead.high" },
	together: [["leadLowDays", "leadLikelyDays", "leadHighDays"]],
};

/** Says how long a purchase is thought to take, or takes that back. */
export const changeLead = (input: ChangeLead, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const purchase = await read.purchase.findUnique({ where: { id: input.purchaseId } });
		if (!purchase) return refuse("no-such-purchase", "That purchase is not in the book. Load the page again.");
		const laid = await overMeanwhile(read, "Purchase", purchase, env.seen ?? UNSEEN, leadColumns(input.lead), MEANWHILE);
		if (!laid.ok) return laid;
		const lead = leadOf(laid.value);
		return ok(
			deed(
				null,
				"purchase.lead-said",
				{ table: "Purchase", id: purchase.id },
				{
					say: lead
						? `Purchase ${purchase.number} is thought to take ${lead.low}, ${lead.likely} or ${lead.high} days.`
						: `Nobody knows how long purchase ${purchase.number} takes.`,
				},
				[change("Purchase", purchase, laid.value)],
				null,
			),
		);
	});

async function lineWithUses(read: Reader, lineId: string) {
	return read.purchaseLine.findUnique({
		where: { id: lineId },
		include: {
			uses: { where: { kind: { not: "void" } }, orderBy: { entry: "asc" }, select: { count: true, amountMinor: true, day: true } },
			deliveries: { where: { stands: "yes" }, select: { day: true, count: true, stands: true } },
			purchase: true,
		},
	});
}

type FoundLine = NonNullable<Awaited<ReturnType<typeof lineWithUses>>>;

/** What so many of a line cost, of what has come and is left; a refusal stands at the count, or at the day. */
function costOf(line: FoundLine, { count, day }: { readonly count: number; readonly day: Day }, today: Day): Result<MinorUnits> {
	const happened = happenedBy(today, day);
	if (!happened.ok) return happened;
	const taken = line.uses.reduce((sum, use) => sum + use.count, 0);
	// Who asks for more than was bought is told what is here, not what was bought.
	const asked = Math.min(count, line.count - taken);
	const here = mayTake({ count: line.count, came: cameOf(line, line.purchase.arrivedDay, line.deliveries), taken }, asked);
	if (!here.ok) return here;
	const amount = costOfUse(
		{ landed: minor(line.landedMinor), count: line.count },
		line.uses.map((use) => ({ count: use.count, charged: minor(use.amountMinor) })),
		count,
	);
	if (!amount.ok) return refuse(amount.error.code, amount.error.say, { fields: { count: amount.error.say } });
	const then = mayTakeOn(hereSince(line, line.purchase.arrivedDay, line.deliveries, line.uses, day), count);
	return then.ok ? amount : then;
}

/** Uses so much of a line on a machine, at its share of the landed cost; the rest stays in stock. */
export const drawFromLine = (input: DrawFromLine, env: Env): Promise<Result<{ useId: string; amountMinor: number }>> =>
	takeFromLine("used", input, env);

/**
 * Sends so much of a line back: it is neither used nor in stock. It goes back for the machine that it was bought for, and
 * its cost stays there until the seller credits it (lib/credits).
 */
export const returnLine = (input: ReturnLine, env: Env): Promise<Result<{ useId: string; amountMinor: number }>> =>
	takeFromLine("returned", { ...input, partId: null }, env);

function takeFromLine(kind: "used" | "returned", input: DrawFromLine, env: Env): Promise<Result<{ useId: string; amountMinor: number }>> {
	const id = env.newId();
	return record(env, async (read) => {
		const line = await lineWithUses(read, input.lineId);
		if (!line) return NO_LINE;
		if ((await read.machine.count({ where: { id: input.machineId } })) === 0)
			return refuse("no-such-machine", "That machine is not in the book. Choose again.", { fields: { machineId: "Choose again." } });
		const today = dayOf(env.clock(), (await requireShop(read)).timeZone);
		const onDay = input.day ?? today;
		const amount = costOf(line, { count: input.count, day: onDay }, today);
		if (!amount.ok) return amount;
		const what = partOf(input.count, line);
		return ok(
			deed(
				input.machineId,
				kind === "used" ? "line.used" : "line.returned",
				{ table: "LineUse", id },
				{
					say:
						kind === "used"
							? `Used ${what}, purchase ${line.purchase.number}.${input.words ? ` ${input.words}` : ""}`
							: `Sent back ${what}, purchase ${line.purchase.number}: ${input.words}.`,
				},
				[
					add("LineUse", {
						id,
						lineId: line.id,
						machineId: input.machineId,
						partId: input.partId,
						kind,
						count: input.count,
						amountMinor: amount.value,
						day: onDay,
						words: input.words,
					}),
				],
				{ useId: id, amountMinor: amount.value },
			),
		);
	});
}

/** Takes a use back that was entered in error; it stays readable, and its count is in stock again. */
export const voidUse = (input: VoidUse, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const found = await read.lineUse.findUnique({
			where: { id: input.useId },
			include: { line: { select: { what: true, unit: true } }, credits: { where: { stands: "yes" }, select: { id: true } } },
		});
		if (!found) return NO_LINE;
		const { line, credits, ...use } = found;
		if (use.kind === "void") return refuse("use-void", "That use was taken back already.");
		if (credits.length > 0) return refuse("return-credited", "The seller has answered for it: take that credit back first, then this.");
		return ok(
			deed(
				use.machineId,
				"use.voided",
				{ table: "LineUse", id: use.id },
				{
					say: `Entered in error, so not ${use.kind === "returned" ? "sent back" : "used"}: ${counted({ ...line, count: use.count })}. ${input.why}`,
				},
				[change("LineUse", use, { kind: "void", words: input.why })],
				null,
			),
		);
	});

/** Makes a part of a line: with a tag, on the bench, knowing which purchase it came from, its cost on the machine. */
export const partFromLine = (input: PartFromLine, env: Env): Promise<Result<{ partId: string; tag: string; amountMinor: number }>> => {
	const [partId, useId] = [env.newId(), env.newId()];
	return record(env, async (read) => {
		const line = await lineWithUses(read, input.lineId);
		if (!line) return NO_LINE;
		const machine = await read.machine.findUnique({ where: { id: input.machineId }, select: { id: true, number: true } });
		if (!machine)
			return refuse("no-such-machine", "That machine is not in the book. Choose again.", { fields: { machineId: "Choose again." } });
		const at = env.clock();
		const today = dayOf(at, (await requireShop(read)).timeZone);
		const onDay = input.day ?? today;
		const amount = costOf(line, { count: input.count, day: onDay }, today);
		if (!amount.ok) return amount;
		const numbers = nextPartNumbers(machine.number, await tagsGiven(read, machine.number), 1);
		if (!numbers.ok) return numbers;
		const made = newPart({
			id: partId,
			machine,
			number: numbers.value[0] ?? 0,
			details: { ...input.details, name: input.details.name || line.what },
			place: onTheBench,
			at,
			lineId: line.id,
		});
		return ok(
			deed(
				machine.id,
				"part.from-purchase",
				{ table: "Part", id: partId },
				{ say: `${made.tag} ${input.details.name || line.what} came from purchase ${line.purchase.number}.`, tag: made.tag },
				[
					...made.rows,
					add("LineUse", {
						id: useId,
						lineId: line.id,
						machineId: machine.id,
						partId,
						kind: "used",
						count: input.count,
						amountMinor: amount.value,
						day: onDay,
						words: input.words,
					}),
				],
				{ partId, tag: made.tag, amountMinor: amount.value },
			),
		);
	});
};
