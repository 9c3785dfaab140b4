// The exact search: branch and bound over the choice net. It gives the true least, then, among equals, the first by id.

import { commonToAllOptions, lowerBound } from "@/lib/reversal/choiceBound";
import { dropUnreachable, LEFT_SHUT, type Need, OPENED, openNeeds, reachedNow, UNDECIDED } from "@/lib/reversal/choiceNeeds";
import { type Net, type NetWays, netDirection } from "@/lib/reversal/choiceNet";
import { necessaryWith } from "@/lib/reversal/necessary";

/** What was opened on top of what was open already (labels, ascending) and its weight. */
export type Opening = { readonly weight: number; readonly opened: readonly number[] };

/** Steps of the search left. Counted, not timed, so that the same problem always gives the same answer. */
export type Budget = { left: number };

/** Deeper than this the search only follows its best guess, so that no input can overflow the stack. */
const MOST_DEPTH = 1500;

/** A net after everything that follows without a choice, cut into pieces that do not touch each other. */
type Settled = { readonly weight: number; readonly opened: readonly number[]; readonly pieces: readonly Piece[] };
type Piece = { readonly net: Net; readonly least: number };

/**
 * The cheapest opening of the net that weighs no more than `limit`, or null when there is none. Among openings of equal
 * weight it gives the first by labels (the one that has the smallest label in which two of them differ).
 * When the budget runs out, the answer is still an opening, but perhaps not the least: `budget.left` is then 0.
 */
export function cheapestOpening(net: Net, budget: Budget): Opening | null {
	const settled = settle(net, Number.POSITIVE_INFINITY, false);
	if (settled === null) return null;
	const opened = [...settled.opened];
	let weight = settled.weight;
	const pieces = settled.pieces.map(({ net: piece }) => piece);
	for (let piece = pieces.pop(); piece !== undefined; piece = pieces.pop()) {
		const found = search(piece, Number.POSITIVE_INFINITY, budget, 0);
		if (found === null) return null;
		const first = budget.left > 0 ? firstByLabel(piece, found, budget) : found;
		weight += first.weight;
		opened.push(...first.opened);
	}
	return { weight, opened: opened.sort((a, b) => a - b) };
}

/** Among all openings as cheap as `known`, the first by labels: each label in turn is opened if an opening as cheap has it. */
function firstByLabel(net: Net, known: Opening, budget: Budget): Opening {
	const chosen: number[] = [];
	const open: { net: Net; known: Opening }[] = [{ net, known }];
	for (let one = open.pop(); one !== undefined; one = open.pop()) {
		if (budget.left <= 0) {
			chosen.push(...one.known.opened);
			continue;
		}
		const settled = settle(one.net, one.known.weight, true);
		if (settled === null) throw new Error("the least opening is lost while ties are broken");
		chosen.push(...settled.opened);
		for (const piece of settled.pieces) {
			const inPiece = new Set(piece.net.labels);
			const opened = one.known.opened.filter((label) => inPiece.has(label));
			const isChosen = new Set(opened);
			const weight = piece.net.weight.reduce((sum, w, q) => sum + (isChosen.has(piece.net.labels[q] ?? 0) ? w : 0), 0);
			const at = piece.net.opened.indexOf(0);
			const label = piece.net.labels[at];
			if (label === undefined) throw new Error("a piece without a choice");
			const own = piece.net.weight[at] ?? 0;
			const withIt = opened.includes(label)
				? { weight: weight - own, opened: opened.filter((other) => other !== label) }
				: own > weight
					? null
					: search(openedToo(piece.net, at), weight - own, budget, 0);
			if (withIt !== null) {
				chosen.push(label);
				open.push({ net: openedToo(piece.net, at), known: withIt });
			} else open.push({ net: shut(piece.net, at), known: { weight, opened } });
		}
	}
	return { weight: known.weight, opened: chosen.sort((a, b) => a - b) };
}

function search(net: Net, limit: number, budget: Budget, depth: number): Opening | null {
	budget.left--;
	const settled = settle(net, limit, true);
	if (settled === null) return null;
	let weight = settled.weight;
	const opened = [...settled.opened];
	let owed = settled.pieces.reduce((sum, { least }) => sum + least, 0);
	for (const { net: piece, least } of [...settled.pieces].sort((a, b) => a.net.labels.length - b.net.labels.length)) {
		owed -= least;
		const found = branch(piece, limit - weight - owed, budget, depth);
		if (found === null) return null;
		weight += found.weight;
		opened.push(...found.opened);
	}
	return weight <= limit ? { weight, opened } : null;
}

function branch(net: Net, limit: number, budget: Budget, depth: number): Opening | null {
	let best: Opening | null = null;
	let most = limit;
	for (const { net: child, paid, label } of decisionsAt(net)) {
		const found = search(child, most - paid, budget, depth + 1);
		if (found === null) continue;
		best = { weight: found.weight + paid, opened: label === null ? found.opened : [...found.opened, label] };
		most = best.weight - 1;
		if (depth >= MOST_DEPTH) budget.left = 0;
		if (budget.left <= 0) {
			budget.left = 0;
			return best;
		}
	}
	return best;
}

type Decision = { readonly net: Net; readonly paid: number; readonly label: number | null };

/** Two nets that between them hold every answer, the more promising one first. */
function decisionsAt(net: Net): Decision[] {
	const status = Uint8Array.from(net.opened);
	const needs = openNeeds(net, status, reachedNow(net, status));
	let chosen: Need | undefined;
	let size = Number.POSITIVE_INFINITY;
	for (const need of needs) {
		const paid = need.options.every(({ free }) => !free);
		const width = need.options.reduce((sum, { clauses }) => sum + clauses.length, 0) + (paid ? 0 : 1e6);
		if (width >= size) continue;
		chosen = need;
		size = width;
	}
	if (chosen === undefined) throw new Error("a piece without a need");
	const cheapest = (clause: readonly number[]): number => Math.min(...clause.map((q) => net.weight[q] ?? 0));
	if (chosen.single !== null && chosen.options.length > 1) {
		const price = (clauses: readonly (readonly number[])[]): number => clauses.reduce((sum, clause) => sum + cheapest(clause), 0);
		const [way] = [...chosen.options].sort((a, b) => price(a.clauses) - price(b.clauses) || a.way - b.way);
		if (way === undefined) throw new Error("a need without an option");
		const waiting = chosen.single;
		const direction = chosen.direction;
		return [
			{ net: withWays(net, direction, waiting, (n) => n === way.way), paid: 0, label: null },
			{ net: withWays(net, direction, waiting, (n) => n !== way.way), paid: 0, label: null },
		];
	}
	let at = UNDECIDED - 1;
	for (const { clauses } of chosen.options) {
		for (const clause of clauses) {
			for (const q of clause) if (at < 0 || (net.weight[q] ?? 0) < (net.weight[at] ?? 0)) at = q;
		}
	}
	if (at < 0) at = status.indexOf(UNDECIDED);
	return [
		{ net: openedToo(net, at), paid: net.weight[at] ?? 0, label: net.labels[at] ?? null },
		{ net: shut(net, at), paid: 0, label: null },
	];
}

function withWays(net: Net, direction: 0 | 1, p: number, keep: (way: number) => boolean): Net {
	const change = (d: 0 | 1) => {
		const { ways } = net.directions[d];
		return d === direction
			? netDirection(ways.map((all, q) => (q === p && all !== null ? all.filter((_, n) => keep(n)) : all)))
			: net.directions[d];
	};
	return { ...net, directions: [change(0), change(1)] };
}

function openedToo(net: Net, at: number): Net {
	const opened = Uint8Array.from(net.opened);
	opened[at] = 1;
	return { ...net, opened, weight: net.weight.map((w, q) => (q === at ? 0 : w)) };
}

function shut(net: Net, at: number): Net {
	const keep = net.labels.map((_, q) => q !== at);
	return smaller(net, keep, [new Uint8Array(net.labels.length), new Uint8Array(net.labels.length)]);
}

/** The net with only some of its openings. What is `met` in a direction needs nothing there, and meets what waits for it. */
function smaller(net: Net, keep: readonly boolean[], met: readonly [Uint8Array, Uint8Array]): Net {
	const kept: number[] = [];
	const number = new Int32Array(net.labels.length).fill(-1);
	keep.forEach((yes, q) => {
		if (!yes) return;
		number[q] = kept.length;
		kept.push(q);
	});
	const cut = (d: 0 | 1) =>
		netDirection(
			kept.map((p): NetWays => {
				const all = net.directions[d].ways[p] ?? null;
				if (all === null || met[d][p] === 1) return null;
				const ways: number[][][] = [];
				for (const way of all) {
					const clauses: number[][] = [];
					let dead = false;
					for (const clause of way) {
						if (clause.some((q) => met[d][q] === 1)) continue;
						const live = clause.filter((q) => keep[q]).map((q) => number[q] ?? 0);
						if (live.length === 0) dead = true;
						clauses.push(live);
					}
					if (!dead) ways.push(clauses);
				}
				return ways;
			}),
		);
	return {
		labels: kept.map((q) => net.labels[q] ?? 0),
		weight: kept.map((q) => net.weight[q] ?? 0),
		opened: Uint8Array.from(kept, (q) => net.opened[q] ?? 0),
		directions: [cut(0), cut(1)],
	};
}

/** Follows everything that needs no choice; null when there is no opening within the limit. `sharp` looks further, for more work. */
function settle(start: Net, limit: number, sharp: boolean): Settled | null {
	let net = start;
	let bring: readonly (readonly number[])[] = net.labels.map((_, q) => [q]);
	if (sharp) {
		const necessary = necessaryWith(net);
		bring = necessary.with;
		net = { ...net, directions: [netDirection(necessary.ways[0]), netDirection(necessary.ways[1])] };
	}
	const status = Uint8Array.from(net.opened);
	let weight = 0;
	const open = (q: number) => {
		if (status[q] !== UNDECIDED) return status[q] === OPENED;
		status[q] = OPENED;
		weight += net.weight[q] ?? 0;
		return true;
	};
	for (let p = 0; p < status.length; p++) if (net.opened[p] === 1) for (const q of bring[p] ?? []) open(q);
	for (;;) {
		if (!dropUnreachable(net, status)) return null;
		const reached = reachedNow(net, status);
		const needs = openNeeds(net, status, reached);
		let forced = false;
		for (const need of needs) {
			for (const q of commonToAllOptions(need, bring, status)) {
				for (const r of bring[q] ?? []) {
					if (status[r] === OPENED) continue;
					if (!open(r)) return null;
					forced = true;
				}
			}
		}
		if (weight > limit) return null;
		if (forced) continue;
		if (needs.length === 0) return { weight, opened: labelsOpened(net, status), pieces: [] };
		const bound = lowerBound(needs, bring, net.weight, status);
		if (weight + bound.least > limit) return null;
		let fixed = false;
		for (let q = 0; q < status.length; q++) {
			if (status[q] !== UNDECIDED || weight + bound.least + (bound.extra[q] ?? 0) <= limit) continue;
			status[q] = LEFT_SHUT;
			fixed = true;
		}
		if (fixed) continue;
		return { weight, opened: labelsOpened(net, status), pieces: piecesOf(net, status, reached, needs, bound.shares) };
	}
}

const labelsOpened = (net: Net, status: Uint8Array): number[] => net.labels.filter((_, q) => status[q] === OPENED && net.opened[q] === 0);

/** Cuts what is left into pieces: two positions are in one piece when one may need the other. What nothing needs is dropped. */
function piecesOf(
	net: Net,
	status: Uint8Array,
	reached: readonly [Uint8Array, Uint8Array],
	needs: readonly Need[],
	shares: readonly number[],
): Piece[] {
	const pieceOf = new Int32Array(status.length).fill(-1);
	const stuck: number[] = [];
	for (let p = 0; p < status.length; p++) {
		if (status[p] === OPENED && (reached[0][p] === 0 || reached[1][p] === 0)) stuck.push(p);
	}
	const neighbours: number[][] = net.labels.map(() => []);
	const seen = new Uint8Array(status.length);
	const queue = [...stuck];
	for (const p of stuck) seen[p] = 1;
	for (let p = queue.pop(); p !== undefined; p = queue.pop()) {
		for (const d of [0, 1] as const) {
			if (status[p] === OPENED && reached[d][p] === 1) continue;
			for (const way of net.directions[d].ways[p] ?? []) {
				for (const clause of way) {
					if (clause.some((q) => status[q] === OPENED && reached[d][q] === 1)) continue;
					for (const q of clause) {
						if (status[q] === LEFT_SHUT) continue;
						neighbours[p]?.push(q);
						neighbours[q]?.push(p);
						if (seen[q] === 1) continue;
						seen[q] = 1;
						queue.push(q);
					}
				}
			}
		}
	}
	let count = 0;
	for (const start of stuck) {
		if (pieceOf[start] !== -1) continue;
		const walk = [start];
		pieceOf[start] = count;
		for (let p = walk.pop(); p !== undefined; p = walk.pop()) {
			for (const q of neighbours[p] ?? []) {
				if (pieceOf[q] !== -1) continue;
				pieceOf[q] = count;
				walk.push(q);
			}
		}
		count++;
	}
	const least = Array.from({ length: count }, () => 0);
	needs.forEach((need, at) => {
		const one = need.single ?? need.options[0]?.clauses[0]?.[0];
		const piece = one === undefined ? -1 : (pieceOf[one] ?? -1);
		if (piece >= 0) least[piece] = (least[piece] ?? 0) + (shares[at] ?? 0);
	});
	const met: [Uint8Array, Uint8Array] = [
		status.map((s, p) => (s === OPENED && reached[0][p] === 1 ? 1 : 0)),
		status.map((s, p) => (s === OPENED && reached[1][p] === 1 ? 1 : 0)),
	];
	return least.map((owed, piece) => {
		const keep = net.labels.map((_, q) => pieceOf[q] === piece);
		const cut = smaller(net, keep, met);
		const openedThere = Uint8Array.from(
			status.filter((_, q) => keep[q]),
			(s) => (s === OPENED ? 1 : 0),
		);
		return { net: { ...cut, opened: openedThere, weight: cut.weight.map((w, q) => (openedThere[q] === 1 ? 0 : w)) }, least: owed };
	});
}
