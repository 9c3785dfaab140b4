// The exact search: branch and bound over the choice net. It gives the true least, then, among equals, the first by id.

import { lowerBound } from "@/lib/reversal/choiceBound";
import { guessOpening } from "@/lib/reversal/choiceGuess";
import { netDirection, sizeOf } from "@/lib/reversal/choiceNet";
import { pieceNumbers, pieceOfMoment } from "@/lib/reversal/choicePieces";
import {
	dropUnreachable,
	LEFT_SHUT,
	type Moment,
	OPENED,
	openNeeded,
	type ReachedNow,
	reachedNow,
	stillHolding,
	UNDECIDED,
	waitingIn,
} from "@/lib/reversal/choiceStatus";
import { necessaryWith } from "@/lib/reversal/necessary";

/** What was opened on top of what was open already (labels, ascending) and its weight. */
export type Opening = { readonly weight: number; readonly opened: readonly number[] };

/**
 * Looks left: how often an opening, or one in a clause, may still be looked at. Counted, not timed, so that the same problem
 * always gives the same answer; and not in steps, since one step in a big net takes as long as a thousand in a small one.
 */
export type Budget = { left: number };

/** Deeper than this the search gives up, so that no input can overflow the stack. */
const MOST_DEPTH = 1500;

/** A piece is laid out anew when less than this share of it is still in play; until then its marks are enough. */
const LAY_OUT_BELOW = 0.6;

/** How far towards the first guess each leap goes. */
const LEAPS = [1 / 8, 1 / 4, 3 / 8, 1 / 2, 5 / 8, 3 / 4, 1];

/** A fresh guess at every so many decisions. */
const GUESS_EVERY = 4;

/** How often a round of settling looks at everything, besides its bound: what can be got at, what is, and which pieces there are. */
const ROUND = 4;

/** What an opening necessarily brings is worked out again when so much of the net is gone. */
const SHARPEN_BELOW = 0.75;

/** A moment after everything that follows without a choice, cut into pieces that do not touch each other. */
type Settled = { readonly weight: number; readonly opened: readonly number[]; readonly pieces: readonly Piece[] };
/** `least` bounds its weight from below, `decideOn` is the opening to decide next. */
type Piece = { readonly moment: Moment; readonly least: number; readonly decideOn: number };

/**
 * The cheapest opening from `start`, or null when there is none. Among openings of equal weight it gives the first by
 * labels (the one that has the smallest label in which two of them differ).
 * When the budget runs out, the answer is still an opening, but perhaps not the least: `budget.left` is then 0.
 */
export function cheapestOpening(start: Moment, budget: Budget): Opening | null {
	const settled = settle(start, Number.POSITIVE_INFINITY, budget);
	if (settled === null) return null;
	const opened = [...settled.opened];
	let weight = settled.weight;
	for (const piece of settled.pieces) {
		const found = leastOf(piece, budget);
		if (found === null) return null;
		const first = budget.left > 0 ? firstByLabel(piece.moment, found, budget) : found;
		weight += first.weight;
		for (const label of first.opened) opened.push(label);
	}
	return { weight, opened: opened.sort((a, b) => a - b) };
}

/**
 * The cheapest opening of a piece. A first guess is often a good deal too dear, and then hides from the search how much it could pass
 * over; so it first looks for far better ones only, which is soon done when there are none, and comes up to the guess in leaps.
 */
function leastOf(piece: Piece, budget: Budget): Opening | null {
	const guess = guessOpening(piece.moment, budget);
	if (guess === null) return null;
	for (const share of LEAPS) {
		const limit = Math.floor(piece.least + (guess.weight - 1 - piece.least) * share);
		const found = decide(piece, limit, budget, 0);
		if (found !== null) return found;
	}
	return guess;
}

/** Among all openings as cheap as `known`, the first by labels: each label in turn is opened if an opening as cheap has it. */
function firstByLabel(start: Moment, known: Opening, budget: Budget): Opening {
	const chosen: number[] = [];
	const open: { moment: Moment; known: Opening }[] = [{ moment: start, known }];
	for (let one = open.pop(); one !== undefined; one = open.pop()) {
		if (budget.left <= 0) {
			for (const label of one.known.opened) chosen.push(label);
			continue;
		}
		const settled = settle(one.moment, one.known.weight, budget);
		if (settled === null) throw new Error("the least opening is lost while ties are broken");
		for (const label of settled.opened) chosen.push(label);
		const isKnown = new Set(one.known.opened);
		for (const { moment } of settled.pieces) {
			const { net, status } = moment;
			const inPiece: number[] = [];
			let weight = 0;
			net.labels.forEach((label, q) => {
				if (status[q] !== UNDECIDED || !isKnown.has(label)) return;
				inPiece.push(label);
				weight += net.weight[q] ?? 0;
			});
			const at = status.indexOf(UNDECIDED);
			const label = net.labels[at];
			if (label === undefined) throw new Error("a piece without a choice");
			const own = net.weight[at] ?? 0;
			const opens = decided(moment, at, OPENED);
			const withIt = isKnown.has(label)
				? { weight: weight - own, opened: inPiece.filter((other) => other !== label) }
				: own > weight
					? null
					: search(opens, weight - own, budget, 0);
			if (withIt !== null) {
				chosen.push(label);
				open.push({ moment: opens, known: withIt });
			} else open.push({ moment: decided(moment, at, LEFT_SHUT), known: { weight, opened: inPiece } });
		}
	}
	return { weight: known.weight, opened: chosen.sort((a, b) => a - b) };
}

/** Null when there is no opening within the limit, or none was found before the budget ran out. */
function search(moment: Moment, limit: number, budget: Budget, depth: number): Opening | null {
	const settled = settle(moment, limit, budget);
	if (settled === null) return null;
	let weight = settled.weight;
	const opened = [...settled.opened];
	let owed = settled.pieces.reduce((sum, { least }) => sum + least, 0);
	for (const piece of [...settled.pieces].sort((a, b) => a.moment.status.length - b.moment.status.length)) {
		owed -= piece.least;
		const found = decide(piece, limit - weight - owed, budget, depth);
		if (found === null) return null;
		weight += found.weight;
		for (const label of found.opened) opened.push(label);
	}
	return weight <= limit ? { weight, opened } : null;
}

/** Opens the one to be decided, then leaves it shut; what the first finds, the second must beat. Null as in `search`. */
function decide({ moment, decideOn }: Piece, limit: number, budget: Budget, depth: number): Opening | null {
	const guess = depth % GUESS_EVERY === GUESS_EVERY - 1 ? guessOpening(moment, budget) : null;
	let best = guess !== null && guess.weight <= limit ? guess : null;
	let most = best === null ? limit : best.weight - 1;
	const paid = moment.net.weight[decideOn] ?? 0;
	if (depth >= MOST_DEPTH) budget.left = 0;
	for (const opens of [true, false]) {
		if (budget.left <= 0) return best;
		const child = decided(moment, decideOn, opens ? OPENED : LEFT_SHUT);
		const found = search(child, most - (opens ? paid : 0), budget, depth + 1);
		if (found === null) continue;
		best = opens ? { weight: found.weight + paid, opened: [...found.opened, moment.net.labels[decideOn] ?? 0] } : found;
		most = best.weight - 1;
	}
	return best;
}

function decided({ net, status, cuts }: Moment, at: number, as: number): Moment {
	const next = Uint8Array.from(status);
	next[at] = as;
	return { net, status: next, cuts };
}

/** Works out again what each opening brings, once much of the net is gone. */
function sharpened(moment: Moment): Moment {
	const { net } = moment;
	if (net.labels.length > net.sharpAt * SHARPEN_BELOW) return moment;
	const necessary = necessaryWith(net);
	return {
		...moment,
		net: {
			...net,
			directions: [netDirection(necessary.ways[0]), netDirection(necessary.ways[1])],
			bring: necessary.with,
			sharpAt: net.labels.length,
		},
	};
}

/** Follows everything that needs no choice; null when there is no opening within the limit. */
function settle(start: Moment, limit: number, budget: Budget): Settled | null {
	const { net } = start;
	const status = Uint8Array.from(start.status);
	let { cuts } = start;
	let weight = 0;
	const open = (q: number): boolean => {
		if (status[q] === UNDECIDED) {
			status[q] = OPENED;
			weight += net.weight[q] ?? 0;
		}
		return status[q] === OPENED;
	};
	const openWith = (p: number): boolean => (net.bring[p] ?? []).every(open);
	for (let p = 0; p < status.length; p++) if (start.status[p] === OPENED && !openWith(p)) return null;
	for (;;) {
		budget.left -= ROUND * sizeOf(net);
		if (!dropUnreachable(net, status) || !openNeeded(net, status, openWith)) return null;
		if (weight > limit) return null;
		const reached = reachedNow(net, status);
		const opened = (): number[] => net.labels.filter((_, q) => status[q] === OPENED && start.status[q] === UNDECIDED);
		if (waitingIn(status, reached).length === 0) return { weight, opened: opened(), pieces: [] };
		const bound = lowerBound({ net, status, cuts: stillHolding(cuts, status) }, reached, limit - weight, budget);
		if (weight + bound.least > limit) return null;
		cuts = bound.cuts;
		let changed = false;
		for (const { cut } of cuts) {
			const [only, ...others] = cut;
			if (only === undefined || others.length > 0 || status[only] === OPENED) continue;
			if (!openWith(only)) return null;
			changed = true;
		}
		if (changed) continue;
		for (let q = 0; q < status.length; q++) {
			if (status[q] !== UNDECIDED || weight + bound.least + (bound.extra[q] ?? 0) <= limit) continue;
			status[q] = LEFT_SHUT;
			changed = true;
		}
		if (changed) continue;
		return { weight, opened: opened(), pieces: piecesOf({ net, status, cuts }, reached) };
	}
}

function piecesOf(moment: Moment, reached: ReachedNow): Piece[] {
	const { net, status, cuts } = moment;
	const { pieceOf, count } = pieceNumbers(moment, reached);
	const members: number[][] = Array.from({ length: count }, () => []);
	pieceOf.forEach((piece, q) => {
		if (piece === -1) {
			// Nothing needs it any more.
			if (status[q] === UNDECIDED) status[q] = LEFT_SHUT;
		} else members[piece]?.push(q);
	});
	const least = new Float64Array(count);
	for (const { cut, cost } of cuts) {
		const piece = pieceOf[cut[0] ?? -1] ?? -1;
		if (piece === -1) continue;
		least[piece] = (least[piece] ?? 0) + cost;
	}
	// Decided next is what most cuts have in common, as leaving it shut tightens them all; then what brings most with it.
	const inCuts = new Int32Array(status.length);
	for (const { cut } of cuts) for (const q of cut) inCuts[q] = (inCuts[q] ?? 0) + 1;
	const brings = (q: number): number =>
		(net.bring[q] ?? []).reduce((sum, r) => sum + (status[r] === UNDECIDED ? (net.weight[r] ?? 0) : 0), 0);
	return members.map((own, piece) => {
		let best = -1;
		for (const q of own) {
			if (status[q] !== UNDECIDED) continue;
			const more = best === -1 ? 1 : (inCuts[q] ?? 0) - (inCuts[best] ?? 0);
			if (more > 0 || (more === 0 && brings(q) > brings(best))) best = q;
		}
		if (count === 1 && own.length >= LAY_OUT_BELOW * status.length && Number.isFinite(net.sharpAt))
			return { moment, least: least[piece] ?? 0, decideOn: best };
		const laidOut = sharpened(pieceOfMoment(moment, own, reached));
		return { moment: laidOut, least: least[piece] ?? 0, decideOn: own.indexOf(best) };
	});
}
