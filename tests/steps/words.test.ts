import { describe, expect, it } from "vitest";
import { instant } from "@/lib/core/instants";
import { cautionsIn } from "@/lib/steps/cautions";
import { instantTyped, momentToType, typedMoment } from "@/lib/steps/typedMoment";

const ZONE = "Europe/Amsterdam";
const NOW = instant("2026-04-02T12:00:00.000Z");
const typed = (text: string) => instantTyped(text, ZONE, NOW, "done");

describe("a moment typed into a clock field", () => {
	it("is the shop's own time, summer and winter, whatever zone the computer is in", () => {
		expect(typed("2026-03-02T14:05")).toEqual({ ok: true, value: "2026-03-02T13:05:00.000Z" });
		expect(typed("2026-04-01T14:05")).toEqual({ ok: true, value: "2026-04-01T12:05:00.000Z" });
	});

	it("left empty is now, which the deed's own clock says", () => {
		expect(typed("")).toEqual({ ok: true, value: undefined });
	});

	it("that is still to come is refused at its field", () => {
		expect(typed("2026-04-02T14:01")).toMatchObject({ ok: false, error: { code: "moment-ahead", fields: { done: expect.any(String) } } });
		expect(typed("2026-04-02T14:00").ok).toBe(true);
	});

	it("that the clocks skipped in spring is refused", () => {
		expect(typed("2026-03-29T02:30")).toMatchObject({ ok: false, error: { code: "time-skipped" } });
	});

	it("of 30 February is no moment", () => {
		expect(typedMoment.safeParse("2026-02-30T10:00").success).toBe(false);
		expect(typedMoment.safeParse("yesterday").success).toBe(false);
	});

	it("is shown as it was typed", () => {
		expect(momentToType(instant("2026-03-02T13:05:00.000Z"), ZONE)).toBe("2026-03-02T14:05");
	});
});

describe("cautions in the words of a step", () => {
	it.each([
		["cord grip, three-core flex, 1 A fuse", ["mains"]],
		["make safe: unplug, tag the plug, discharge the lamp capacitor", ["mains", "a capacitor"]],
		["seal the ballast in tub 0218", ["mains", "PCB"]],
		["take out the counterweight", ["stored force"]],
		["final photographs, bag count, dossier", []],
	])("%s", (words, about) => {
		expect(cautionsIn(words).map((caution) => caution.about)).toEqual(about);
	});
});
