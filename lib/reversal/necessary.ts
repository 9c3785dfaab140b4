// What an opening brings with it whatever is chosen.

import { type BitRows, bitRows, bitsOf, hasBit, setBit } from "@/lib/reversal/bitRows";
import type { Net, NetWays } from "@/lib/reversal/choiceNet";

/** Above this many word operations the sharpening stops early: what it has found by then still holds. */
const MOST_WORK = 60_000_000;

/**
 * For each opening, those that have to be got at before it in one direction, whatever way is chosen: common to all
 * its ways, and in each way common to all positions of some clause. Grows from nothing, and is right at any moment.
 */
function necessaryBefore(ways: readonly NetWays[]): BitRows {
	const count = ways.length;
	const before = bitRows(count, count);
	const { words, bits } = before;
	const users: number[][] = ways.map(() => []);
	ways.forEach((all, p) => {
		for (const way of all ?? []) for (const clause of way) for (const q of clause) if (users[q]?.at(-1) !== p) users[q]?.push(p);
	});
	const queued = new Uint8Array(count).fill(1);
	let queue = Array.from({ length: count }, (_, p) => p);
	let work = 0;
	const common = new Uint32Array(words);
	const ofWay = new Uint32Array(words);
	const ofClause = new Uint32Array(words);
	while (queue.length > 0 && work < MOST_WORK) {
		const next: number[] = [];
		for (const p of queue) {
			queued[p] = 0;
			let counted = 0;
			for (const way of ways[p] ?? []) {
				ofWay.fill(0);
				let dead = false;
				for (const clause of way) {
					let live = 0;
					for (const q of clause) {
						if (q === p || hasBit(before, q, p)) continue;
						const row = q * words;
						for (let w = 0; w < words; w++) {
							let word = bits[row + w] ?? 0;
							if (w === q >>> 5) word |= 1 << (q & 31);
							ofClause[w] = live === 0 ? word : (ofClause[w] ?? 0) & word;
						}
						live++;
						work += words;
					}
					if (live === 0) {
						dead = true;
						break;
					}
					for (let w = 0; w < words; w++) ofWay[w] = (ofWay[w] ?? 0) | (ofClause[w] ?? 0);
				}
				if (dead) continue;
				for (let w = 0; w < words; w++) common[w] = counted === 0 ? (ofWay[w] ?? 0) : (common[w] ?? 0) & (ofWay[w] ?? 0);
				counted++;
			}
			if (counted === 0) continue;
			let grew = false;
			for (let w = 0; w < words; w++) {
				const old = bits[p * words + w] ?? 0;
				const now = (old | (common[w] ?? 0)) >>> 0;
				if (now !== old) {
					bits[p * words + w] = now;
					grew = true;
				}
			}
			if (!grew) continue;
			for (const user of users[p] ?? []) {
				if (queued[user] === 1) continue;
				queued[user] = 1;
				next.push(user);
			}
		}
		queue = next;
	}
	return before;
}

/** Takes out of each clause what can only be got at after the one that waits for it, and each way that is left with an empty clause. */
function withoutImpossible(ways: readonly NetWays[], before: BitRows): NetWays[] {
	return ways.map((all, p) => {
		if (all === null) return null;
		const kept: number[][][] = [];
		for (const way of all) {
			const clauses = way.map((clause) => clause.filter((q) => q !== p && !hasBit(before, q, p)));
			if (clauses.every((clause) => clause.length > 0)) kept.push(clauses);
		}
		return kept;
	});
}

export type Necessary = {
	/** For each opening, itself and all that must be opened with it, in either direction. */
	readonly with: readonly (readonly number[])[];
	readonly ways: readonly [readonly NetWays[], readonly NetWays[]];
};

/** What each opening necessarily brings, and the ways without what can never serve them. */
export function necessaryWith(net: Net): Necessary {
	const count = net.labels.length;
	const [out, back] = net.directions;
	const beforeOut = necessaryBefore(out.ways);
	const beforeBack = necessaryBefore(back.ways);
	const all = bitRows(count, count);
	const { words, bits } = all;
	for (let p = 0; p < count; p++) {
		for (let w = 0; w < words; w++) bits[p * words + w] = (beforeOut.bits[p * words + w] ?? 0) | (beforeBack.bits[p * words + w] ?? 0);
		setBit(all, p, p);
	}
	for (let grew = true; grew; ) {
		grew = false;
		for (let p = 0; p < count; p++) {
			for (const q of bitsOf(all, p)) {
				if (q === p) continue;
				for (let w = 0; w < words; w++) {
					const old = bits[p * words + w] ?? 0;
					const now = (old | (bits[q * words + w] ?? 0)) >>> 0;
					if (now === old) continue;
					bits[p * words + w] = now;
					grew = true;
				}
			}
		}
	}
	return {
		with: Array.from({ length: count }, (_, p) => bitsOf(all, p)),
		ways: [withoutImpossible(out.ways, beforeOut), withoutImpossible(back.ways, beforeBack)],
	};
}
