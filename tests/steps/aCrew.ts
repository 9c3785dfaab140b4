// Three persons with rates and a machine, for tests of work.

import type { Result } from "@/lib/core/result";
import { addPerson, setRate } from "@/lib/people/changes";
import { RATES, type Who } from "@/tests/money/machine12";
import type { FreshShop } from "@/tests/support/freshShop";

export const done = <T>(result: Result<T>): T => {
	if (!result.ok) throw new Error(`${result.error.code}: ${result.error.say}`);
	return result.value;
};
export const refused = <T>(result: Result<T>) => {
	if (result.ok) throw new Error("it was not refused");
	return result.error;
};

/** A leads, B is electrically skilled, C finishes; at the rates of the acceptance scenario. */
export async function aCrew(shop: FreshShop): Promise<Readonly<Record<Who, string>>> {
	const crew: Record<Who, string> = { A: "", B: "", C: "" };
	for (const who of ["A", "B", "C"] as const) {
		const id = done(await addPerson({ name: `Person ${who}`, initials: who, skills: "" }, shop.env()));
		for (const rate of RATES[who])
			done(await setRate({ personId: id, fromDay: rate.from, cost: rate.costPerHour, charge: rate.chargePerHour }, shop.env()));
		crew[who] = id;
	}
	return crew;
}
