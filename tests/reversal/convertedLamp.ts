// A small machine that was converted, written through the doors that a person uses: for tests that take it back.

import { recordAlteration } from "@/lib/alterations/changes";
import { recordAlterationSchema } from "@/lib/alterations/schema";
import { nameConversion } from "@/lib/conversions/changes";
import { nameConversionSchema } from "@/lib/conversions/schema";
import { instant } from "@/lib/core/instants";
import { putIn, takeOut } from "@/lib/fittings/changes";
import { stampAsFound } from "@/lib/machines/changes";
import { addPart, losePart } from "@/lib/parts/changes";
import { addPartSchema, leaveSchema } from "@/lib/parts/schema";
import { sayObstruction } from "@/lib/positions/changes";
import { sayObstructionSchema } from "@/lib/positions/schema";
import { aMachine, aPosition, got } from "@/tests/machines/aMachine";
import type { FreshShop } from "@/tests/support/freshShop";

const likely = (minutes: number) => ({ low: minutes, likely: minutes, high: minutes });

/** A lamp behind a panel, replaced by another; the lamp's seat was drilled; a lens over the lamp that is lost, and a plastic one in its place. */
export async function converted(shop: FreshShop, undoWait = 60) {
	const machine = await aMachine(shop, [
		aPosition("rear panel", { mark: "p01", out: likely(3), in: likely(4) }),
		aPosition("lamp", { mark: "p02", out: likely(2), in: likely(2) }),
		aPosition("lens", { mark: "p03", out: likely(5), in: likely(5) }),
		aPosition("fuse", { mark: "p04", out: likely(1), in: likely(1) }),
	]);
	const behind = async (mark: string, partId: string) =>
		got(await sayObstruction(sayObstructionSchema.parse({ positionId: machine.position(mark), partId }), shop.env()));
	await behind("p02", machine.part("p01"));
	const { asFoundAt } = got(await stampAsFound({ machineId: machine.id }, shop.env()));
	const conversion = async (name: string, purpose: "ordinary" | "safety") =>
		got(await nameConversion(nameConversionSchema.parse({ machineId: machine.id, name, purpose }), shop.env())).id;
	const [light, safety] = [await conversion("New light", "ordinary"), await conversion("Mains safety", "safety")];
	const place = (mark: string) => ({ machineId: machine.id, positionId: machine.position(mark) });
	const replace = async (mark: string, conversionId: string, name: string) => {
		got(await takeOut({ ...place(mark), conversionId }, shop.env()));
		const part = got(await addPart(addPartSchema.parse({ machineId: machine.id, name, origin: "modern" }), shop.env()));
		got(await putIn({ partId: part.id, positionId: machine.position(mark), conversionId }, shop.env()));
		return part.id;
	};
	got(await takeOut(place("p01"), shop.env()));
	await replace("p02", light, "LED lamp");
	got(await putIn({ partId: machine.part("p01"), positionId: machine.position("p01") }, shop.env()));
	const plastic = await replace("p03", light, "plastic lens");
	await behind("p02", plastic);
	await replace("p04", safety, "fuse link");
	got(await losePart(leaveSchema.parse({ partId: machine.part("p03"), why: "dropped" }), shop.env()));
	const drilled = got(
		await recordAlteration(
			recordAlterationSchema.parse({
				machineId: machine.id,
				positionId: machine.position("p02"),
				what: "seat drilled",
				undo: "trace",
				undoMinutes: { low: "5", likely: "10", high: "20" },
				undoWait,
				conversionId: light,
			}),
			shop.env(),
		),
	).id;
	return { ...machine, asFoundAt: instant(asFoundAt), light, safety, place, plastic, drilled };
}
