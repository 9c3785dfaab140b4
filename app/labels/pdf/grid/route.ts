import { systemClock } from "@/lib/core/clock";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { labelFonts } from "@/lib/labels/labelFonts";
import { paperPdf } from "@/lib/labels/paper";
import { nudgeOf, stockById } from "@/lib/labels/stockQueries";
import { testGrid } from "@/lib/labels/testGrid";
import { pdfAnswer, words } from "../../pdfAnswer";

/** The test grid of a stock, as the printer draws it by itself; with `moved=yes` as it is moved now, to see whether it is right. */
export async function GET(request: Request): Promise<Response> {
	const query = new URL(request.url).searchParams;
	const { read } = await shopStore();
	const known = await stockById(read, query.get("stock") ?? "");
	if (!known) return words(404, "That label stock is not on record. Choose one from the list.");
	const nudge = query.get("moved") === "yes" ? await nudgeOf(read, known.stock.id) : { nudgeX: 0, nudgeY: 0 };
	const drawing = testGrid(known.stock, labelFonts());
	const page = { width: drawing.width, height: drawing.height, drawings: [{ x: nudge.nudgeX, y: nudge.nudgeY, drawing }] };
	return pdfAnswer(await paperPdf([page], `Test grid: ${known.stock.name}`, instant(systemClock())), "test-grid");
}
