// What a chosen scope drags in or leaves inconsistent, said before anything is planned. Pure.

import type { Problem } from "@/lib/reversal/problem";

export type ScopeNote = {
	/** "open": a position that is empty now and not chosen stays so. "wants": chosen as well, it would come right. "half": part of a conversion stays. "left-over": a part has nowhere to go. */
	readonly kind: "wants" | "half" | "left-over" | "open";
	/** The chosen position that it is about. Empty for a conversion. */
	readonly position: string;
	/** Positions to choose as well. */
	readonly add: readonly string[];
	readonly say: string;
};

/** A conversion that stands, as the marks of the positions that it changed. */
export type Standing = { readonly name: string; readonly positions: readonly string[] };

/**
 * Notes on the scope of a problem that `readProblem` let through, the first chosen position first. None for the whole machine.
 * `standing` are the conversions that are not to be undone whole: one of which some positions are chosen is undone in half.
 */
export function scopeSense(problem: Problem, standing: readonly Standing[]): ScopeNote[] {
	if (problem.scope === undefined) return [];
	const chosen = new Set(problem.scope);
	const names = new Map(problem.positions.map(({ id, name }) => [id, name && name !== id ? `${id} ${name}` : id]));
	const partNames = new Map(problem.parts.map(({ id, name }) => [id, name ?? id]));
	const nameOf = (position: string): string => names.get(position) ?? position;
	const partOf = (part: string): string => partNames.get(part) ?? part;
	const placeNow = new Map(Object.entries(problem.now).map(([position, part]) => [part, position]));
	const placeThen = new Map(Object.entries(problem.target).map(([position, part]) => [part, position]));
	const hosts = new Map(problem.positions.map(({ id, host }) => [id, host]));
	const excludes = excludedBy(problem);
	/** Positions that keep what they hold because they are not chosen. */
	const keeps = (position: string): boolean => !chosen.has(position);

	const notes: ScopeNote[] = [];
	for (const position of problem.scope) {
		const [holds, wants] = [problem.now[position], problem.target[position]];
		if (holds === wants) continue;
		const carrier = hosts.get(position);
		const carrierAt = carrier === undefined ? undefined : placeNow.get(carrier);
		if (carrier !== undefined && wants === undefined && placeThen.get(carrier) === undefined) {
			notes.push({
				kind: "wants",
				position,
				add: carrierAt === undefined || chosen.has(carrierAt) ? [] : [carrierAt],
				say: `${nameOf(position)} is on the ${partOf(carrier)}, which the state to go back to does not have: it goes where that goes.`,
			});
			continue;
		}
		if (wants !== undefined) {
			const at = placeNow.get(wants);
			if (at !== undefined && at !== position && keeps(at))
				notes.push({
					kind: "wants",
					position,
					add: [at],
					say: `${nameOf(position)} wants the ${partOf(wants)}, which stands in ${nameOf(at)}. That is not chosen, so ${position} would stay as it is.`,
				});
			for (const other of excludes.get(wants) ?? []) {
				const where = placeNow.get(other);
				if (where === undefined || !keeps(where) || problem.target[where] === other) continue;
				notes.push({
					kind: "wants",
					position,
					add: [where],
					say: `The ${partOf(wants)} cannot be fitted while the ${partOf(other)} is in ${nameOf(where)}. That is not chosen, so ${position} would stay as it is.`,
				});
			}
			const host = hosts.get(position);
			const hostPlace = host === undefined ? undefined : placeThen.get(host);
			if (host !== undefined && hostPlace !== undefined && keeps(hostPlace) && placeNow.get(host) !== hostPlace)
				notes.push({
					kind: "wants",
					position,
					add: [hostPlace],
					say: `${nameOf(position)} is on the ${partOf(host)}, which is not in its place ${nameOf(hostPlace)}. That is not chosen: the part goes back onto it where it lies.`,
				});
		}
		if (holds !== undefined) {
			const back = placeThen.get(holds);
			if (back !== undefined && back !== position && keeps(back))
				notes.push({
					kind: "left-over",
					position,
					add: [back],
					say: `The ${partOf(holds)} comes out of ${nameOf(position)}. Its own place ${nameOf(back)} is not chosen, so it would lie loose.`,
				});
		}
	}
	const ofConversions = new Set(standing.flatMap(({ positions }) => positions));
	for (const { id } of problem.positions) {
		const wants = problem.target[id];
		if (chosen.has(id) || wants === undefined || problem.now[id] !== undefined || ofConversions.has(id)) continue;
		const part = problem.parts.find((one) => one.id === wants);
		if (notes.some(({ add }) => add.includes(id)) || placeNow.has(wants) || part?.unavailable !== undefined || part?.danger !== undefined)
			continue;
		notes.push({
			kind: "open",
			position: id,
			add: [id],
			say: `${nameOf(id)} is empty now and is not chosen, so it stays open.`,
		});
	}
	for (const { name, positions } of standing) {
		const differing = positions.filter((position) => problem.now[position] !== problem.target[position]);
		const [inside, outside] = [differing.filter((position) => chosen.has(position)), differing.filter(keeps)];
		if (inside.length === 0 || outside.length === 0) continue;
		notes.push({
			kind: "half",
			position: "",
			add: outside,
			say: `${name} would be undone in part: ${outside.map(nameOf).join(", ")} would stay as ${outside.length === 1 ? "it is" : "they are"}.`,
		});
	}
	return notes;
}

/** Part to those that it cannot be fitted with, both ways. */
function excludedBy(problem: Problem): Map<string, Set<string>> {
	const pairs = new Map<string, Set<string>>();
	const put = (a: string, b: string) => pairs.set(a, (pairs.get(a) ?? new Set()).add(b));
	for (const { id, excludes = [] } of problem.parts)
		for (const other of excludes) {
			put(id, other);
			put(other, id);
		}
	return pairs;
}
