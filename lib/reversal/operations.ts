// Step 4: the operations, each with the ones that must come before it.

import type { Access } from "@/lib/reversal/access";
import { emptyingOrder, type Got } from "@/lib/reversal/emptying";
import type { ThreePoint } from "@/lib/reversal/problem";
import { carrierOf, firstAbove, partersOf, wholesOf } from "@/lib/reversal/whole";
import { type Build, NO_MINUTES, NONE, type PlacedAlteration, partIn, placeOfPart, type World } from "@/lib/reversal/world";

export type Kind = "make-safe" | "take-out" | "undo" | "put-in" | "check";

/** One piece of labour, by numbers. `NONE` where a field does not apply. */
export type Step = {
	readonly kind: Kind;
	readonly id: string;
	readonly position: number;
	readonly part: number;
	readonly alteration: PlacedAlteration | null;
	/** The side it is done from; `NONE` where it makes no difference. */
	readonly side: number;
	readonly minutes: ThreePoint;
};

/** Steps, and for each the numbers of the steps that must be done before it. */
export type Steps = { readonly steps: readonly Step[]; readonly after: readonly (readonly number[])[] };

/** What is opened and what is done there. */
export type Work = {
	readonly to: Build;
	readonly access: Access;
	readonly opened: readonly number[];
	readonly undos: readonly PlacedAlteration[];
};

/**
 * The operations of a reversal. Whatever order is taken that keeps what each must come after, every one of them can be
 * carried out: that is what lets several people share the work. All edges agree with one simple order: everything out, everything
 * undone, everything in; so there is always such an order. Requires an opening from `leastOpening`.
 */
export function operationsOf(world: World, work: Work): Steps {
	if (work.opened.length === 0 && work.undos.length === 0) return { steps: [], after: [] };
	const { to, access } = work;
	const { now } = world;
	const isOpened = new Set(work.opened);
	const nowWholes = wholesOf(world, now);
	const thenWholes = wholesOf(world, to);
	const out = emptyingOrder(access.out, (p) => isOpened.has(p));
	const back = emptyingOrder(access.in, (p) => isOpened.has(p));

	const steps: Step[] = [];
	const before: Set<number>[] = [];
	const add = (step: Step): number => {
		steps.push(step);
		before.push(new Set());
		return steps.length - 1;
	};
	const put = (first: number | undefined, then: number | undefined) => {
		if (first !== undefined && then !== undefined) before[then]?.add(first);
	};
	const nameOf = (p: number): string => world.positions[p]?.id ?? "";
	const sideOf = (got: Got | undefined, p: number, direction: "out" | "in"): number => access[direction][p]?.[got?.way ?? 0]?.side ?? NONE;

	const makeSafe = add({
		kind: "make-safe",
		id: "make-safe",
		position: NONE,
		part: NONE,
		alteration: null,
		side: NONE,
		minutes: NO_MINUTES,
	});
	const outStep = new Map<number, number>();
	const inStep = new Map<number, number>();
	for (const p of work.opened) {
		const base = { position: p, alteration: null };
		const [held, wanted] = [partIn(now, p), partIn(to, p)];
		if (held !== NONE) {
			const minutes = world.outMinutes[p] ?? NO_MINUTES;
			outStep.set(p, add({ ...base, kind: "take-out", id: `out:${nameOf(p)}`, part: held, side: sideOf(out.get(p), p, "out"), minutes }));
		}
		if (wanted !== NONE) {
			const minutes = world.inMinutes[p] ?? NO_MINUTES;
			inStep.set(p, add({ ...base, kind: "put-in", id: `in:${nameOf(p)}`, part: wanted, side: sideOf(back.get(p), p, "in"), minutes }));
		}
	}
	const undoSteps = work.undos.map((alteration) => {
		const p = alteration.positionAt;
		const direction = p !== NONE && partIn(now, p) === NONE && partIn(to, p) !== NONE ? "in" : "out";
		const side = p === NONE ? NONE : sideOf((direction === "in" ? back : out).get(p), p, direction);
		const { low, likely, high } = alteration.undo ?? NO_MINUTES;
		return add({
			kind: "undo",
			id: `undo:${alteration.id}`,
			position: p,
			part: alteration.partAt,
			alteration,
			side,
			minutes: { low, likely, high },
		});
	});

	const openedAbove = (wholes: typeof nowWholes, p: number): number => firstAbove(wholes, p, (q) => isOpened.has(q));
	const firstOpened = (build: Build, wholes: typeof nowWholes, part: number): number => {
		const place = placeOfPart(build, part);
		return place === NONE || isOpened.has(place) ? place : openedAbove(wholes, place);
	};

	// One thing at a time: a position is emptied, mended, filled; a part is taken out before it is put in elsewhere.
	for (const p of work.opened) {
		put(outStep.get(p), inStep.get(p));
		const wanted = partIn(to, p);
		if (wanted === NONE) continue;
		put(outStep.get(placeOfPart(now, wanted)), inStep.get(p));
	}
	// What excludes a part is away before it goes in, by itself or on its assembly: it has come out itself, or what carries it off has.
	world.excluded.forEach((others, part) => {
		const goesInAt = others.length === 0 ? NONE : firstOpened(to, thenWholes, part);
		if (goesInAt === NONE) return;
		for (const other of others) {
			const place = placeOfPart(to, other);
			if (place !== NONE && thenWholes.whole[place] === thenWholes.whole[placeOfPart(to, part)]) continue;
			const leaves = firstOpened(now, nowWholes, other);
			if (leaves !== NONE) put(outStep.get(leaves), inStep.get(goesInAt));
		}
	});
	for (const step of undoSteps) {
		const { position, part } = steps[step] ?? { position: NONE, part: NONE };
		put(outStep.get(position === NONE ? placeOfPart(now, part) : position), step);
		put(step, inStep.get(position === NONE ? placeOfPart(to, part) : position));
	}

	// An assembly is stripped before it goes in, and built up or mended only once it is out.
	const carrierNow = (p: number): number => carrierOf(world, now, p, isOpened);
	const carrierThen = (p: number): number => carrierOf(world, to, p, isOpened);
	const goesIn = (part: number): number | undefined => (part === NONE ? undefined : inStep.get(placeOfPart(to, part)));
	const comesOut = (part: number): number | undefined => (part === NONE ? undefined : outStep.get(placeOfPart(now, part)));
	for (const [p, step] of outStep) put(step, goesIn(carrierNow(p)));
	for (const [p, step] of inStep) put(comesOut(carrierThen(p)), step);
	for (const step of undoSteps) {
		const p = steps[step]?.position ?? NONE;
		if (p === NONE) continue;
		for (const carrier of [carrierNow(p), carrierThen(p)]) {
			put(comesOut(carrier), step);
			put(step, goesIn(carrier));
		}
	}

	// What stands in the way is out before, and goes in after.
	const earliest = (among: readonly number[], stepOf: ReadonlyMap<number, number>, ranks: ReadonlyMap<number, Got>): number | undefined => {
		let best: number | undefined;
		for (const q of among) {
			const rank = ranks.get(q)?.rank;
			if (!stepOf.has(q) || rank === undefined) continue;
			if (best === undefined || rank < (ranks.get(best)?.rank ?? 0)) best = q;
		}
		return best === undefined ? undefined : stepOf.get(best);
	};
	steps.forEach((step, at) => {
		const p = step.position;
		if (p === NONE || step.side === NONE) return;
		for (const part of world.obstructors[p]?.[step.side] ?? []) {
			const partersNow = partersOf(now, nowWholes, p, part)?.filter((q) => step.kind !== "take-out" || q !== p);
			if (partersNow !== undefined && !partersNow.includes(p)) put(earliest(partersNow, outStep, out), at);
			const partersThen = partersOf(to, thenWholes, p, part);
			if (partersThen !== null && !partersThen.includes(p)) put(at, earliest(partersThen, inStep, back));
			// Half-way through, the position may still be on its assembly's old place while the part is on its new one, or the other way round.
			if (step.kind === "take-out") {
				const host = openedAbove(nowWholes, p);
				const place = firstOpened(to, thenWholes, part);
				const hostOut = host === NONE ? undefined : outStep.get(host);
				if (host !== NONE && place !== NONE && !(hostOut !== undefined && before[at]?.has(hostOut))) put(at, inStep.get(place));
			} else if (step.kind === "put-in") {
				const host = openedAbove(thenWholes, p);
				const place = firstOpened(now, nowWholes, part);
				const hostIn = host === NONE ? undefined : inStep.get(host);
				if (host !== NONE && place !== NONE && !(hostIn !== undefined && before[hostIn]?.has(at))) put(outStep.get(place), at);
			}
		}
	});
	for (let at = 1; at < steps.length; at++) before[at]?.delete(at);

	for (let at = 1; at < steps.length; at++) if (before[at]?.size === 0) put(makeSafe, at);
	const check = add({ kind: "check", id: "check", position: NONE, part: NONE, alteration: null, side: NONE, minutes: NO_MINUTES });
	const followed = new Set(before.flatMap((set) => [...set]));
	for (let at = 0; at < check; at++) if (!followed.has(at)) put(at, check);
	return { steps, after: before.map((set) => [...set].sort((a, b) => a - b)) };
}
