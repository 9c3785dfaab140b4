import { expect, it } from "vitest";
import { takeOut } from "@/lib/fittings/changes";
import { stampAsFound, takeInMachine } from "@/lib/machines/changes";
import { takeInMachineSchema } from "@/lib/machines/schema";
import { addPositionsAsText, describePosition } from "@/lib/positions/changes";
import { describePositionSchema } from "@/lib/positions/schema";
import { freshShop } from "@/tests/support/freshShop";

it("a position on an assembly that is out stays on it when something else is said of it", async () => {
	const shop = await freshShop();
	const taken = await takeInMachine(takeInMachineSchema("EUR").parse({ name: "TIN HERON", receivedDay: "2026-03-02" }), shop.env());
	if (!taken.ok) throw new Error(taken.error.say);
	const machineId = taken.value.id;
	await addPositionsAsText({ machineId, wasThere: true, text: "Motor (original)\n  Gear (original)", origin: "unknown" }, shop.env());
	await stampAsFound({ machineId }, shop.env());
	const position = async (name: string) => shop.store.read.position.findFirstOrThrow({ where: { machineId, name } });
	const [motor, gear] = [await position("Motor"), await position("Gear")];
	const out = await takeOut({ machineId, positionId: motor.id, into: { kind: "bench" } }, shop.env());
	expect(out).toMatchObject({ ok: true });
	const times = { low: "", likely: "", high: "" };
	const said = {
		positionId: gear.id,
		name: "Gear",
		area: "",
		kind: "seat",
		sides: [],
		note: "Brass.",
		mirrorMark: "",
		out: times,
		in: times,
	};
	// The page can show no mark of what carries it: there is none while it is out.
	expect(await describePosition(describePositionSchema.parse({ ...said, hostMark: "" }), shop.env())).toMatchObject({ ok: true });
	expect(await position("Gear")).toMatchObject({ note: "Brass.", hostId: gear.hostId });
	expect(gear.hostId).not.toBeNull();
	await shop.close();
});
