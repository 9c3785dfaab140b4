// Wires that come off with a part besides its own, on a board with a guest, a motor wired to it, and an earth at the plate.

import { describe, expect, test } from "vitest";
import { checklistOf } from "@/lib/reversal/checklist";
import type { Operation } from "@/lib/reversal/plan";
import { otherWires } from "@/lib/reversal/wiring";
import { aFitting, aPartRow, aPositionRow, someFacts } from "@/tests/reversal/someFacts";

const wire = (from: string, to: string, colour = "BK") => ({
	id: `${from} ${to}`,
	from,
	to,
	colour,
	gauge: "",
	tagFrom: "",
	tagTo: "",
	state: "connected" as const,
	note: "",
});
const facts = someFacts({
	positions: [
		aPositionRow("n1", { mark: "n1", name: "board" }),
		aPositionRow("n3", { mark: "n3", name: "controller", hostId: "board" }),
		aPositionRow("k25", { mark: "k25", name: "motor" }),
		aPositionRow("k23", { mark: "k23", name: "plate" }),
		aPositionRow("k2", { mark: "k2", name: "cover" }),
		aPositionRow("k30", { mark: "k30", name: "flex" }),
	],
	parts: [
		aPartRow("board", "n1"),
		aPartRow("controller", "n3"),
		aPartRow("motor", "k25"),
		aPartRow("plate", "k23"),
		aPartRow("cover", "k2"),
		aPartRow("flex", "k30"),
	],
	fittings: [
		aFitting("board", "n1"),
		aFitting("controller", "n3", { connections: [wire("n3-1", "n1 rail"), wire("n3-3", "X1-1", "RD")] }),
		aFitting("motor", "k25", { connections: [wire("k25-1", "n3-2", "RD")] }),
		aFitting("plate", "k23"),
		aFitting("cover", "k2"),
		aFitting("flex", "k30", { connections: [wire("flex PE", "earth stud on k23", "GNYE")] }),
	],
});
const op = (kind: Operation["kind"], position: string, part: string): Operation => ({
	id: `${kind} ${position}`,
	kind,
	position,
	part,
	after: [],
	minutes: { low: 1, likely: 1, high: 1 },
});
const named = (operations: readonly Operation[]) =>
	Object.fromEntries([...otherWires(operations, facts)].map(([id, wires]) => [id, wires.map(({ wire: { id: name } }) => name)]));

describe("the wires of others", () => {
	test("cross the edge of an assembly with its guest, and end at the part from elsewhere; what stays within it stays on", () => {
		expect(named([op("take-out", "n1", "t-board")])).toEqual({ "take-out n1": ["n3-3 X1-1", "k25-1 n3-2"] });
	});

	test("are off already when their own part came out before", () => {
		expect(named([op("take-out", "k25", "t-motor"), op("take-out", "n1", "t-board")])).toEqual({ "take-out n1": ["n3-3 X1-1"] });
	});

	test("an earth that ends at a part is undone and made with it, and said as a caution", () => {
		const operations = [op("take-out", "k23", "t-plate"), op("put-in", "k23", "t-plate")];
		expect(named(operations)).toEqual({ "take-out k23": ["flex PE earth stud on k23"], "put-in k23": ["flex PE earth stud on k23"] });
		const [out, back] = checklistOf({ operations }, facts);
		expect(out?.cautions.join(" ")).toMatch(/Protective earth is wired here: undo it last/);
		expect(back?.cautions.join(" ")).toMatch(/Protective earth is wired here: put it on first/);
		expect(out?.wires).toEqual(["flex PE to earth stud on k23, GNYE, of k30 flex"]);
	});

	test("k23 is not k2", () => {
		expect(named([op("take-out", "k2", "t-cover")])).toEqual({});
	});
});
