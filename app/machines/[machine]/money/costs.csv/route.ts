import { systemClock } from "@/lib/core/clock";
import { dayOf } from "@/lib/core/days";
import { shopStore } from "@/lib/db/shopStore";
import { saidInWords, serveCsv } from "@/lib/http/serveCsv";
import { costTable } from "@/lib/money/costSheetCsv";
import { costSheetOf } from "@/lib/money/costSheetQueries";
import { machineMoney } from "@/lib/money/queries";
import { theShop } from "@/lib/shop/queries";

/** Every cost of a machine, for the bookkeeper. */
export async function GET(_: Request, { params }: { params: Promise<{ machine: string }> }): Promise<Response> {
	const { read } = await shopStore();
	const { machine: inAddress } = await params;
	const [shop, machine] = await Promise.all([
		theShop(read),
		/^[1-9]\d{0,3}$/.test(inAddress) ? read.machine.findUnique({ where: { number: Number(inAddress) }, select: { id: true } }) : null,
	]);
	if (!shop || !machine) return saidInWords(404, "There is no such machine in the book.");
	const [sheet, money] = await Promise.all([
		costSheetOf(read, machine.id),
		machineMoney(read, machine.id, dayOf(systemClock(), shop.timeZone)),
	]);
	if (!money) return saidInWords(404, "There is no such machine in the book.");
	const { bought, carriage, books } = money;
	return serveCsv(costTable(sheet.lines, { spent: sheet.total, bought, carriage, books }, shop.currency), `machine-${inAddress}-costs`);
}
