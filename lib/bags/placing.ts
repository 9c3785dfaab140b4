// Where a thing is laid, worked out for a deed: the columns to write, the bag made for it, and the words for the history.

import { bagFact, bagsAround } from "@/lib/bags/nesting";
import { freeBagNumber, mayWear } from "@/lib/bags/number";
import { type BagFact, mayGoInto, mayHold } from "@/lib/bags/rules";
import type { FreshBag, Place } from "@/lib/bags/schema";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import type { RowChange } from "@/lib/ledger/rows";
import { add } from "@/lib/ledger/rows";
import { locationPath } from "@/lib/store/queries";
import { readTag } from "@/lib/tags/readTag";
import { formatTag, SHOP_WIDE, usableNumber } from "@/lib/tags/tag";

/** A resolved place: `columns` are those of a part or a fixing, `words` follow "laid". */
export type Laid = {
	readonly columns: { readonly place: "bag" | "location" | "bench"; readonly bagId: string | null; readonly locationId: string | null };
	readonly words: string;
	/** The bag it lies in. */
	readonly bag: { readonly id: string; readonly tag: string } | null;
	/** Rows of a bag that was made for it; they go before the rows that name it. */
	readonly rows: readonly RowChange[];
};

type Machine = { readonly id: string; readonly number: number } | null;

/** Resolves a bag, a location or the bench for something of `machine` (null: of the shop); refuses a bag that may not hold it. */
export async function laidIn(read: Reader, to: Place, machine: Machine): Promise<Result<Laid>> {
	if (to.kind === "bench") {
		return ok({ columns: { place: "bench", bagId: null, locationId: null }, words: "on the bench", bag: null, rows: [] });
	}
	if (to.kind === "location") {
		const path = await locationPath(read, to.locationId);
		if (!path) return refuse("no-location", "That place in the shop is not known. Choose one from the list.");
		return ok({ columns: { place: "location", bagId: null, locationId: to.locationId }, words: `on ${path}`, bag: null, rows: [] });
	}
	const bag = await bagFact(read, to.bagId);
	if (!bag) return refuse("no-bag", "That bag is not known. Scan its tag, or choose one from the list.");
	const may = mayHold(bag, machine?.id ?? null);
	if (!may.ok) return may;
	return ok({
		columns: { place: "bag", bagId: bag.id, locationId: null },
		words: `in ${bag.tag}`,
		bag: { id: bag.id, tag: bag.tag },
		rows: [],
	});
}

/** Rows of a new bag with its tag, and what goes into it laid in it. */
export async function laidInNewBag(
	read: Reader,
	bag: FreshBag,
	machine: Machine,
	words: string,
	at: string,
	newId: () => string,
): Promise<Result<Laid>> {
	const made = await newBag(read, { ...bag, words: bag.words || words }, machine, at, newId);
	if (!made.ok) return made;
	const { id, tag, rows } = made.value;
	return ok({ columns: { place: "bag", bagId: id, locationId: null }, words: `in ${tag}`, bag: { id, tag }, rows });
}

/** The rows of one new bag and its tag. The number is the one of its ready-made tag, or the next free. */
export async function newBag(
	read: Reader,
	bag: FreshBag,
	machine: Machine,
	at: string,
	newId: () => string,
): Promise<Result<{ id: string; tag: string; rows: RowChange[]; lies: Laid }>> {
	const lies = await laidIn(read, bag.lies, machine);
	if (!lies.ok) return lies;
	const numbered = await numberFor(read, bag.tag ?? null, machine?.number ?? SHOP_WIDE);
	if (!numbered.ok) return numbered;
	const { machineNumber, number } = numbered.value;
	const id = newId();
	const tag = formatTag(machineNumber, number);
	const { place, bagId, locationId } = lies.value.columns;
	return ok({
		id,
		tag,
		lies: lies.value,
		rows: [
			add("Bag", {
				id,
				machineId: machine?.id ?? null,
				kind: bag.kind,
				role: bag.role,
				words: bag.words,
				caution: bag.caution,
				place,
				parentId: bagId,
				locationId,
				sinceAt: at,
				placeWhy: "",
			}),
			add("Tag", { id: tag, machineNumber, number, partId: null, bagId: id }),
		],
	});
}

/** Resolves where a bag goes; refuses a bag inside itself, naming the way. */
export async function laidBag(read: Reader, bag: BagFact, to: Place): Promise<Result<Laid>> {
	if (to.kind === "bag") {
		const target = await bagFact(read, to.bagId);
		if (target) {
			const may = mayGoInto(bag, target, await bagsAround(read, target.id));
			if (!may.ok) return may;
		}
	}
	return laidIn(read, to, bag.machineId === null ? null : { id: bag.machineId, number: bag.machineNumber ?? SHOP_WIDE });
}

async function numberFor(
	read: Reader,
	wanted: string | null,
	machineNumber: number,
): Promise<Result<{ machineNumber: number; number: number }>> {
	if (wanted !== null) {
		const tag = readTag(wanted);
		if (!tag.ok) return tag;
		const may = mayWear(tag.value.machine, machineNumber, tag.value.tag);
		if (!may.ok) return may;
		const where = { where: { id: tag.value.tag }, select: { id: true } };
		const [used, ofPlace] = await Promise.all([read.tag.findUnique(where), read.placeTag.findUnique(where)]);
		if (ofPlace) {
			return refuse("tag-taken", `${tag.value.tag} is on a place in the shop. Use another tag.`, {
				fields: { tag: "On a place in the shop." },
				facts: { tag: tag.value.tag },
			});
		}
		if (used) {
			return refuse("tag-taken", `${tag.value.tag} is on another part or bag. Open it to see which, or use another tag.`, {
				fields: { tag: "On another part or bag." },
				facts: { tag: tag.value.tag },
			});
		}
		return ok({ machineNumber: tag.value.machine, number: tag.value.number });
	}
	const number = freeBagNumber(machineNumber, await numbersTaken(read, machineNumber));
	return number.ok ? ok({ machineNumber, number: number.value }) : number;
}

/** Numbers of a machine that a tag has or a printed label bears; a machine has at most 9,999. */
export async function numbersTaken(read: Reader, machineNumber: number): Promise<Set<number>> {
	const tags = await read.tag.findMany({ where: { machineNumber }, select: { number: true } });
	const taken = new Set(tags.map((tag) => tag.number));
	// The places of the shop have numbers among the shop's own.
	if (machineNumber === SHOP_WIDE) {
		for (const { number } of await read.placeTag.findMany({ select: { number: true } })) taken.add(number);
	}
	const printed = await read.labelPrint.findMany({
		// A range and not a prefix search, which SQLite would answer by reading every print there ever was; "." follows "-".
		where: { tag: { gte: `${machineNumber}-`, lt: `${machineNumber}.` } },
		distinct: ["tag"],
		select: { tag: true },
	});
	for (const { tag } of printed) {
		const number = Number(tag.split("-")[1]);
		if (usableNumber(machineNumber, number)) taken.add(number);
	}
	return taken;
}
