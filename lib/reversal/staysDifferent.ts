// What a reversal cannot bring back, in words: what was wanted, why not, and what would free it.

import type { Hindrance } from "@/lib/reversal/attainable";
import type { StayingAlteration } from "@/lib/reversal/workSet";
import { NONE, partIn, type World } from "@/lib/reversal/world";

export type StaysCode = Hindrance["code"] | StayingAlteration["code"];

/** One thing that stays different from the target. */
export type StaysDifferent = {
	readonly position: string;
	/** The part that the target wants there, null when it wants the position empty. */
	readonly wanted: string | null;
	/** What it holds when the reversal is done. */
	readonly holds: string | null;
	readonly code: StaysCode;
	readonly why: string;
	/** What would free it, null when nothing can. */
	readonly freedBy: string | null;
	/** The alteration that stays; the part in the position may be the right one all the same. */
	readonly alteration?: string;
	/** What stands against it, for links. */
	readonly because: { readonly parts: readonly string[]; readonly positions: readonly string[] };
};

type Names = { readonly part: (part: number) => string; readonly position: (position: number) => string };

/** How things are called on screen: by name, with the id, or by id alone. */
export const namesIn = (world: World): Names => ({
	part: (part) => called(world.parts[part]),
	position: (position) => called(world.positions[position]),
});

function called(thing: { readonly id: string; readonly name?: string | undefined } | undefined): string {
	if (thing === undefined) return "nothing";
	return thing.name === undefined ? thing.id : `${thing.name} (${thing.id})`;
}

/** The entry for a position that cannot have what the target wants. */
export function positionStays(world: World, p: number, holds: number, hindrance: Hindrance): StaysDifferent {
	const { why, freedBy } = reasonOf(world, p, hindrance);
	const wanted = partIn(world.target, p);
	return {
		position: world.positions[p]?.id ?? "",
		wanted: wanted === NONE ? null : (world.parts[wanted]?.id ?? null),
		holds: holds === NONE ? null : (world.parts[holds]?.id ?? null),
		code: hindrance.code,
		why,
		freedBy,
		because: {
			parts: "part" in hindrance ? [world.parts[hindrance.part]?.id ?? ""] : [],
			positions: "position" in hindrance ? [world.positions[hindrance.position]?.id ?? ""] : [],
		},
	};
}

function reasonOf(world: World, p: number, hindrance: Hindrance): { why: string; freedBy: string | null } {
	const name = namesIn(world);
	switch (hindrance.code) {
		case "unavailable":
			return {
				why: `${name.part(hindrance.part)} cannot be had: ${world.parts[hindrance.part]?.unavailable ?? ""}`,
				freedBy:
					world.parts[hindrance.part]?.freedBy ??
					`getting ${name.part(hindrance.part)} back, or choosing another part for ${name.position(p)}`,
			};
		case "danger":
			return {
				why: `${name.part(hindrance.part)} would put back a danger: ${world.parts[hindrance.part]?.danger ?? ""}`,
				freedBy: "giving a reason for putting the danger back",
			};
		case "stands-elsewhere":
			return {
				why: `${name.part(hindrance.part)} stands at ${name.position(hindrance.position)}, which keeps it`,
				freedBy: `taking ${name.position(hindrance.position)} back as well`,
			};
		case "excluded":
			return {
				why:
					hindrance.excludes === partIn(world.target, p)
						? `${name.part(hindrance.part)} stays at ${name.position(hindrance.position)}, and the two cannot be fitted together`
						: `${name.part(hindrance.part)} stays at ${name.position(hindrance.position)}, and cannot be fitted together with ${name.part(hindrance.excludes)}, which is on it`,
				freedBy: `taking ${name.part(hindrance.part)} out of ${name.position(hindrance.position)}`,
			};
		case "host-unavailable":
			return { why: `it is on ${name.part(hindrance.part)}, which cannot be had`, freedBy: backWords(world, hindrance.part) };
		case "host-not-in-target":
			return {
				why: `it is on ${name.part(hindrance.part)}, which the target does not hold anywhere`,
				freedBy: `a target that holds ${name.part(hindrance.part)}`,
			};
		case "would-hold-itself":
			return {
				why: `with ${name.part(hindrance.part)} where it stays, the assembly would hold itself`,
				freedBy: `taking ${name.part(hindrance.part)} back to where the target holds it`,
			};
		case "stuck":
			return { why: stuckWords(world, p), freedBy: UNSTUCK };
		case "access-loop":
			return { why: LOOP, freedBy: UNLOOP };
	}
}

const backWords = (world: World, part: number): string => world.parts[part]?.freedBy ?? `getting ${namesIn(world).part(part)} back`;
const stuckWords = (world: World, p: number): string => `nothing comes out of it or goes in: ${world.positions[p]?.stuck ?? ""}`;
const UNSTUCK = "getting it free";
const LOOP = "nothing reaches it: what would have to come out first cannot come out before it, or not at all";
const UNLOOP = "another way to get at it";

/** The entry for an alteration that stays. */
export function alterationStays(world: World, holds: number, stays: StayingAlteration): StaysDifferent {
	const name = namesIn(world);
	const wanted = partIn(world.target, stays.position);
	const what =
		stays.alteration.name === undefined ? `alteration ${stays.alteration.id}` : `${stays.alteration.name} (${stays.alteration.id})`;
	const words: Record<StayingAlteration["code"], { why: string; freedBy: string | null }> = {
		"cannot-be-undone": { why: `${what} cannot be undone`, freedBy: null },
		stuck: { why: `${what} stays: ${stuckWords(world, stays.position)}`, freedBy: UNSTUCK },
		"access-loop": { why: `${what} stays: ${LOOP}`, freedBy: UNLOOP },
		"host-unavailable": {
			why: `${what} is on ${name.part(stays.part)}, which cannot be had`,
			freedBy: backWords(world, stays.part),
		},
	};
	return {
		position: world.positions[stays.position]?.id ?? "",
		wanted: wanted === NONE ? null : (world.parts[wanted]?.id ?? null),
		holds: holds === NONE ? null : (world.parts[holds]?.id ?? null),
		code: stays.code,
		...words[stays.code],
		alteration: stays.alteration.id,
		because: { parts: stays.part === NONE ? [] : [world.parts[stays.part]?.id ?? ""], positions: [] },
	};
}
