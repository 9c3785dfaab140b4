// A shop with one machine of many positions, stamped and in work, for runs at the bench.

import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { systemClock } from "@/lib/core/clock";
import { addDays, dayOf } from "@/lib/core/days";
import type { Result } from "@/lib/core/result";
import { migrate } from "@/lib/db/migrate";
import { databaseFile, openStore } from "@/lib/db/store";
import { envNow } from "@/lib/ledger/edge";
import { stampAsFound, takeInMachine } from "@/lib/machines/changes";
import { takeInMachineSchema } from "@/lib/machines/schema";
import { addPositionsAsText } from "@/lib/positions/changes";
import { openShop } from "@/lib/shop/changes";

function got<T>(result: Result<T>): T {
	if (!result.ok) throw new Error(`${result.error.code}: ${result.error.say}`);
	return result.value;
}

/** Machine 21 with so many lamps, "Lamp 01" on; one person, Pim Sluis. */
export async function benchShop(lamps: number): Promise<{ readonly folder: string; readonly remove: () => void }> {
	const folder = mkdtempSync(path.join(tmpdir(), "asfound-bench-"));
	migrate(databaseFile(folder), path.resolve("prisma/migrations"), () => undefined);
	const store = await openStore(folder);
	const shop = { name: "Small shop", timeZone: "Europe/Amsterdam", currency: "EUR" as const, address: "" };
	const me = got(await openShop({ ...shop, personName: "Pim Sluis", initials: "PS", skills: "" }, envNow(store, "")));
	const env = () => envNow(store, me);
	const came = addDays(dayOf(systemClock(), shop.timeZone), -1);
	const taken = takeInMachineSchema("EUR").parse({ number: "21", name: "BRASS GREBE", receivedDay: came, price: "100" });
	const { id: machineId } = got(await takeInMachine(taken, env()));
	const text = Array.from({ length: lamps }, (_, at) => `${lampNamed(at + 1)} (original)`).join("\n");
	got(await addPositionsAsText({ machineId, wasThere: false, text, origin: "unknown" }, env()));
	got(await stampAsFound({ machineId }, env()));
	await store.close();
	return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

export const lampNamed = (number: number): string => `Lamp ${String(number).padStart(2, "0")}`;
