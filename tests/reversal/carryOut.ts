// A simulator of the bench: carries out a plan one operation at a time and refuses what hands could not do.
// Written apart from the planner, from the definition of reach alone. Shares no code with it.

import type { Operation } from "@/lib/reversal/plan";
import type { Problem } from "@/lib/reversal/problem";

/** A machine that can be worked on. */
export class Bench {
	/** Position to part. */
	readonly build: Map<string, string>;
	readonly undone = new Set<string>();
	readonly done = new Set<string>();
	private isolated = false;
	private readonly hosts: Map<string, string>;

	constructor(private readonly problem: Problem) {
		this.build = new Map(Object.entries(problem.now));
		this.hosts = new Map(problem.positions.flatMap(({ id, host }) => (host === undefined ? [] : [[id, host]])));
	}

	placeOf(part: string): string | null {
		for (const [position, held] of this.build) if (held === part) return position;
		return null;
	}

	/** The machine (null) or the loose part that a position belongs to just now. */
	wholeOf(position: string): string | null {
		let at = position;
		for (let height = 0; height <= this.problem.positions.length; height++) {
			const host = this.hosts.get(at);
			if (host === undefined) return null;
			const place = this.placeOf(host);
			if (place === null) return host;
			at = place;
		}
		throw new Error(`${position} is on an assembly that holds itself`);
	}

	isWithinReach(position: string): boolean {
		const sides = this.problem.positions.find(({ id }) => id === position)?.sides ?? [null];
		const whole = this.wholeOf(position);
		return sides.some((side) =>
			this.problem.obstructions.every((one) => {
				if (one.position !== position) return true;
				if (side !== null && one.sides !== undefined && !one.sides.includes(side)) return true;
				const place = this.placeOf(one.part);
				return place === null || place === position || this.wholeOf(place) !== whole;
			}),
		);
	}

	/** Does one operation, or says why it cannot be done. */
	carryOut(operation: Operation): string | null {
		for (const before of operation.after) if (!this.done.has(before)) return `${operation.id} comes before ${before}`;
		if (operation.kind !== "make-safe" && !this.isolated) return `${operation.id} is done on a live machine`;
		const refusal = this.deed(operation);
		if (refusal === null) this.done.add(operation.id);
		return refusal;
	}

	private deed({ id, kind, position, part, alteration }: Operation): string | null {
		switch (kind) {
			case "make-safe":
				this.isolated = true;
				return null;
			case "check":
				return null;
			case "take-out":
				if (position === undefined || this.build.get(position) !== part) return `${id}: ${part} is not there`;
				if (!this.isWithinReach(position)) return `${id}: out of reach`;
				this.build.delete(position);
				return null;
			case "put-in": {
				if (position === undefined || part === undefined) return `${id}: of what?`;
				if (this.build.has(position)) return `${id}: the position is taken`;
				if (this.placeOf(part) !== null) return `${id}: ${part} is still fitted`;
				if (!this.isWithinReach(position)) return `${id}: out of reach`;
				const wasThere = Object.hasOwn(this.problem.now, position) && this.problem.now[position] === part;
				const arriving = [part, ...[...this.build].filter(([at]) => this.wholeOf(at) === part).map(([, rider]) => rider)];
				for (const other of this.problem.parts) {
					const excludes = arriving.some((one) => other.excludes?.includes(one) === true || this.excludedBy(one).includes(other.id));
					const place = this.placeOf(other.id);
					// Fitted together: both in the machine, or both on the one loose assembly. What lies on the bench stands in nobody's place.
					const together = place !== null && this.wholeOf(place) === this.wholeOf(position);
					if (excludes && together && !wasThere) return `${id}: cannot be fitted together with ${other.id}`;
					const fittedBefore = Object.values(this.problem.now).includes(part);
					if (other.id === part && other.unavailable !== undefined && !fittedBefore) return `${id}: ${part} cannot be had`;
				}
				if (this.wholeOf(position) === part) return `${id}: an assembly would hold itself`;
				this.build.set(position, part);
				return null;
			}
			case "undo": {
				const what = this.problem.alterations?.find((one) => one.id === alteration);
				if (what === undefined || what.undo === null) return `${id}: cannot be undone`;
				if (what.part !== undefined && this.placeOf(what.part) !== null) return `${id}: ${what.part} is not on the bench`;
				if (what.position !== undefined && this.build.has(what.position)) return `${id}: the position is not empty`;
				if (what.position !== undefined && !this.isWithinReach(what.position)) return `${id}: out of reach`;
				this.undone.add(what.id);
				return null;
			}
		}
	}

	private excludedBy(part: string): readonly string[] {
		return this.problem.parts.find(({ id }) => id === part)?.excludes ?? [];
	}
}

/** Carries out the operations in the order given; throws at the first that cannot be done. */
export function carriedOut(problem: Problem, operations: readonly Operation[]): Bench {
	const bench = new Bench(problem);
	for (const operation of operations) {
		const refusal = bench.carryOut(operation);
		if (refusal !== null) throw new Error(refusal);
	}
	return bench;
}

/** The problem as it stands when the operations have been carried out. */
export function afterwards(problem: Problem, bench: Bench): Problem {
	return {
		...problem,
		now: Object.fromEntries(bench.build),
		alterations: (problem.alterations ?? []).filter(({ id }) => !bench.undone.has(id)),
	};
}
