import { systemClock } from "@/lib/core/clock";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { labelFonts } from "@/lib/labels/labelFonts";
import { paperPdf } from "@/lib/labels/paper";
import { shelvesAddressSchema } from "@/lib/labels/schema";
import { shelvesOf } from "@/lib/labels/shelfQueries";
import { shelfSheet } from "@/lib/labels/shelfSheet";
import { A4, LETTER } from "@/lib/labels/stock";
import { pdfAnswer, words } from "../../pdfAnswer";

/** A big sheet for each shelf. */
export async function GET(request: Request): Promise<Response> {
	const query = new URL(request.url).searchParams;
	const said = shelvesAddressSchema.safeParse({ places: query.getAll("place"), paper: query.get("paper") ?? undefined });
	if (!said.success) return words(400, said.error.issues[0]?.message ?? "These sheets cannot be printed.");
	const { read } = await shopStore();
	const shelves = await shelvesOf(read, said.data.places);
	if (shelves.length === 0) return words(404, "These places are not known any more. Choose them from the list.");
	const fonts = labelFonts();
	const pages = shelves.map((shelf) => {
		const drawing = shelfSheet(shelf, said.data.paper === "letter" ? LETTER : A4, fonts);
		return { width: drawing.width, height: drawing.height, drawings: [{ x: 0, y: 0, drawing }] };
	});
	return pdfAnswer(
		await paperPdf(pages, shelves.length === 1 ? (shelves[0]?.name ?? "") : `${shelves.length} shelves`, instant(systemClock())),
		"shelves",
	);
}
