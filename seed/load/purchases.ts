// Orders, what arrived, what became a part or was used, and costs that are neither labour nor a purchase.

import { movePart } from "@/lib/bags/changes";
import { addCapture } from "@/lib/captures/changes";
import { arrive } from "@/lib/deliveries/changes";
import { arriveSchema } from "@/lib/deliveries/schema";
import type { Env } from "@/lib/ledger/env";
import { addCost } from "@/lib/money/changes";
import { addCostSchema } from "@/lib/money/schema";
import { addPart, sayEvidence } from "@/lib/parts/changes";
import { addPartSchema, sayEvidenceSchema } from "@/lib/parts/schema";
import { buy, drawFromLine, partFromLine } from "@/lib/purchases/changes";
import { buySchema, drawFromLineSchema, partFromLineSchema } from "@/lib/purchases/schema";
import { bought, want } from "@/lib/wanted/changes";
import { boughtSchema, wantSchema } from "@/lib/wanted/schema";
import type { Machine, OtherCost, Part, Pot, Purchase, PurchaseLine, Step, Use } from "@/seed/data/types";
import { at } from "@/seed/data/write";
import { of } from "@/seed/load/book";
import { type Diary, done, later } from "@/seed/load/diary";
import { asEvidence } from "@/seed/load/intake";
import type { Books } from "@/seed/load/moves";
import { keep, lineInWords, paperText } from "@/seed/load/pictures";
import { currency } from "@/seed/load/shop";

const potOf = (pots: readonly Pot[], kind: Pot["kind"]): number => pots.find((pot) => pot.kind === kind)?.minor ?? 0;

/** Where what is not used at once is kept, by what the supplier sends. */
const STOCK: Readonly<Record<string, string>> = { lichtvat: "stock-3", snoerhal: "stock-2", plaatman: "stock-1" };

/** Orders lie in the step that orders, one after the other; later ones before noon. */
function orderedAt(machine: Machine, purchase: Purchase, place: number): string {
	const ordering = machine.steps.find(
		({ what, sessions }) => what.startsWith("order parts") && sessions.some(({ start }) => start.startsWith(purchase.ordered)),
	);
	const session = ordering?.sessions[0];
	return session === undefined ? at(purchase.ordered, "11:40") : later(session.start, 4 + 7 * place);
}

/** What was put on the list of things to be bought, as the plan had it or as it was found to be missing. */
export function wantedThings(diary: Diary, { book }: Books): void {
	for (const thing of book.data.wanted)
		diary.note(thing.at, "A", `wanted: ${thing.what}`, async (env) => {
			const input = wantSchema(currency).parse({
				machineId: book.machineId,
				words: thing.what,
				estimated: thing.minor,
				stepId: of(book.steps, thing.step),
				addedWhy: thing.addedWhy ?? "",
			});
			book.wanted.set(thing.what, done(await want(input, env)));
		});
}

export function purchases(diary: Diary, books: Books): void {
	const { book, shop } = books;
	for (const [place, purchase] of book.data.purchases.entries()) {
		diary.note(orderedAt(book.data, purchase, place), "A", `order ${purchase.id}`, async (env) => {
			const abroad = purchase.foreignPots !== undefined;
			const own = abroad ? (purchase.foreignPots ?? []) : purchase.pots;
			const input = buySchema(currency).parse({
				supplierId: of(shop.parties, purchase.supplier),
				orderedDay: purchase.ordered,
				lead: purchase.lead ?? null,
				currency: purchase.currency,
				rate: purchase.rate ?? "1",
				discount: potOf(own, "discount"),
				freight: potOf(own, "freight"),
				duty: potOf(purchase.pots, "duty"),
				handling: potOf(purchase.pots, "handling"),
				tax: potOf(purchase.pots, "tax"),
				paid: purchase.paidMinor,
				addedWhy: purchase.added === true ? "the coupling slipped on the worn shaft" : "",
				note: `Their reference: ${purchase.reference}.`,
				lines: purchase.lines.map((line) => ({
					what: line.what,
					count: line.quantity,
					unit: line.unit,
					net: line.foreignMinor ?? line.netMinor,
				})),
			});
			const { lineIds } = done(await buy(input, env));
			for (const [index, line] of purchase.lines.entries()) book.lines.set(line.id, lineIds[index] ?? "");
			book.lines.set(purchase.id, (await env.store.read.purchaseLine.findUniqueOrThrow({ where: { id: lineIds[0] ?? "" } })).purchaseId);
		});
		for (const thing of book.data.wanted.filter(({ line }) => purchase.lines.some(({ id }) => id === line)))
			diary.note(orderedAt(book.data, purchase, place), "A", `${thing.what} is bought`, async (env) => {
				const lineId = of(book.lines, thing.line ?? "");
				done(await bought(boughtSchema.parse({ wantedId: of(book.wanted, thing.what), lineId }), env));
			});
		if (purchase.received === undefined) continue;
		const came = at(purchase.received, "12:45");
		diary.note(came, "A", `order ${purchase.id} arrives`, async (env) => {
			const locationId = of(shop.locations, STOCK[purchase.supplier] ?? "stock");
			done(await arrive(arriveSchema.parse({ purchaseId: of(book.lines, purchase.id), arrivedDay: purchase.received, locationId }), env));
		});
		diary.note(came, "A", `invoice of ${purchase.id}`, async (env) => {
			const text = paperText(`Invoice ${purchase.reference}`, [
				...purchase.lines.map(lineInWords),
				`Ordered ${purchase.ordered}, received ${purchase.received}`,
			]);
			const file = await keep(env.store.folder, `${purchase.reference.replaceAll("/", "-")}.txt`, text);
			done(await addCapture({ machineId: book.machineId, kind: "paper", file, words: `Invoice ${purchase.reference}` }, env));
		});
		for (const part of book.data.newParts.filter(
			({ from, evidence }) =>
				from.some((id) => purchase.lines.some((line) => line.id === id)) && !evidence.some(({ how }) => how === "made by us"),
		))
			diary.note(came, "A", `${part.key} comes from ${purchase.id}`, (env) =>
				makePart(books, part, env, () => diary.envAt(came, env.actor)),
			);
		for (const line of purchase.lines)
			for (const use of line.uses)
				if ("position" in use.for) diary.note(came, "A", `use of ${line.id}`, (env) => draw(books, line, use, env));
	}
}

export const newPartDetails = (part: Part) => ({
	name: part.name,
	count: part.count,
	origin: part.origin,
	works: "unknown",
	condition: [part.notes ?? "", part.mark ?? ""].filter(Boolean).join(" "),
});

/** A part that was bought, made of what was bought, or made of what lay about; with how that is known. */
export async function makePart(books: Books, part: Part, env: Env, next: () => Env): Promise<void> {
	const { book, shop, pictures } = books;
	const lineKey = part.from[0];
	if (lineKey === undefined) {
		const { id, tag } = done(await addPart(addPartSchema.parse({ machineId: book.machineId, ...newPartDetails(part) }), env));
		book.parts.set(part.key, id);
		book.tags.set(part.key, tag);
	} else {
		const line = book.data.purchases.flatMap(({ lines }) => lines).find(({ id }) => id === lineKey);
		const use = line?.uses.find(({ for: goal }) => "part" in goal && goal.part === part.key);
		const input = partFromLineSchema.parse({
			lineId: of(book.lines, lineKey),
			machineId: book.machineId,
			count: use?.quantity ?? line?.quantity ?? 1,
			words: use?.words ?? `for ${part.position}`,
			details: newPartDetails(part),
		});
		const { partId, tag } = done(await partFromLine(input, env));
		book.parts.set(part.key, partId);
		book.tags.set(part.key, tag);
	}
	await sayEvidenceOf(books, part, next);
	const file = pictures.part(book.data.number, part.key);
	if (file !== null)
		done(
			await addCapture(
				{
					machineId: book.machineId,
					kind: "drawing",
					file,
					words: `${part.name}, ${part.mark ?? "new"}`,
					partId: of(book.parts, part.key),
				},
				next(),
			),
		);
	if (part.location !== undefined)
		done(
			await movePart({ partId: of(book.parts, part.key), to: { kind: "location", locationId: of(shop.locations, part.location) } }, next()),
		);
}

export async function sayEvidenceOf({ book }: Books, part: Part, next: () => Env): Promise<void> {
	for (const evidence of part.evidence)
		done(await sayEvidence(sayEvidenceSchema.parse({ ...asEvidence(evidence, ""), partId: of(book.parts, part.key) }), next()));
}

async function draw({ book }: Books, line: PurchaseLine, use: Use, env: Env): Promise<void> {
	const input = drawFromLineSchema.parse({
		lineId: of(book.lines, line.id),
		machineId: book.machineId,
		count: use.quantity,
		words: use.words,
	});
	done(await drawFromLine(input, env));
}

/** What a step used of lines beside whole parts: for an alteration of it, or to hold what it put in. */
export async function drawFor(books: Books, step: Step, next: () => Env): Promise<void> {
	const { book } = books;
	for (const line of book.data.purchases.flatMap(({ lines }) => lines))
		for (const use of line.uses) {
			const goal = use.for;
			const here =
				("alteration" in goal && book.data.alterations.some(({ id, step: where }) => id === goal.alteration && where === step.id)) ||
				("fixingOf" in goal && step.moves.some((move) => move.kind === "put-in" && move.position === goal.fixingOf));
			if (here) await draw(books, line, use, next());
		}
}

const COST_KINDS = {
	consumable: "consumable",
	"outside-work": "outside",
	disposal: "disposal",
	carriage: "carriage",
	inspection: "inspection",
	"deposit-forgone": "deposit",
} as const;

/** Carriage to the shop is said when the machine is taken in; it is not a cost a second time. */
const isCarriageHome = ({ ownership }: Machine, cost: OtherCost): boolean =>
	cost.kind === "carriage" && ownership.kind === "shop" && cost.minor === ownership.carriageMinor;

export function otherCosts(diary: Diary, { book, shop }: Books): void {
	const { data } = book;
	for (const cost of data.otherCosts.filter((each) => !isCarriageHome(data, each))) {
		const forgone = cost.shownOnly === true;
		diary.note(at(cost.day, "15:45"), "A", `cost: ${cost.what}`, async (env) => {
			const input = addCostSchema(currency).parse({
				machineId: book.machineId,
				kind: COST_KINDS[cost.kind],
				state: forgone ? "forgone" : "spent",
				words: [cost.what, cost.detail].filter(Boolean).join(", "),
				day: cost.day,
				partyId: cost.supplier === undefined ? null : of(shop.parties, cost.supplier),
				estimated: forgone ? cost.minor : 0,
				spent: forgone ? 0 : cost.minor,
			});
			done(await addCost(input, env));
		});
	}
	for (const loan of data.loans)
		if (loan.costMinor !== undefined)
			diary.note(at(loan.since, "15:45"), "A", "outside work to come", async (env) => {
				const input = addCostSchema(currency).parse({
					machineId: book.machineId,
					kind: "outside",
					state: "planned",
					words: loan.why,
					day: loan.due,
					partyId: of(shop.parties, loan.to),
					estimated: loan.costMinor,
				});
				done(await addCost(input, env));
			});
}
