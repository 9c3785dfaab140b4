import { dayOf } from "@/lib/core/days";
import { happenedBy } from "@/lib/core/happened";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import { cameOf, mayCome, mayTakeBack, type SaidToCome } from "@/lib/deliveries/rules";
import type { Arrive, Deliver, VoidDelivery } from "@/lib/deliveries/schema";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, change, type Deed, deed } from "@/lib/ledger/rows";
import { requireShop } from "@/lib/shop/queries";

const NO_PURCHASE = refuse("no-such-purchase", "That purchase is not in the book. Load the page again.");

const withDeliveries = (read: Reader, id: string) =>
	read.purchase.findUnique({ where: { id }, include: { lines: { orderBy: { number: "asc" }, include: { deliveries: true } } } });

type Found = NonNullable<Awaited<ReturnType<typeof withDeliveries>>>;

const todayOf = async (read: Reader, env: Env) => dayOf(env.clock(), (await requireShop(read)).timeZone);

const ordered = ({ arrivedDay, lines }: Found) =>
	lines.map(({ deliveries, ...line }) => ({ ...line, came: cameOf(line, arrivedDay, deliveries) }));

/** Says that some of a purchase came. With the last of it the purchase has arrived, on the latest day that any of it came. */
export const deliver = (input: Deliver, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const found = await withDeliveries(read, input.purchaseId);
		if (!found) return NO_PURCHASE;
		const happened = happenedBy(await todayOf(read, env), input.day);
		if (!happened.ok) return happened;
		return delivered(found, input, input, env);
	});

/** Says that all that was still in the post came, and where what is not used at once was put. */
export const arrive = (input: Arrive, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const found = await withDeliveries(read, input.purchaseId);
		if (!found) return NO_PURCHASE;
		const happened = happenedBy(await todayOf(read, env), input.arrivedDay, "arrivedDay");
		if (!happened.ok) return happened;
		const rest = ordered(found).map((line) => ({ lineId: line.id, count: line.count - line.came }));
		return delivered(found, { day: input.arrivedDay, lines: rest }, { locationId: input.locationId, words: "" }, env);
	});

function delivered(
	found: Found,
	said: SaidToCome,
	{ locationId, words }: { readonly locationId: string | null; readonly words: string },
	env: Env,
): Result<Deed<null>> {
	const { lines, ...purchase } = found;
	const may = mayCome(purchase, ordered(found), said);
	if (!may.ok) return may;
	const { came, whole } = may.value;
	const days = lines.flatMap(({ deliveries }) => deliveries.flatMap(({ day, stands }) => (stands === "yes" ? [day] : [])));
	const latest = [...days, said.day].sort().at(-1) ?? said.day;
	const listed = came.map(({ line, count }) => (line.count === 1 ? line.what : `${count} of ${line.count} ${line.what}`)).join(", ");
	return ok(
		deed(
			null,
			whole ? "purchase.arrived" : "purchase.came-in-part",
			{ table: "Purchase", id: purchase.id },
			{ say: `${whole ? `Purchase ${purchase.number} arrived` : `Came in part, purchase ${purchase.number}`}: ${listed}.` },
			[
				...(whole ? [change("Purchase", purchase, { arrivedDay: latest })] : []),
				...came.map(({ line, count }) =>
					add("Delivery", { id: env.newId(), lineId: line.id, day: said.day, count, locationId, words, stands: "yes" }),
				),
				...(locationId === null
					? []
					: lines
							.filter(({ id }) => came.some(({ line }) => line.id === id))
							.map(({ deliveries: _, ...line }) => change("PurchaseLine", line, { locationId }))),
			],
			null,
		),
	);
}

/** Takes a delivery back that was entered in error; the purchase has then not come whole any more. */
export const voidDelivery = (input: VoidDelivery, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const found = await read.delivery.findUnique({
			where: { id: input.deliveryId },
			include: {
				line: {
					include: { purchase: true, deliveries: true, uses: { where: { kind: { not: "void" } }, select: { count: true } } },
				},
			},
		});
		if (!found) return refuse("no-such-delivery", "That delivery is not in the book. Load the page again.");
		const { line, ...delivery } = found;
		const { purchase } = line;
		const taken = line.uses.reduce((sum, { count }) => sum + count, 0);
		const may = mayTakeBack({ what: line.what, came: cameOf(line, purchase.arrivedDay, line.deliveries), taken }, delivery);
		if (!may.ok) return may;
		return ok(
			deed(
				null,
				"delivery.voided",
				{ table: "Delivery", id: delivery.id },
				{ say: `Entered in error, so not come: ${delivery.count} of ${line.what}, purchase ${purchase.number}. ${input.why}` },
				[
					change("Delivery", delivery, { stands: "no", words: input.why }),
					...(purchase.arrivedDay === null ? [] : [change("Purchase", purchase, { arrivedDay: null })]),
				],
				null,
			),
		);
	});
