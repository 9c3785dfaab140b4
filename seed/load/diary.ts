// What was done in the demo shop, by whom and when, as a list of deeds that is then done in the order of time, one after
// the other, through the functions that the forms call.

import { idMaker } from "@/lib/core/ids";
import { instantOf } from "@/lib/core/instants";
import { seededBytes } from "@/lib/core/random";
import type { Result } from "@/lib/core/result";
import type { Store } from "@/lib/db/store";
import type { Env } from "@/lib/ledger/env";
import type { Instant, PersonKey } from "@/seed/data/types";

/** What goes first among deeds of the same moment: a clock stops before the next one starts, a step ends after its work. */
export type Turn = "stop" | "finish" | "after" | "plan" | "start" | "work";
const TURNS: readonly Turn[] = ["stop", "finish", "after", "plan", "start", "work"];

/** Does one thing through a door of the shop. Called with a fresh deed. */
export type Doing = (env: Env) => Promise<unknown>;

type Deed = { readonly at: number; readonly turn: number; readonly by: PersonKey; readonly what: string; readonly does: Doing };

export type Diary = {
	/** Writes down that somebody does something at a moment. What is written later and happens at the same moment and turn comes later. */
	readonly note: (at: Instant, by: PersonKey, what: string, does: Doing, turn?: Turn) => void;
	/** Does everything, in the order of time. */
	readonly carryOut: (persons: ReadonlyMap<PersonKey, string>) => Promise<void>;
	/** A fresh deed at a moment; for what comes before there are persons. */
	readonly envAt: (at: Instant, actor: string) => Env;
};

/** A demo is the same every time: ids, deeds and salts come from this seed. */
const SEED = 418;

export function openDiary(store: Store): Diary {
	const deeds: Deed[] = [];
	const bytes = seededBytes(SEED);
	let now = instantOf(0);
	const newId = idMaker(() => now, bytes);
	const salt = () => Array.from(bytes(16), (byte) => byte.toString(16).padStart(2, "0")).join("");
	const envAt = (at: Instant, actor: string): Env => {
		now = instantOf(Date.parse(at));
		const moment = now;
		return { store, clock: () => moment, actor, deed: newId(), newId, salt };
	};
	return {
		envAt,
		note: (at, by, what, does, turn = "work") => {
			deeds.push({ at: Date.parse(at), turn: TURNS.indexOf(turn), by, what, does });
		},
		carryOut: async (persons) => {
			const inOrder = deeds.map((deed, place) => ({ ...deed, place })).sort((a, b) => a.at - b.at || a.turn - b.turn || a.place - b.place);
			for (const { at, by, what, does } of inOrder) {
				const actor = persons.get(by);
				if (actor === undefined) throw new Error(`nobody is ${by}`);
				try {
					await does(envAt(instantOf(at), actor));
				} catch (error) {
					throw new Error(`${instantOf(at)}, ${what}: ${error instanceof Error ? error.message : String(error)}`, { cause: error });
				}
			}
		},
	};
}

/** What a door gave; a refusal ends the load, for the demo's data is then wrong. */
export function done<T>(result: Result<T>): T {
	if (result.ok) return result.value;
	const { code, say, fields, facts } = result.error;
	throw new Error(`${code}: ${say} ${JSON.stringify({ fields, facts })}`);
}

/** The moment so many minutes on (a fraction is rounded to seconds). */
export const later = (at: Instant, minutes: number): Instant => instantOf(Date.parse(at) + Math.round(minutes * 60) * 1000);
