// Which steps a doubt is about. Pure.

import type { Doubt, ShopFacts } from "@/lib/schedule/shopFacts";

/** Ids of the steps that a doubt is about: the person's, those that wait for the purchase, those of the machine whose part is outside. */
export function stepsOfDoubt({ steps, purchases }: Pick<ShopFacts, "steps" | "purchases">, doubt: Doubt): readonly string[] {
	if ("step" in doubt) return [doubt.step];
	if ("steps" in doubt) return doubt.steps;
	if ("person" in doubt) return steps.filter(({ crew }) => crew.length === 0 || crew.includes(doubt.person)).map(({ id }) => id);
	if (doubt.what === "outside") return steps.filter(({ machineId }) => machineId === doubt.machineId).map(({ id }) => id);
	const purchase = purchases.find(({ number }) => number === doubt.purchase)?.id;
	return steps.filter(({ parcels }) => parcels.some((id) => id === purchase)).map(({ id }) => id);
}
