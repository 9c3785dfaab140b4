// The machine that the address names, read once for all parts of a page.

import { notFound } from "next/navigation";
import { cache } from "react";
import { shopStore } from "@/lib/db/shopStore";
import { type MachineHead, machineByNumber } from "@/lib/machines/queries";

/** The machine of the address, or the page that says there is none. */
export const thisMachine = cache(async (machine: string): Promise<MachineHead> => {
	const found = /^[1-9]\d{0,3}$/.test(machine) ? await machineByNumber((await shopStore()).read, Number(machine)) : null;
	return found ?? notFound();
});
