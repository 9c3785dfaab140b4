import { bagFact, bagsWithin, outInBag } from "@/lib/bags/nesting";
import { laidBag, laidIn, laidInNewBag, newBag } from "@/lib/bags/placing";
import { isNotFound, lower, mayGoOutWith, mayMove, mayVoid } from "@/lib/bags/rules";
import {
	type DescribeBag,
	describeBagSchema,
	type MakeBag,
	type MoveBag,
	type MovePart,
	makeBagSchema,
	moveBagSchema,
	movePartSchema,
	type VoidBag,
	voidBagSchema,
} from "@/lib/bags/schema";
import { ok, type Result, refuse } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import type { Reader } from "@/lib/db/store";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { change, deed } from "@/lib/ledger/rows";
import type { LeavingPart } from "@/lib/parts/rules";

/** Makes a bag with its tag: the number of a ready-made tag, or the next free one from 201. */
export async function makeBag(input: MakeBag, env: Env): Promise<Result<{ bagId: string; tag: string }>> {
	const form = makeBagSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const bag = form.data;
	return record(env, async (read) => {
		const machine = bag.machineId === null ? null : await machineOf(read, bag.machineId);
		if (bag.machineId !== null && !machine) return refuse("no-machine", "That machine is not known. Choose one from the list.");
		const made = await newBag(read, bag, machine, bag.at ?? env.clock(), env.newId);
		if (!made.ok) return made;
		const { id, tag, rows, lies } = made.value;
		return ok(
			deed(
				bag.machineId,
				"bag.made",
				{ table: "Bag", id },
				{ say: `Made the ${bag.role} ${bag.kind} ${tag}, ${bag.words}, ${lies.words}.`, tag },
				rows,
				{ bagId: id, tag },
			),
		);
	});
}

/** Moves a bag, with all that is in it, into a bag, to a place in the shop, to the bench, or out of the shop; or says that it is missing. */
export async function moveBag(input: MoveBag, env: Env): Promise<Result<{ bagId: string; tag: string; words: string }>> {
	const form = moveBagSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { bagId, to, at = env.clock() } = form.data;
	return record(env, async (read) => {
		const [bag, before] = await Promise.all([bagFact(read, bagId), read.bag.findUnique({ where: { id: bagId } })]);
		if (!bag || !before) return refuse("no-bag", "That bag is not known. Scan its tag, or choose one from the list.");
		if (bag.place === "void") return refuse("bag-void", `${bag.tag} was taken out of use. Make a new bag instead.`);
		if (to.kind === "out") {
			const isMissing = isNotFound(to.why);
			// What is missing was sent nowhere, so nobody is asked for a day.
			const may = isMissing ? ok(true) : mayGoOutWith(bag, await leavingWith(read, bagId));
			if (!may.ok) return may;
			const out = { place: "out", parentId: null, locationId: null, sinceAt: at, placeWhy: to.why } as const;
			return ok(
				deed(
					bag.machineId,
					"bag.moved",
					{ table: "Bag", id: bagId },
					{ say: isMissing ? `${bag.tag} was ${lower(to.why)}.` : `${bag.tag} is not in the shop: ${to.why}.`, tag: bag.tag },
					[change("Bag", before, out)],
					{ bagId, tag: bag.tag, words: isMissing ? "not found" : "not in the shop" },
				),
			);
		}
		const laid = await laidBag(read, bag, to);
		if (!laid.ok) return laid;
		const { columns, words } = laid.value;
		return ok(
			deed(
				bag.machineId,
				"bag.moved",
				{ table: "Bag", id: bagId },
				{ say: `Laid ${bag.tag} ${words}.`, tag: bag.tag },
				[
					change("Bag", before, {
						place: columns.place,
						parentId: columns.bagId,
						locationId: columns.locationId,
						sinceAt: at,
						placeWhy: "",
					}),
				],
				{ bagId, tag: bag.tag, words },
			),
		);
	});
}

/** Lays a loose part into a bag (also a new one), at a place in the shop, or on the bench. A lost part that turns up is loose. */
export async function movePart(
	input: MovePart,
	env: Env,
): Promise<Result<{ partId: string; words: string; bagId: string | null; bagTag: string | null }>> {
	const form = movePartSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { partId, to, why, at = env.clock() } = form.data;
	return record(env, async (read) => {
		const before = await read.part.findUnique({ where: { id: partId } });
		if (!before) return refuse("no-part", "That part is not known. Scan its tag, or choose one from the list.");
		const [machine, seat, tag, outIn] = await Promise.all([
			machineOf(read, before.machineId),
			before.positionId === null ? null : read.position.findUnique({ where: { id: before.positionId }, select: { name: true } }),
			read.tag.findUnique({ where: { partId }, select: { id: true } }),
			outInBag(read, before.bagId),
		]);
		const may = mayMove({ name: before.name, place: before.place, fittedIn: seat?.name ?? null });
		if (!may.ok) return may;
		const laid =
			to.kind === "new-bag" ? await laidInNewBag(read, to.bag, machine, before.name, at, env.newId) : await laidIn(read, to, machine);
		if (!laid.ok) return laid;
		const { columns, words, bag, rows } = laid.value;
		const away = outIn === null ? null : await read.bag.findFirst({ where: { tag: { id: outIn } }, select: { placeWhy: true } });
		const isFound = before.place === "lost" || isNotFound(away?.placeWhy ?? "");
		const found = isFound ? "Found again and laid" : outIn === null ? "Laid" : `Back in the shop without ${outIn}: laid`;
		return ok(
			deed(
				before.machineId,
				"part.moved",
				{ table: "Part", id: partId },
				{ say: `${found} the ${lower(before.name)} ${words}.`, tag: tag?.id ?? null },
				[...rows, change("Part", before, { ...columns, partyId: null, dueDay: null, sinceAt: at, placeWhy: why })],
				{ partId, words, bagId: bag?.id ?? null, bagTag: bag?.tag ?? null },
			),
		);
	});
}

/** Says anew what a bag is, what is in it, what a hand must know, and whether it is emptied again or kept. */
export async function describeBag(input: DescribeBag, env: Env): Promise<Result<{ bagId: string; tag: string }>> {
	const form = describeBagSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { bagId, ...said } = form.data;
	return record(env, async (read) => {
		const [bag, before] = await Promise.all([bagFact(read, bagId), read.bag.findUnique({ where: { id: bagId } })]);
		if (!bag || !before) return refuse("no-bag", "That bag is not known. Scan its tag, or choose one from the list.");
		if (bag.place === "void") return refuse("bag-void", `${bag.tag} was taken out of use. Make a new bag instead.`);
		const changed = [
			said.role === before.role ? null : said.role === "keeping" ? "it stays with the machine for ever" : "it is emptied again",
			said.kind === before.kind ? null : `it is a ${said.kind}`,
			said.words === before.words ? null : `it holds ${said.words}`,
			said.caution === before.caution ? null : said.caution === "" ? "no caution" : `caution: ${said.caution}`,
		].filter((words) => words !== null);
		return ok(
			deed(
				bag.machineId,
				"bag.described",
				{ table: "Bag", id: bagId },
				{ say: `Said of ${bag.tag}: ${changed.length === 0 ? "the same as before" : changed.join("; ")}.`, tag: bag.tag },
				[change("Bag", before, said)],
				{ bagId, tag: bag.tag },
			),
		);
	});
}

/** Takes an empty bag out of use. Its tag is never given out again. */
export async function voidBag(input: VoidBag, env: Env): Promise<Result<{ bagId: string; tag: string }>> {
	const form = voidBagSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { bagId, why } = form.data;
	return record(env, async (read) => {
		const [bag, before] = await Promise.all([bagFact(read, bagId), read.bag.findUnique({ where: { id: bagId } })]);
		if (!bag || !before) return refuse("no-bag", "That bag is not known. Scan its tag, or choose one from the list.");
		const [parts, fixings, bags] = await Promise.all([
			read.part.count({ where: { bagId } }),
			read.fixing.count({ where: { bagId } }),
			read.bag.count({ where: { parentId: bagId } }),
		]);
		const may = mayVoid(bag, { parts, fixings, bags });
		if (!may.ok) return may;
		return ok(
			deed(
				bag.machineId,
				"bag.voided",
				{ table: "Bag", id: bagId },
				{ say: `Took ${bag.tag} out of use: ${why}.`, tag: bag.tag, why },
				[change("Bag", before, { place: "void", parentId: null, locationId: null, sinceAt: env.clock(), placeWhy: why })],
				{ bagId, tag: bag.tag },
			),
		);
	});
}

/** The parts that go where the bag goes, as the rule for leaving sees them. */
async function leavingWith(read: Reader, bagId: string): Promise<LeavingPart[]> {
	const parts = await read.part.findMany({
		where: { bagId: { in: await bagsWithin(read, bagId) } },
		orderBy: { id: "asc" },
		select: { name: true, origin: true, place: true, tag: { select: { id: true } } },
	});
	return parts.map(({ tag, ...part }) => ({ ...part, tag: tag?.id ?? "" }));
}

const machineOf = (read: Reader, id: string) => read.machine.findUnique({ where: { id }, select: { id: true, number: true } });
