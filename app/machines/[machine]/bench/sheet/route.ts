import { systemClock } from "@/lib/core/clock";
import { shopStore } from "@/lib/db/shopStore";
import { benchSheet } from "@/lib/fittings/benchSheet";
import { machineNumbered } from "@/lib/fittings/queries";

/** All that a run of take-outs on the machine asks, and the shop's clock: fetched once, then the phone goes on without the shop. */
export async function GET(_: Request, { params }: { params: Promise<{ machine: string }> }): Promise<Response> {
	const { read } = await shopStore();
	const machine = await machineNumbered(read, Number((await params).machine) || 0);
	if (!machine) return Response.json(null, { status: 404 });
	return Response.json({ now: systemClock(), sheet: await benchSheet(read, machine.id) }, { headers: { "cache-control": "no-store" } });
}
