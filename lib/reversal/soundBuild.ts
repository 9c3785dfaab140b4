// A build that a book tells of, without what cannot have been: one part in two places, an assembly on itself. Pure.

/** One thing that the book says: this part was in this position. */
export type Said = { readonly position: string; readonly part: string };

export type SoundBuild = {
	/** Position id to part id. */
	readonly build: Map<string, string>;
	/** Positions of which the book says what cannot have been: nobody knows what they held. */
	readonly unsure: Set<string>;
};

/**
 * The build that is told, one position a part and no assembly on itself. `chosen` says which of several positions a part was
 * in. Of what would close a ring of assemblies, the one told last is left out. Requires that no position is told of twice.
 */
export function soundBuild(
	told: readonly Said[],
	hostOf: ReadonlyMap<string, string | null>,
	chosen: (part: string, positions: readonly string[]) => string,
): SoundBuild {
	const positionsOf = new Map<string, string[]>();
	for (const { position, part } of told) positionsOf.set(part, [...(positionsOf.get(part) ?? []), position]);
	const build = new Map<string, string>();
	const placeOf = new Map<string, string>();
	const unsure = new Set<string>();
	for (const { position, part } of told) {
		const all = positionsOf.get(part) ?? [];
		if ((all.length > 1 && chosen(part, all) !== position) || isOn(position, part, hostOf, placeOf)) {
			unsure.add(position);
			continue;
		}
		build.set(position, part);
		placeOf.set(part, position);
	}
	return { build, unsure };
}

/** Whether the position is on the part, or on something that is on it: then the part cannot be in it. Requires a build without rings. */
export function isOn(
	position: string,
	part: string,
	hostOf: ReadonlyMap<string, string | null>,
	placeOf: ReadonlyMap<string, string>,
): boolean {
	for (let at: string | undefined = position; at !== undefined; ) {
		const host: string | null = hostOf.get(at) ?? null;
		if (host === null) return false;
		if (host === part) return true;
		at = placeOf.get(host);
	}
	return false;
}
