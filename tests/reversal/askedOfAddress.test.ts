import { describe, expect, it } from "vitest";
import { type AskedHere, addressWith, askedHere, askedOfPlanner, titleOf } from "@/app/machines/[machine]/reversal/askedOfAddress";
import { day } from "@/lib/core/days";
import { aPositionRow, someFacts } from "@/tests/reversal/someFacts";

const facts = someFacts({
	positions: [aPositionRow("a", { mark: "k1" }), aPositionRow("b", { mark: "k2" })],
	conversions: [{ id: "c", number: 1, name: "New drive", purpose: "ordinary" }],
});
const asked = (search: Parameters<typeof askedHere>[0]): AskedHere => askedHere(search, facts, day("2026-05-20"), "Europe/Amsterdam");

describe("a question in an address", () => {
	it("is read, and written again with more positions", () => {
		const here = asked({ to: "day", day: "2026-05-01", time: "14:00", undo: "1", pos: ["k1"], reason: " shown " });
		expect(here.wrongs).toEqual({});
		expect(titleOf(here)).toBe("Back to 1 May 2026, 14:00");
		expect(askedOfPlanner(here, facts, null, "Europe/Amsterdam")).toMatchObject({
			at: "2026-05-01T12:00:00.000Z",
			conversions: ["c"],
			positions: ["a"],
			reason: "shown",
		});
		expect(addressWith(here, ["k2"])).toBe("?to=day&day=2026-05-01&time=14%3A00&undo=1&pos=k1&pos=k2&reason=shown");
	});

	it("that names what the machine does not have is not taken for the whole machine", () => {
		expect(asked({ pos: "k9" }).wrongs.pos).toMatch(/no k9/);
		expect(asked({ undo: ["1", "7"] }).wrongs.pos).toMatch(/no 7/);
	});

	it.each([
		["no day", { to: "day" }, "day"],
		["a day to come", { to: "day", day: "2026-05-21" }, "day"],
		["a time that no clock shows", { to: "day", day: "2026-05-01", time: "25:99" }, "time"],
		["an hour that the change of clocks left out", { to: "day", day: "2026-03-29", time: "02:30" }, "time"],
	])("with %s says so at the field", (_, search, field) => {
		expect(Object.keys(asked(search).wrongs)).toEqual([field]);
	});
});
