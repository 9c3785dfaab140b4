// What is done where, while a plan is carried out: assemblies come out of the machine and go back, and carry their work along.

import type { Step } from "@/lib/reversal/operations";
import { NONE, type World } from "@/lib/reversal/world";

export type MovingWholes = {
	/** The loose part a step is done on at this moment, `NONE` when it is done in the machine. */
	readonly wholeOf: (step: Step) => number;
	/** Does a step, and gives the steps whose place has moved with the part: those on it, and on what is on it. */
	readonly move: (step: Step) => readonly number[];
};

/** The build as the steps change it. Requires that they come in an order that can be carried out. */
export function movingWholes(world: World, steps: readonly Step[]): MovingWholes {
	const placeOf = Int32Array.from(world.now.placeOf);
	const partAt = Int32Array.from(world.now.partAt);
	const positionsOn: number[][] = world.parts.map(() => []);
	world.hostOf.forEach((host, p) => {
		positionsOn[host]?.push(p);
	});
	const stepsAt: number[][] = world.positions.map(() => []);
	steps.forEach(({ position }, at) => {
		stepsAt[position]?.push(at);
	});
	const wholeOf = (step: Step): number => {
		if (step.position === NONE) return step.part;
		let p = step.position;
		for (;;) {
			const host = world.hostOf[p] ?? NONE;
			if (host === NONE) return NONE;
			const place = placeOf[host] ?? NONE;
			if (place === NONE) return host;
			p = place;
		}
	};
	const carriedBy = (part: number): number[] => {
		const carried: number[] = [];
		const parts = [part];
		for (let host = parts.pop(); host !== undefined; host = parts.pop()) {
			for (const p of positionsOn[host] ?? []) {
				for (const at of stepsAt[p] ?? []) carried.push(at);
				const guest = partAt[p] ?? NONE;
				if (guest !== NONE) parts.push(guest);
			}
		}
		return carried;
	};
	const move = (step: Step): readonly number[] => {
		if (step.kind !== "take-out" && step.kind !== "put-in") return [];
		const isIn = step.kind === "put-in";
		placeOf[step.part] = isIn ? step.position : NONE;
		partAt[step.position] = isIn ? step.part : NONE;
		return carriedBy(step.part);
	};
	return { wholeOf, move };
}
