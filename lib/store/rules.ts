// Places in the shop are a tree. Pure.

import { ok, type Refusal, type Result, refuse } from "@/lib/core/result";

export type PlaceFact = { readonly id: string; readonly name: string };

/** Whether a name is free among the places that stand in the same place; two shelves of one rack never share a name. */
export function mayBeCalled(name: string, others: readonly PlaceFact[], where: string): Result<true, Refusal> {
	const same = others.find((other) => other.name.toLocaleLowerCase("en") === name.toLocaleLowerCase("en"));
	if (!same) return ok(true);
	return refuse("name-taken", `${where} has ${same.name} already. Choose another name.`, { fields: { name: "Taken here." } });
}

/** Whether `place` may stand in `target`; `around` are the places around the target, innermost first and without it. */
export function mayStandIn(place: PlaceFact, target: PlaceFact, around: readonly PlaceFact[]): Result<true, Refusal> {
	if (place.id === target.id) {
		return refuse("location-inside-itself", `${place.name} cannot stand in itself. Choose another place.`, {
			facts: { way: [place.name] },
		});
	}
	const depth = around.findIndex((outer) => outer.id === place.id);
	if (depth < 0) return ok(true);
	const way = [target.name, ...around.slice(0, depth + 1).map((outer) => outer.name)];
	return refuse(
		"location-inside-itself",
		`${place.name} would stand in itself: ${way.slice(0, -1).join(" is in ")} is in ${place.name}. Choose another place.`,
		{ facts: { way } },
	);
}
