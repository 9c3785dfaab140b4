import { ok, type Result, refuse } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import type { Reader } from "@/lib/db/store";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, change, deed } from "@/lib/ledger/rows";
import { locationPath, placesUp } from "@/lib/store/queries";
import { mayBeCalled, mayStandIn } from "@/lib/store/rules";
import { type AddLocation, addLocationSchema, type RenameLocation, renameLocationSchema } from "@/lib/store/schema";

/** Adds a room, rack, shelf or bin, last in its place unless a rank is given. */
export async function addLocation(input: AddLocation, env: Env): Promise<Result<{ locationId: string; path: string }>> {
	const form = addLocationSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { parentId, kind, name, rank } = form.data;
	return record(env, async (read) => {
		const around = parentId === null ? null : await locationPath(read, parentId);
		if (parentId !== null && around === null)
			return refuse("no-location", "The place it should stand in is not known. Choose one from the list.");
		const siblings = await placesIn(read, parentId);
		const may = mayBeCalled(name, siblings, around ?? "The shop");
		if (!may.ok) return may;
		const id = env.newId();
		const last = Math.max(-1, ...siblings.map((place) => place.rank));
		const path = around === null ? name : `${around} · ${name}`;
		return ok(
			deed(
				null,
				"location.added",
				{ table: "Location", id },
				{ say: `Added the ${kind} ${path}.` },
				[add("Location", { id, parentId, kind, name, rank: rank ?? last + 1 })],
				{ locationId: id, path },
			),
		);
	});
}

/** Names a place anew; also what it is, where it stands and its turn in the walk, where they are given. */
export async function renameLocation(input: RenameLocation, env: Env): Promise<Result<{ locationId: string; path: string }>> {
	const form = renameLocationSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { locationId, name, kind, rank, parentId } = form.data;
	return record(env, async (read) => {
		const before = await read.location.findUnique({ where: { id: locationId } });
		if (!before) return refuse("no-location", "That place is not known. Choose one from the list.");
		const inside = parentId === undefined ? before.parentId : parentId;
		const around = inside === null ? [] : await placesUp(read, inside);
		const [target, ...outer] = around;
		if (inside !== null && !target) return refuse("no-location", "The place it should stand in is not known. Choose one from the list.");
		if (target) {
			const may = mayStandIn({ id: before.id, name: before.name }, target, outer);
			if (!may.ok) return may;
		}
		const others = (await placesIn(read, inside)).filter((place) => place.id !== locationId);
		const may = mayBeCalled(name, others, target?.name ?? "The shop");
		if (!may.ok) return may;
		const was = await locationPath(read, locationId);
		const path = [...around.map((place) => place.name).reverse(), name].join(" · ");
		return ok(
			deed(
				null,
				"location.renamed",
				{ table: "Location", id: locationId },
				{ say: was === path ? `Put ${path} in its turn.` : `${was} is now ${path}.` },
				[change("Location", before, { name, kind: kind ?? before.kind, rank: rank ?? before.rank, parentId: inside })],
				{ locationId, path },
			),
		);
	});
}

const placesIn = (read: Reader, parentId: string | null) =>
	read.location.findMany({ where: { parentId }, orderBy: { rank: "asc" }, take: 1000, select: { id: true, name: true, rank: true } });
