// Small worlds with everything in them that can go wrong: sides, hosts, exclusions, lost parts, alterations, loops.

import fc from "fast-check";
import {
	type Alteration,
	type Obstruction,
	type Part,
	type Position,
	PROBLEM_FORMAT,
	type Problem,
	type Times,
} from "@/lib/reversal/problem";
import { readProblem } from "@/lib/reversal/readProblem";

const SIDES = ["front", "rear", "top"];

/** What a position is made of: few small numbers, so that a failing world shrinks to a small one. */
const gene = fc.record({
	host: fc.nat(11),
	sides: fc.integer({ min: 1, max: 3 }),
	now: fc.nat(9),
	target: fc.nat(9),
	swap: fc.nat(9),
	out: fc.nat(6),
	back: fc.nat(6),
	lost: fc.nat(11),
});
const block = fc.record({ part: fc.nat(19), position: fc.nat(9), sides: fc.nat(7) });
const change = fc.record({ on: fc.nat(19), undo: fc.nat(4) });
const pair = fc.record({ a: fc.nat(19), b: fc.nat(19) });

function withTurns(build: Readonly<Record<string, string>>, turns: readonly (readonly [string, string])[]): Record<string, string> {
	const turned = new Map(Object.entries(build));
	for (const [a, b] of turns) {
		const [atA, atB] = [turned.get(a), turned.get(b)];
		if (a === b || atA === undefined || atB === undefined) continue;
		turned.set(a, atB).set(b, atA);
	}
	return Object.fromEntries(turned);
}

/** Worlds of up to `most` positions, with up to `pairsAtMost` exclusions. Those that contradict themselves are passed over. */
export const aSmallWorld = (most = 8, pairsAtMost = 2): fc.Arbitrary<Problem> =>
	fc
		.record({
			genes: fc.array(gene, { minLength: 1, maxLength: most }),
			blocks: fc.array(block, { maxLength: most * 3 }),
			changes: fc.array(change, { maxLength: 3 }),
			pairs: fc.array(pair, { maxLength: pairsAtMost }),
			/** Positions whose parts change places in the target. */
			turns: fc.array(pair, { maxLength: 2 }),
			scope: fc.option(fc.array(fc.nat(9), { maxLength: most }), { nil: undefined, freq: 4 }),
		})
		.map(({ genes, blocks, changes, pairs, turns, scope }): Problem => {
			const count = genes.length;
			const old = (n: number): string => `old${n % count}`;
			const fresh = (n: number): string => `new${n % count}`;
			const either = (n: number): string => (n % 2 === 0 ? old(n >> 1) : fresh(n >> 1));
			const at = (n: number): string => `p${n % count}`;
			const positions = genes.map(
				({ host, sides }, n): Position => ({
					id: at(n),
					// Two in three are on the machine; the others on a part of another position.
					...(host < 4 && count > 1 ? { host: host % 2 === 0 ? old(n + 1 + host) : fresh(n + 1 + host) } : {}),
					...(sides === 1 ? {} : { sides: SIDES.slice(0, sides) }),
				}),
			);
			const build = (pick: (one: (typeof genes)[number], n: number) => string | null): Record<string, string> => {
				const used = new Set<string>();
				return Object.fromEntries(
					genes.flatMap((one, n) => {
						const part = pick(one, n);
						if (part === null || used.has(part)) return [];
						used.add(part);
						return [[at(n), part]];
					}),
				);
			};
			const excludes = new Map<string, string[]>();
			for (const { a, b } of pairs) excludes.set(either(a), [...(excludes.get(either(a)) ?? []), either(b)]);
			return {
				format: PROBLEM_FORMAT,
				positions,
				parts: genes.flatMap(({ lost }, n): Part[] =>
					[old(n), fresh(n)].map((id, which) => ({
						id,
						...(lost === which ? { unavailable: "lost" } : {}),
						...(excludes.has(id) ? { excludes: [...new Set(excludes.get(id))].filter((other) => other !== id) } : {}),
					})),
				),
				now: build(({ now, swap }, n) => (now < 4 ? old(n) : now < 7 ? fresh(n) : now === 7 ? old(n + swap) : null)),
				target: withTurns(
					build(({ target, swap }, n) => (target < 7 ? old(n) : target === 7 ? old(n + swap + 1) : target === 8 ? fresh(n) : null)),
					turns.map(({ a, b }) => [at(a), at(b)]),
				),
				...(scope === undefined ? {} : { scope: scope.map(at) }),
				obstructions: blocks.map(({ part, position, sides }): Obstruction => {
					const own = SIDES.slice(0, genes[position % count]?.sides ?? 1);
					const named = own.length === 1 ? [] : own.filter((_, n) => ((sides >> n) & 1) === 1);
					return { part: either(part), position: at(position), ...(named.length === 0 ? {} : { sides: named }) };
				}),
				alterations: changes.map(
					({ on, undo }, n): Alteration => ({
						id: `a${n}`,
						...(on % 2 === 0 ? { position: at(on >> 1) } : { part: either(on) }),
						undo: undo === 0 ? null : { low: undo, likely: undo, high: undo * 2 },
					}),
				),
				// Nobody has timed everything: a 6 is left out.
				times: Object.fromEntries(
					genes.map(({ out, back }, n): [string, Times] => [
						at(n),
						{
							...(out === 6 ? {} : { out: { low: out, likely: out, high: out } }),
							...(back === 6 ? {} : { in: { low: back, likely: back, high: back } }),
						},
					]),
				),
			};
		})
		.filter((problem) => readProblem(problem).ok);

const plainGene = fc.record({
	host: fc.nat(8),
	sides: fc.integer({ min: 1, max: 3 }),
	changed: fc.nat(5),
	out: fc.nat(6),
	back: fc.nat(3),
});

/** Worlds where little is changed, nothing is lost, and there is more than one way to get at most positions: the choice is what is hard. */
export const aWorldOfChoices = (most = 10): fc.Arbitrary<Problem> =>
	fc
		.record({
			genes: fc.array(plainGene, { minLength: 4, maxLength: most }),
			blocks: fc.array(block, { minLength: most, maxLength: most * 3 }),
		})
		.map(({ genes, blocks }): Problem => {
			const count = genes.length;
			const at = (n: number): string => `p${n % count}`;
			const old = (n: number): string => `old${n % count}`;
			const fresh = (n: number): string => `new${n % count}`;
			return {
				format: PROBLEM_FORMAT,
				positions: genes.map(
					({ host, sides }, n): Position => ({
						id: at(n),
						...(host < 3 && n > 0 ? { host: old((host * 5) % n) } : {}),
						...(sides === 1 ? {} : { sides: SIDES.slice(0, sides) }),
					}),
				),
				parts: genes.flatMap((_, n) => [{ id: old(n) }, { id: fresh(n) }]),
				now: Object.fromEntries(genes.flatMap(({ changed }, n) => (changed === 5 && n > 0 ? [] : [[at(n), old(n)]]))),
				target: Object.fromEntries(genes.map((_, n) => [at(n), old(n)])),
				obstructions: blocks.flatMap(({ part, position, sides }): Obstruction[] => {
					const own = SIDES.slice(0, genes[position % count]?.sides ?? 1);
					const named = own.length === 1 ? [] : own.filter((_, n) => ((sides >> n) & 1) === 1).slice(0, 2);
					if (part % count === position % count) return [];
					return [{ part: old(part), position: at(position), ...(named.length === 0 ? {} : { sides: named }) }];
				}),
				alterations: genes.flatMap(({ changed }, n) =>
					changed === 4 ? [{ id: `a${n}`, position: at(n), undo: { low: 1, likely: 2, high: 3 } }] : [],
				),
				times: Object.fromEntries(
					genes.map(({ out, back }, n): [string, Times] => [
						at(n),
						{ out: { low: out, likely: out, high: out }, in: { low: back, likely: back, high: back } },
					]),
				),
			};
		})
		.filter((problem) => readProblem(problem).ok);
