// A small simulator, written apart from the program: carries out every recorded move by hand, and refuses what cannot be reached.

import { describe, expect, test } from "vitest";
import { docksideMagpie } from "@/seed/data/docksideMagpie";
import { hairpinRidge } from "@/seed/data/hairpinRidge";
import { meteorMinnow } from "@/seed/data/meteorMinnow";
import { skerryLight } from "@/seed/data/skerryLight";
import type { Machine, Move } from "@/seed/data/types";

class Bench {
	/** Position to the part in it. A part carries its own guests wherever it goes, so guests stay in the map. */
	readonly build = new Map<string, string>();

	constructor(private readonly machine: Machine) {
		for (const position of machine.positions)
			if (position.asFound !== undefined && position.asFound.state !== "missing") this.build.set(position.id, position.id);
	}

	private hostOf(position: string): string | null {
		const found = this.machine.positions.find((each) => each.id === position);
		if (found === undefined) throw new Error(`no position ${position}`);
		return found.hostPosition === null ? null : (found.hostPart ?? found.hostPosition);
	}

	/** What a position is in now: the machine, or the loose part at the top of its chain of hosts. */
	wholeOf(position: string): string {
		const host = this.hostOf(position);
		if (host === null) return "machine";
		const place = [...this.build].find(([, part]) => part === host)?.[0];
		return place === undefined ? host : this.wholeOf(place);
	}

	/** Nothing fitted in the same whole stands before it, from one side at least. */
	reaches(position: string): boolean {
		const found = this.machine.positions.find((each) => each.id === position);
		const before = (side: string | undefined) =>
			this.machine.obstructions.some(
				(each) =>
					each.blocked === position &&
					(each.side === undefined || each.side === side) &&
					this.build.has(each.blocker) &&
					this.wholeOf(each.blocker) === this.wholeOf(position),
			);
		return (found?.sides ?? [undefined]).some((side) => !before(side));
	}

	carryOut(move: Move): string | null {
		if (!this.reaches(move.position)) return `${move.position} cannot be reached`;
		const there = this.build.get(move.position);
		if (move.kind === "take-out") {
			if (there !== move.part) return `${move.position} holds ${there ?? "nothing"}, not ${move.part}`;
			this.build.delete(move.position);
			return null;
		}
		if (there !== undefined) return `${move.position} is taken by ${there}`;
		if ([...this.build.values()].includes(move.part)) return `${move.part} is fitted elsewhere`;
		this.build.set(move.position, move.part);
		return null;
	}
}

describe.each([skerryLight, meteorMinnow, docksideMagpie, hairpinRidge])("$name", (machine) => {
	test("every recorded and planned move could be made, one after the other", () => {
		const bench = new Bench(machine);
		const refused = [...machine.steps]
			.sort((first, second) => {
				const start = (step: typeof first) => step.sessions[0]?.start ?? "9999";
				return start(first) < start(second)
					? -1
					: start(first) > start(second)
						? 1
						: machine.steps.indexOf(first) - machine.steps.indexOf(second);
			})
			.flatMap((step) => step.moves.map((move) => ({ step: step.id, why: bench.carryOut(move) })))
			.filter(({ why }) => why !== null);
		expect(refused).toEqual([]);
	});
});

test("the simulator itself refuses what the machine forbids", () => {
	const bench = new Bench(skerryLight);
	expect(bench.carryOut({ kind: "take-out", position: "k21", part: "k21", to: { location: "bench-2" } })).toBe("k21 cannot be reached");
	expect(bench.carryOut({ kind: "take-out", position: "k17", part: "k17", to: { location: "bench-2" } })).toBe("k17 cannot be reached");
	expect(bench.carryOut({ kind: "take-out", position: "k02", part: "k02", to: { location: "bench-2" } })).toBeNull();
	expect(bench.carryOut({ kind: "take-out", position: "k17", part: "k17", to: { location: "bench-2" } })).toBeNull();
	expect(bench.carryOut({ kind: "put-in", position: "k17", part: "k18-led" })).toBeNull();
});

test("the motor of machine 12 comes off by the bench: never while the drive plate is in the machine", () => {
	const bench = new Bench(skerryLight);
	for (const position of ["k01", "k02", "k17", "k18", "k20", "k22"])
		expect(bench.carryOut({ kind: "take-out", position, part: position, to: { location: "bench-2" } })).toBeNull();
	expect(bench.reaches("k25")).toBe(false);
	expect(bench.carryOut({ kind: "take-out", position: "k23", part: "k23", to: { location: "bench-2" } })).toBeNull();
	expect(bench.reaches("k25")).toBe(true);
});
