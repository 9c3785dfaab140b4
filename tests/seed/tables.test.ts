// The four machines against their printed tables, line by line and in their sums.

import { describe, expect, test } from "vitest";
import { docksideMagpie } from "@/seed/data/docksideMagpie";
import { hairpinRidge } from "@/seed/data/hairpinRidge";
import { meteorMinnow } from "@/seed/data/meteorMinnow";
import { skerryLight } from "@/seed/data/skerryLight";
import type { Machine } from "@/seed/data/types";
import { docksideMagpieTable, hairpinRidgeTable, meteorMinnowTable, skerryLightTable } from "@/tests/seed/tables";

type Row = {
	id: string;
	host: string | null;
	name: string;
	fixings: string;
	connections: string;
	blockers: string[];
	out: number | null;
	into: number | null;
};

const rowsOf = (table: string): Row[] =>
	table
		.trim()
		.split("\n")
		.map((line) => {
			const [id = "", host = "", name = "", fixings = "", connections = "", blocked = "", minutes = ""] = line.split("|");
			const [out, into] = minutes.split("/").map(Number);
			const blockers = (blocked === "-" ? [] : blocked.split("; ")).flatMap((group) => {
				const [side, ids] = group.includes(": ") ? group.split(": ") : [undefined, group];
				return (ids ?? "").split(", ").map((blocker) => (side === undefined ? blocker : `${side} ${blocker}`));
			});
			const timed = minutes !== "-" && out !== undefined && into !== undefined;
			return {
				id,
				host: host === "-" ? null : host,
				name,
				fixings,
				connections,
				blockers: blockers.sort(),
				out: timed ? out : null,
				into: timed ? into : null,
			};
		});

const asRows = (machine: Machine): Row[] =>
	machine.positions.map((position) => ({
		id: position.id,
		host: position.hostPosition,
		name: position.name,
		fixings: position.fixingWords ?? "-",
		connections: position.connectionWords ?? "-",
		blockers: machine.obstructions
			.filter((obstruction) => obstruction.blocked === position.id)
			.map((obstruction) => (obstruction.side === undefined ? obstruction.blocker : `${obstruction.side} ${obstruction.blocker}`))
			.sort(),
		out: position.minutesOut?.likely ?? null,
		into: position.minutesIn?.likely ?? null,
	}));

describe.each([
	{ machine: meteorMinnow, table: meteorMinnowTable, count: 31, out: 398, into: 546 },
	{ machine: docksideMagpie, table: docksideMagpieTable, count: 33, out: 288, into: 438 },
	{ machine: hairpinRidge, table: hairpinRidgeTable, count: 35, out: 702, into: 1050 },
])("$machine.name", ({ machine, table, count, out, into }) => {
	test("every position stands as the sheet prints it", () => {
		expect(asRows(machine)).toEqual(rowsOf(table));
	});

	test("the sheet's own sums come out", () => {
		const sum = (minutes: (number | undefined)[]) => minutes.reduce<number>((total, each) => total + (each ?? 0), 0);
		expect(machine.positions).toHaveLength(count);
		expect(sum(machine.positions.map((position) => position.minutesOut?.likely))).toBe(out);
		expect(sum(machine.positions.map((position) => position.minutesIn?.likely))).toBe(into);
	});
});

describe("SKERRY LIGHT", () => {
	test("every position stands as the sheet prints it", () => {
		expect(asRows(skerryLight)).toEqual(rowsOf(skerryLightTable));
	});

	test("forty positions came, five places were made", () => {
		expect(skerryLight.positions.filter((position) => position.asFound !== undefined)).toHaveLength(40);
		expect(skerryLight.positions.filter((position) => position.asFound === undefined).map((position) => position.id)).toEqual([
			"n1",
			"n2",
			"n3",
			"n4",
			"n5",
		]);
	});

	test("origin and the kind of evidence are the sheet's, position by position", () => {
		const printed = skerryLightTable
			.trim()
			.split("\n")
			.filter((line) => line.startsWith("k"))
			.map((line) => {
				const words = line.split("|")[7] ?? "";
				const kind = ["seen", "documented", "told", "assumed"].find((each) => words.includes(each)) ?? "seen"; // unknown: it was there, and we saw it
				return { id: line.slice(0, 3), origin: words.split(/[,:]/)[0], kind };
			});
		const written = skerryLight.positions
			.filter((position) => position.asFound !== undefined)
			.map((position) => ({ id: position.id, origin: position.asFound?.origin, kind: position.asFound?.evidence[0]?.kind }));
		expect(written).toEqual(printed);
	});
});

test("every three-point time of a position is whole, in order, and about 0.7 to 2 of the likely one", () => {
	for (const machine of [skerryLight, meteorMinnow, docksideMagpie, hairpinRidge]) {
		for (const { minutesOut, minutesIn, id } of machine.positions) {
			for (const minutes of [minutesOut, minutesIn]) {
				if (minutes === null) continue;
				expect(Number.isInteger(minutes.low) && Number.isInteger(minutes.high), id).toBe(true);
				expect(minutes.low).toBeLessThanOrEqual(minutes.likely);
				expect(Math.abs(minutes.low * 10 - minutes.likely * 7)).toBeLessThanOrEqual(5);
				expect(minutes.high).toBe(2 * minutes.likely);
			}
		}
	}
});
