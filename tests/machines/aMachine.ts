// A machine for tests, with defaults, so that a test shows only what it is about.

import { day } from "@/lib/core/days";
import type { Result } from "@/lib/core/result";
import { takeInMachine } from "@/lib/machines/changes";
import type { TakeInMachine } from "@/lib/machines/schema";
import type { PartDetails } from "@/lib/parts/schema";
import { addPositions } from "@/lib/positions/changes";
import type { NewPosition } from "@/lib/positions/schema";
import type { FreshShop } from "@/tests/support/freshShop";

/** The value, or a failed test that says why. */
export function got<T>(result: Result<T>): T {
	if (!result.ok) throw new Error(`${result.error.code}: ${result.error.say}`);
	return result.value;
}

/** The refusal's code, or a failed test. */
export function refused(result: Result<unknown>): string {
	if (result.ok) throw new Error(`expected a refusal, got ${JSON.stringify(result.value)}`);
	return result.error.code;
}

export const machineWords = (more: Partial<TakeInMachine> = {}): TakeInMachine => ({
	number: null,
	name: "SKERRY LIGHT",
	kind: "Harbour novelty",
	maker: "",
	model: "",
	serial: "0418",
	made: null,
	ownership: "shop",
	sellerId: null,
	sellerName: "",
	ownerId: null,
	ownerName: "",
	price: null,
	carriage: null,
	carried: "",
	condition: "",
	hazards: "",
	receivedDay: day("2026-03-02"),
	...more,
});

export const partWords = (more: Partial<PartDetails> = {}): PartDetails => ({
	name: "",
	count: 1,
	maker: "",
	type: "",
	material: "",
	made: null,
	origin: "original",
	works: "unknown",
	condition: "",
	...more,
});

export const aPosition = (name: string, more: Partial<NewPosition> = {}): NewPosition => ({
	mark: null,
	name,
	area: null,
	hostMark: null,
	hostPartId: null,
	kind: "seat",
	sides: [],
	out: null,
	in: null,
	note: "",
	finding: "there",
	foundWords: "",
	part: more.finding === "missing" || more.finding === "unseen" || more.kind === "place" ? null : partWords(),
	wayRound: "",
	evidence: [],
	...more,
});

/** A machine with positions, by mark: their ids, and the parts in them. */
export async function aMachine(shop: FreshShop, positions: readonly NewPosition[] = [], more: Partial<TakeInMachine> = {}) {
	const machine = got(await takeInMachine(machineWords(more), shop.env()));
	const added =
		positions.length === 0
			? []
			: got(await addPositions({ machineId: machine.id, wasThere: false, positions: [...positions] }, shop.env())).positions;
	return {
		...machine,
		position: (mark: string) => {
			const found = added.find((position) => position.mark === mark);
			if (!found) throw new Error(`no position ${mark}`);
			return found.id;
		},
		part: (mark: string) => {
			const found = added.find((position) => position.mark === mark)?.partId;
			if (!found) throw new Error(`no part in ${mark}`);
			return found;
		},
	};
}
