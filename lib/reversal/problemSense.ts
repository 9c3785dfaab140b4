// What a problem contradicts itself in: ids that nobody defined, a part in two places, an assembly inside itself.
// Reads the raw input and skips what has the wrong shape, so that one slip does not hide the others.

import type { FieldPath, Offence } from "@/lib/core/fieldPath";

type Raw = Readonly<Record<string, unknown>>;

const isObject = (value: unknown): value is Raw => typeof value === "object" && value !== null && !Array.isArray(value);
const field = (raw: unknown, key: string): unknown => (isObject(raw) && Object.hasOwn(raw, key) ? raw[key] : undefined);
const listIn = (raw: unknown, key: string): readonly unknown[] => {
	const value = field(raw, key);
	return Array.isArray(value) ? value : [];
};
const entriesIn = (raw: unknown, key: string): [string, unknown][] => {
	const value = field(raw, key);
	return isObject(value) ? Object.entries(value) : [];
};
const textIn = (raw: unknown, key: string): string | undefined => {
	const value = field(raw, key);
	return typeof value === "string" ? value : undefined;
};

/** Every field of the raw problem that contradicts another, with the sentence that says how. */
export function contradictions(raw: unknown): Offence[] {
	const found: Offence[] = [];
	const say = (path: FieldPath, sentence: string) => {
		found.push({ path, say: sentence });
	};
	const positions = definedIds(raw, "positions", say);
	const parts = definedIds(raw, "parts", say);
	definedIds(raw, "alterations", say);

	const knownPart = (value: unknown, path: FieldPath) => {
		if (typeof value === "string" && value !== "" && !parts.has(value)) say(path, `there is no part "${value}" in parts`);
	};
	const knownPosition = (value: unknown, path: FieldPath) => {
		if (typeof value === "string" && value !== "" && !positions.has(value)) say(path, `there is no position "${value}" in positions`);
	};

	const hostOf = new Map<string, string>();
	const sidesOf = new Map<string, readonly unknown[]>();
	listIn(raw, "positions").forEach((position, at) => {
		const id = textIn(position, "id");
		const host = textIn(position, "host");
		knownPart(host, ["positions", at, "host"]);
		if (id !== undefined && host !== undefined && !hostOf.has(id)) hostOf.set(id, host);
		const sides = listIn(position, "sides");
		if (id !== undefined && !sidesOf.has(id)) sidesOf.set(id, sides);
		sides.forEach((side, n) => {
			if (sides.indexOf(side) < n) say(["positions", at, "sides", n], `the side ${JSON.stringify(side)} is named twice`);
		});
	});
	const excludes = new Map<string, Set<string>>();
	listIn(raw, "parts").forEach((part, at) => {
		const id = textIn(part, "id");
		listIn(part, "excludes").forEach((other, n) => {
			knownPart(other, ["parts", at, "excludes", n]);
			if (id === undefined || typeof other !== "string") return;
			if (other === id) say(["parts", at, "excludes", n], "a part cannot exclude itself");
			else for (const [a, b] of [[id, other] as const, [other, id] as const]) excludes.set(a, (excludes.get(a) ?? new Set()).add(b));
		});
	});

	for (const build of ["now", "target"]) {
		for (const [position, part] of entriesIn(raw, build)) {
			if (position === "" || !positions.has(position)) say([build, position], `there is no position "${position}" in positions`);
			knownPart(part, [build, position]);
		}
		partsInTwoPlaces(raw, build, say);
		hostsInsideThemselves(raw, build, hostOf, say);
	}
	excludedTogether(raw, excludes, say);

	listIn(raw, "scope").forEach((position, at) => {
		knownPosition(position, ["scope", at]);
	});
	listIn(raw, "obstructions").forEach((obstruction, at) => {
		const position = textIn(obstruction, "position");
		knownPart(textIn(obstruction, "part"), ["obstructions", at, "part"]);
		knownPosition(position, ["obstructions", at, "position"]);
		if (position === undefined || !positions.has(position)) return;
		listIn(obstruction, "sides").forEach((side, n) => {
			if (!sidesOf.get(position)?.includes(side)) {
				say(["obstructions", at, "sides", n], `position "${position}" has no side ${JSON.stringify(side)}`);
			}
		});
	});
	listIn(raw, "alterations").forEach((alteration, at) => {
		knownPosition(textIn(alteration, "position"), ["alterations", at, "position"]);
		knownPart(textIn(alteration, "part"), ["alterations", at, "part"]);
		if (!isObject(alteration)) return;
		const places = ["position", "part"].filter((key) => field(alteration, key) !== undefined);
		if (places.length === 0) say(["alterations", at, "position"], "say where it is: a position or a part");
		if (places.length === 2) say(["alterations", at, "part"], "it is at a position or on a part, not both");
	});
	for (const [position] of entriesIn(raw, "times")) {
		if (position === "" || !positions.has(position)) say(["times", position], `there is no position "${position}" in positions`);
	}
	return found;
}

type Say = (path: FieldPath, sentence: string) => void;

function definedIds(raw: unknown, list: string, say: Say): Set<string> {
	const ids = new Set<string>();
	listIn(raw, list).forEach((item, at) => {
		const id = textIn(item, "id");
		if (id === undefined) return;
		if (ids.has(id)) say([list, at, "id"], `the id "${id}" is used twice`);
		ids.add(id);
	});
	return ids;
}

function partsInTwoPlaces(raw: unknown, build: string, say: Say): void {
	const places = new Map<string, string[]>();
	for (const [position, part] of entriesIn(raw, build)) {
		if (typeof part !== "string") continue;
		const already = places.get(part);
		if (already === undefined) places.set(part, [position]);
		else already.push(position);
	}
	for (const [part, all] of places) {
		if (all.length < 2) continue;
		const sentence = `part "${part}" is in ${all.length} places: ${all.slice(0, 5).join(", ")}${all.length > 5 ? " and more" : ""}`;
		for (const position of all) say([build, position], sentence);
	}
}

/** Follows hosts upwards from each position, once per position, without recursion: a stack of assemblies may be any height. */
function hostsInsideThemselves(raw: unknown, build: string, hostOf: ReadonlyMap<string, string>, say: Say): void {
	const placeOf = new Map<string, string>();
	for (const [position, part] of entriesIn(raw, build)) if (typeof part === "string") placeOf.set(part, position);
	const above = (position: string): string | undefined => {
		const host = hostOf.get(position);
		return host === undefined ? undefined : placeOf.get(host);
	};
	const walkOf = new Map<string, string>();
	for (const start of placeOf.values()) {
		let at: string | undefined = start;
		while (at !== undefined && !walkOf.has(at)) {
			walkOf.set(at, start);
			at = above(at);
		}
		if (at === undefined || walkOf.get(at) !== start) continue;
		const loop: string[] = [];
		for (let step: string | undefined = at; step !== undefined && (step !== at || loop.length === 0); step = above(step)) loop.push(step);
		const shown = loop.length > 8 ? [...loop.slice(0, 8), "..."] : loop;
		for (const position of loop) say([build, position], `an assembly would hold itself: ${[...shown, at].join(" is on ")}`);
	}
}

function excludedTogether(raw: unknown, excludes: ReadonlyMap<string, ReadonlySet<string>>, say: Say): void {
	const placeOf = new Map<string, string>();
	for (const [position, part] of entriesIn(raw, "target")) if (typeof part === "string") placeOf.set(part, position);
	for (const [part, position] of placeOf) {
		for (const other of excludes.get(part) ?? []) {
			const place = placeOf.get(other);
			if (place !== undefined) {
				say(["target", position], `part "${part}" cannot be fitted together with part "${other}", which the target holds at "${place}"`);
			}
		}
	}
}
