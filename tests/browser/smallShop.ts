// A small shop with one of everything, so that every form of the program has a page to stand on. Written through the same
// functions that the forms call.

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { Readable } from "node:stream";
import { recordAlteration } from "@/lib/alterations/changes";
import { recordAlterationSchema } from "@/lib/alterations/schema";
import { makeBag } from "@/lib/bags/changes";
import { addCapture } from "@/lib/captures/changes";
import { nameConversion } from "@/lib/conversions/changes";
import { systemClock } from "@/lib/core/clock";
import { addDays, type Day, dayOf } from "@/lib/core/days";
import type { Result } from "@/lib/core/result";
import { giveCredit } from "@/lib/credits/changes";
import { creditSchema } from "@/lib/credits/schema";
import { migrate } from "@/lib/db/migrate";
import { databaseFile, openStore } from "@/lib/db/store";
import { deliver } from "@/lib/deliveries/changes";
import { deliverSchema } from "@/lib/deliveries/schema";
import { addDigitalItem } from "@/lib/digital/changes";
import { registerFile } from "@/lib/files/changes";
import { keepFile } from "@/lib/files/keepFile";
import { takeOut } from "@/lib/fittings/changes";
import { envNow } from "@/lib/ledger/edge";
import { sayFault, stampAsFound, takeInMachine } from "@/lib/machines/changes";
import { sayFaultSchema, takeInMachineSchema } from "@/lib/machines/schema";
import { addCost } from "@/lib/money/changes";
import { addCostSchema } from "@/lib/money/schema";
import { addPayment, givePaper } from "@/lib/owner/changes";
import { addPaymentSchema, givePaperSchema } from "@/lib/owner/schema";
import { sayEvidence, sendOut } from "@/lib/parts/changes";
import { sayEvidenceSchema, sendOutSchema } from "@/lib/parts/schema";
import { addPerson, setRate } from "@/lib/people/changes";
import { rateSchema } from "@/lib/people/schema";
import { addPositionsAsText } from "@/lib/positions/changes";
import { buy, drawFromLine, returnLine } from "@/lib/purchases/changes";
import { buySchema, drawFromLineSchema, returnLineSchema } from "@/lib/purchases/schema";
import { openShop } from "@/lib/shop/changes";
import { addTime, planStep } from "@/lib/steps/changes";
import { addTimeSchema, planStepSchema } from "@/lib/steps/schema";
import { addLocation } from "@/lib/store/changes";
import { planTest } from "@/lib/tests/changes";
import { planTestSchema } from "@/lib/tests/schema";
import { want } from "@/lib/wanted/changes";
import { wantSchema } from "@/lib/wanted/schema";
import { plainPhoto } from "./photos";

function got<T>(result: Result<T>): T {
	if (!result.ok) throw new Error(`${result.error.code}: ${result.error.say} ${JSON.stringify(result.error.fields ?? {})}`);
	return result.value;
}

export type SmallShop = {
	readonly folder: string;
	/** Addresses of pages that no link of another page leads to soon, one for each kind of thing. */
	readonly addresses: readonly string[];
	readonly remove: () => void;
};

/** The shop of the tests that type nonsense: machine 7, taken in and stamped, and one of everything on it; machine 8, still open. */
export async function smallShop(): Promise<SmallShop> {
	const folder = mkdtempSync(path.join(tmpdir(), "asfound-small-"));
	migrate(databaseFile(folder), path.resolve("prisma/migrations"), () => undefined);
	const store = await openStore(folder);
	const { read } = store;
	const today: Day = dayOf(systemClock(), "Europe/Amsterdam");
	const about = { name: "Small shop", timeZone: "Europe/Amsterdam", currency: "EUR" as const, address: "" };
	const me = got(await openShop({ ...about, personName: "Pim Sluis", initials: "PS", skills: "" }, envNow(store, "")));
	const env = () => envNow(store, me);
	got(await addPerson({ name: "Rozemarijn", initials: "RZ", skills: "" }, env()));
	got(await setRate(rateSchema("EUR").parse({ personId: me, fromDay: "2020-01-01", cost: "30", charge: "50" }), env()));

	const takenIn = (number: string, name: string, whose: object = { price: "100" }) =>
		// It came yesterday, so that what is added from memory was not before it, a minute after midnight either.
		takeInMachine(takeInMachineSchema("EUR").parse({ number, name, receivedDay: addDays(today, -1), ...whose }), env());
	const { id: machineId } = got(await takenIn("7", "COPPER WREN"));
	const text = "Case (original)\nBell (original)\nMotor (original)\n  Brush (original)\nKnob ?\nRear wall (place)";
	got(await addPositionsAsText({ machineId, wasThere: false, text, origin: "unknown" }, env()));
	got(await stampAsFound({ machineId }, env()));
	const { id: open } = got(await takenIn("8", "PEWTER CROW", { ownership: "customer", ownerName: "An owner" }));
	got(await addPositionsAsText({ machineId: open, wasThere: false, text: "Door\nLock ?", origin: "unknown" }, env()));

	const seats = await read.position.findMany({
		where: { machineId },
		select: { id: true, mark: true, name: true, part: { select: { id: true } } },
	});
	const seat = (name: string) => {
		const found = seats.find((each) => each.name === name);
		if (!found) throw new Error(`no position ${name}`);
		return { positionId: found.id, mark: found.mark, partId: found.part?.id ?? "" };
	};
	const { locationId } = got(await addLocation({ parentId: null, kind: "room", name: "Back room" }, env()));
	got(await addLocation({ parentId: locationId, kind: "shelf", name: "Shelf 1" }, env()));
	got(await makeBag({ machineId, words: "small screws" }, env()));
	const into = (role: "holding" | "keeping") => ({ kind: "new-bag" as const, bag: { role } });
	const out = (name: string) =>
		takeOut(
			{
				machineId,
				positionId: seat(name).positionId,
				fixings: [{ fixingId: null, count: 2, thread: "M4", went: { kind: "with-part" } }],
				into: into("holding"),
			},
			env(),
		);
	got(await out("Bell"));
	got(await out("Case"));
	got(
		await sayEvidence(
			sayEvidenceSchema.parse({ partId: seat("Bell").partId, kind: "seen", claim: "came", how: "untouched fixings" }),
			env(),
		),
	);
	got(
		await sendOut(sendOutSchema.parse({ partId: seat("Case").partId, partyName: "A plater", why: "nickel", dueDay: "2099-01-01" }), env()),
	);

	const { id: stepId } = got(
		await planStep(planStepSchema.parse({ machineId, kind: "clean", title: "Clean the motor", minutes: { likely: "30" } }), env()),
	);
	got(await addTime(addTimeSchema.parse({ stepId, personId: me, minutes: "20" }), env()));
	got(
		await recordAlteration(
			recordAlterationSchema.parse({ machineId, what: "a hole", place: "rear wall", undo: "trace", undoMinutes: { likely: "10" } }),
			env(),
		),
	);
	got(await nameConversion({ machineId, name: "Quieter bell", purpose: "ordinary", words: "" }, env()));
	got(
		await planTest(
			planTestSchema.parse({
				machineId,
				name: "Earth",
				unit: "Ω",
				limit: { kind: "at most", value: "0.3", unit: "Ω" },
				limitSource: "own limit",
			}),
			env(),
		),
	);
	got(await sayFault(sayFaultSchema.parse({ machineId, words: "rattles", kind: "seen" }), env()));
	got(
		await addCost(
			addCostSchema("EUR").parse({ machineId, kind: "consumable", state: "spent", words: "Grease", day: today, spent: "4" }),
			env(),
		),
	);

	const order = { supplierName: "A dealer", orderedDay: today, lines: [{ what: "Wire", count: "5", unit: "m", net: "10" }] };
	const { id: purchaseId, lineIds } = got(await buy(buySchema("EUR").parse(order), env()));
	got(await deliver(deliverSchema.parse({ purchaseId, day: today, lines: [{ lineId: lineIds[0], count: "3" }] }), env()));
	got(await drawFromLine(drawFromLineSchema.parse({ lineId: lineIds[0], machineId, count: "1", day: today }), env()));
	const back = { lineId: lineIds[0], machineId, count: "1", day: today, words: "too thin" };
	const { useId } = got(await returnLine(returnLineSchema.parse(back), env()));
	const credit = { purchaseId, useId, day: today, amount: "1", words: "their credit note" };
	got(await giveCredit(creditSchema("EUR").parse(credit), env()));
	const wanted = { machineId, words: "New brushes", estimated: "6" };
	got(await want(wantSchema("EUR").parse(wanted), env()));
	got(await want(wantSchema("EUR").parse({ ...wanted, words: "New springs" }), env()));
	got(await buy(buySchema("EUR").parse({ ...order, arrivedDay: today }), env()));

	const quote = { machineId: open, kind: "quote", day: today, lines: [{ words: "Labour", net: "50" }] };
	const { paperId } = got(await givePaper(givePaperSchema("EUR").parse(quote), env()));
	const deposit = { machineId: open, kind: "deposit", day: today, amount: "20", words: "in cash" };
	got(await addPayment(addPaymentSchema("EUR").parse(deposit), env()));

	const photo = await plainPhoto("bench.jpg");
	const file = got(await keepFile(folder, { body: Readable.from([photo.buffer]), name: photo.name, announced: photo.buffer.length }));
	const { captureId } = got(await addCapture({ machineId, kind: "photo", file, words: "" }, env()));
	got(await registerFile({ file, machineId }, env()));
	const program = { machineId, partId: seat("Motor").partId, name: "ramp", version: "1", fileSha: file.sha, pins: "", loading: "by cable" };
	got(await addDigitalItem(program, env()));

	const tags = await read.tag.findMany({ select: { id: true, part: { select: { place: true } }, bag: { select: { id: true } } } });
	const places = new Map(tags.map((tag) => [tag.bag ? "a bag" : (tag.part?.place ?? "free"), tag.id]));
	await store.close();
	return {
		folder,
		addresses: [
			...[...places.values()].map((tag) => `/t/${tag}`),
			`/machines/7/papers/photo/${captureId}`,
			`/machines/7/build/${seat("Bell").mark}`,
			`/machines/7/build/${seat("Motor").mark}`,
			`/machines/7/take-out/${seat("Motor").mark}`,
			`/machines/7/put-in/${seat("Bell").mark}`,
			"/machines/8/money/owner",
			`/machines/8/money/owner/${paperId}`,
			"/machines/8/money/owner/new?kind=more",
		],
		remove: () => rmSync(folder, { recursive: true, force: true }),
	};
}
