import { dayOf } from "@/lib/core/days";
import { decimal } from "@/lib/core/decimals";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, change, deed, type RowChange } from "@/lib/ledger/rows";
import { isCurrency } from "@/lib/money/currency";
import { landed } from "@/lib/money/landed";
import { costOfUse } from "@/lib/money/lineUse";
import { type MinorUnits, minor } from "@/lib/money/money";
import { newPart, onTheBench } from "@/lib/parts/newPart";
import { nextPartNumbers } from "@/lib/parts/numbering";
import { tagsGiven } from "@/lib/parts/queries";
import type { Arrive, Buy, DrawFromLine, PartFromLine, ReturnLine, VoidUse } from "@/lib/purchases/schema";
import { requireShop } from "@/lib/shop/queries";

const NO_LINE = refuse("no-such-line", "That line is not in the book. Load the page again.");

/** Records a purchase, its pots spread over its lines so that they add up to what was paid. Gives its number and the lines' ids. */
export const buy = (input: Buy, env: Env): Promise<Result<{ id: string; number: number; lineIds: string[] }>> => {
	const id = env.newId();
	return record(env, async (read) => {
		const shop = await requireShop(read);
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
					say: `Bought, purchase ${number}: ${lines.map((line) => (line.count === 1 ? line.what : `${line.count} ${line.unit === "piece" ? "" : `${line.unit} `}${line.what}`)).join(", ")}.`,
					number,
				},
				[
					...party.value.rows,
					add("Purchase", {
						id,
						number,
						supplierId: party.value.id,
						orderedDay: input.orderedDay,
						arrivedDay: input.arrivedDay,
						currency: input.currency,
						rate: input.rate,
						discountMinor: input.discount,
						freightMinor: input.freight,
						dutyMinor: input.duty,
						handlingMinor: input.handling,
						taxMinor: input.tax,
						spreadBy: input.spreadBy,
						leadLowDays: null,
						leadLikelyDays: null,
						leadHighDays: null,
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

/** Says that a purchase arrived, and where what is not used at once was put. */
export const arrive = (input: Arrive, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const found = await read.purchase.findUnique({ where: { id: input.purchaseId }, include: { lines: true } });
		if (!found) return refuse("no-such-purchase", "That purchase is not in the book. Load the page again.");
		const { lines, ...purchase } = found;
		if (input.arrivedDay < purchase.orderedDay)
			return refuse("arrived-before-ordered", "It cannot have arrived before it was ordered.", {
				fields: { arrivedDay: "Before the day of the order." },
			});
		return ok(
			deed(
				null,
				"purchase.arrived",
				{ table: "Purchase", id: purchase.id },
				{ say: `Purchase ${purchase.number} arrived.` },
				[
					change("Purchase", purchase, { arrivedDay: input.arrivedDay }),
					...(input.locationId === null ? [] : lines.map((line) => change("PurchaseLine", line, { locationId: input.locationId }))),
				],
				null,
			),
		);
	});

async function lineWithUses(read: Reader, lineId: string) {
	return read.purchaseLine.findUnique({
		where: { id: lineId },
		include: {
			uses: { where: { kind: { not: "void" } }, orderBy: { entry: "asc" }, select: { count: true, amountMinor: true } },
			purchase: true,
		},
	});
}

type FoundLine = NonNullable<Awaited<ReturnType<typeof lineWithUses>>>;

const costOf = (line: FoundLine, count: number): Result<MinorUnits> =>
	costOfUse(
		{ landed: minor(line.landedMinor), count: line.count },
		line.uses.map((use) => ({ count: use.count, charged: minor(use.amountMinor) })),
		count,
	);

/** Uses so much of a line on a machine, at its share of the landed cost; the rest stays in stock. */
export const drawFromLine = (input: DrawFromLine, env: Env): Promise<Result<{ useId: string; amountMinor: number }>> =>
	takeFromLine("used", input, env);

/** Sends so much of a line back: it is neither on a machine nor in stock. The credit is what it cost. */
export const returnLine = (input: ReturnLine, env: Env): Promise<Result<{ useId: string; amountMinor: number }>> =>
	takeFromLine("returned", { ...input, partId: null }, env);

function takeFromLine(kind: "used" | "returned", input: DrawFromLine, env: Env): Promise<Result<{ useId: string; amountMinor: number }>> {
	const id = env.newId();
	return record(env, async (read) => {
		const line = await lineWithUses(read, input.lineId);
		if (!line) return NO_LINE;
		const amount = costOf(line, input.count);
		if (!amount.ok) return refuse(amount.error.code, amount.error.say, { fields: { count: amount.error.say } });
		const { timeZone } = await requireShop(read);
		const what = `${input.count} of ${line.count} ${line.what}`;
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
						day: input.day ?? dayOf(env.clock(), timeZone),
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
		const found = await read.lineUse.findUnique({ where: { id: input.useId }, include: { line: { select: { what: true } } } });
		if (!found) return NO_LINE;
		const { line, ...use } = found;
		if (use.kind === "void") return refuse("use-void", "That use was taken back already.");
		return ok(
			deed(
				use.machineId,
				"use.voided",
				{ table: "LineUse", id: use.id },
				{ say: `Entered in error, so not used: ${use.count} ${line.what}. ${input.why}` },
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
		const amount = costOf(line, input.count);
		if (!amount.ok) return refuse(amount.error.code, amount.error.say, { fields: { count: amount.error.say } });
		const numbers = nextPartNumbers(machine.number, await tagsGiven(read, machine.number), 1);
		if (!numbers.ok) return numbers;
		const { timeZone } = await requireShop(read);
		const at = env.clock();
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
						day: input.day ?? dayOf(at, timeZone),
						words: input.words,
					}),
				],
				{ partId, tag: made.tag, amountMinor: amount.value },
			),
		);
	});
};
