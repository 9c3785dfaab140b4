// What the demo's own keys (k25, S17, o3-flex) became in the shop's book. Filled as the deeds are done.

import type { Machine, PartKey, PersonKey, PositionId } from "@/seed/data/types";

/** Ids that all machines share. */
export type ShopBook = {
	readonly persons: Map<PersonKey, string>;
	/** Suppliers and others, by key. */
	readonly parties: Map<string, string>;
	readonly locations: Map<string, string>;
	readonly equipment: Map<string, string>;
};

/** Ids of one machine's things, by the keys of its data. */
export type MachineBook = {
	readonly data: Machine;
	machineId: string;
	readonly positions: Map<PositionId, string>;
	readonly parts: Map<PartKey, string>;
	/** Tags of parts, as printed. */
	readonly tags: Map<PartKey, string>;
	readonly steps: Map<string, string>;
	readonly conversions: Map<string, string>;
	readonly alterations: Map<string, string>;
	readonly tests: Map<string, string>;
	/** Purchase lines. */
	readonly lines: Map<string, string>;
	/** What was to be bought, by its words. */
	readonly wanted: Map<string, string>;
	readonly bags: Map<number, string>;
	/** Wires by the position and the terminal at its part: "k25 k25-1". */
	readonly wires: Map<string, string>;
	/** Faults by position. */
	readonly faults: Map<PositionId, string>;
};

export const emptyShopBook = (): ShopBook => ({ persons: new Map(), parties: new Map(), locations: new Map(), equipment: new Map() });

export const emptyBook = (data: Machine): MachineBook => ({
	data,
	machineId: "",
	positions: new Map(),
	parts: new Map(),
	tags: new Map(),
	steps: new Map(),
	conversions: new Map(),
	alterations: new Map(),
	tests: new Map(),
	lines: new Map(),
	wanted: new Map(),
	bags: new Map(),
	wires: new Map(),
	faults: new Map(),
});

/** What a key stands for; a key that stands for nothing yet is a mistake in the data or in the order of deeds. */
export function of<Key, Value>(map: ReadonlyMap<Key, Value>, key: Key): Value {
	const value = map.get(key);
	if (value === undefined) throw new Error(`nothing is called ${String(key)} yet`);
	return value;
}
