// Reads a scheduling problem from outside: every field that is wrong is named, all at once. Pure.

import type { FieldPath, Offence } from "@/lib/core/fieldPath";
import { type FieldsRefusal, fieldsRefused, plainPath } from "@/lib/core/offences";
import { err, ok, type Result } from "@/lib/core/result";
import { type ScheduleProblem, scheduleProblemSchema } from "@/lib/schedule/problem";

/** Gives the problem, checked for shape and for sense, or names every offending field. */
export function readScheduleProblem(raw: unknown): Result<ScheduleProblem, FieldsRefusal> {
	const shape = scheduleProblemSchema.safeParse(raw);
	if (!shape.success) return err(refused(shape.error.issues.map(({ path, message }) => ({ path: plainPath(path), say: message }))));
	const offences = contradictions(shape.data);
	return offences.length === 0 ? ok(shape.data) : err(refused(offences));
}

const refused = (offences: readonly Offence[]): FieldsRefusal => fieldsRefused("schedule-unreadable", "Nothing can be scheduled", offences);

function contradictions({ resources, activities }: ScheduleProblem): Offence[] {
	const found: Offence[] = [];
	const say = (path: FieldPath, sentence: string) => {
		found.push({ path, say: sentence });
	};
	const twice = (list: "resources" | "activities", ids: readonly { readonly id: string }[]) => {
		const known = new Set<string>();
		ids.forEach(({ id }, at) => {
			if (known.has(id)) say([list, at, "id"], `the id "${id}" is used twice`);
			known.add(id);
		});
		return known;
	};
	twice("resources", resources);
	const known = twice("activities", activities);
	const capacity = new Map(resources.map(({ id, capacity }) => [id, capacity]));
	activities.forEach(({ after, uses }, at) => {
		after.forEach((need, n) => {
			if (!known.has(need)) say(["activities", at, "after", n], `there is no activity "${need}"`);
		});
		for (const [resource, amount] of uses) {
			const there = capacity.get(resource);
			if (there === undefined) say(["activities", at, "uses", resource], `there is no resource "${resource}"`);
			else if (amount > there) say(["activities", at, "uses", resource], `it needs ${amount} of "${resource}", and there is ${there}`);
		}
	});
	const loop = found.length === 0 ? loopIn(activities) : null;
	if (loop !== null) {
		const ring = [...loop, loop[0]].map((at) => activities[at ?? 0]?.id ?? "");
		const shown = ring.length > 12 ? [...ring.slice(0, 10), "...", ring.at(-1)] : ring;
		for (const at of loop) say(["activities", at, "after"], `these wait for each other: ${shown.join(" before ")}`);
	}
	return found;
}

/** The numbers of the activities of one loop, each before the next, from the first in the list; null when there is none. Without recursion: a chain may be any length. */
function loopIn(activities: ScheduleProblem["activities"]): number[] | null {
	const numberOf = new Map(activities.map(({ id }, at) => [id, at]));
	const needs = activities.map(({ after }) => after.map((id) => numberOf.get(id) ?? 0));
	const next: number[][] = activities.map(() => []);
	const left = needs.map((before) => before.length);
	needs.forEach((before, at) => {
		for (const need of before) next[need]?.push(at);
	});
	const ready = left.flatMap((count, at) => (count === 0 ? [at] : []));
	const done = new Uint8Array(activities.length);
	for (let head = 0; head < ready.length; head++) {
		const at = ready[head] ?? 0;
		done[at] = 1;
		for (const follower of next[at] ?? []) {
			left[follower] = (left[follower] ?? 0) - 1;
			if (left[follower] === 0) ready.push(follower);
		}
	}
	const start = done.indexOf(0);
	if (start < 0) return null;
	// Each that is left needs one that is left: going back along needs must come round.
	const placeOnWay = new Map<number, number>();
	const way: number[] = [];
	for (let at = start; ; at = needs[at]?.find((need) => done[need] === 0) ?? start) {
		const seen = placeOnWay.get(at);
		if (seen !== undefined) {
			const loop = way.slice(seen).reverse();
			const first = loop.indexOf(loop.reduce((least, one) => Math.min(least, one)));
			return [...loop.slice(first), ...loop.slice(0, first)];
		}
		placeOnWay.set(at, way.length);
		way.push(at);
	}
}
