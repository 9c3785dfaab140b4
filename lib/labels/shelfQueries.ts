import type { Reader } from "@/lib/db/store";
import { codeText } from "@/lib/labels/address";
import { addressOnLabels } from "@/lib/labels/printQueries";
import { qrModules } from "@/lib/labels/qrModules";
import type { ShelfContent } from "@/lib/labels/shelfSheet";
import { requireShop } from "@/lib/shop/queries";
import { placesUp } from "@/lib/store/queries";
import { readTag } from "@/lib/tags/readTag";

/** Most sheets in one print-out. */
export const MOST_SHEETS = 60;

/** What the sheets of these places say, in the order given; a place that is not known is left out. */
export async function shelvesOf(read: Reader, placeIds: readonly string[]): Promise<ShelfContent[]> {
	const asked = placeIds.slice(0, MOST_SHEETS);
	const [shop, tags] = await Promise.all([
		requireShop(read),
		read.placeTag.findMany({ where: { locationId: { in: [...asked] } }, select: { id: true, locationId: true } }),
	]);
	const tagOf = new Map(tags.map(({ id, locationId }) => [locationId, id]));
	const address = addressOnLabels(shop.address);
	const sheets: ShelfContent[] = [];
	for (const id of asked) {
		const [place, ...around] = await placesUp(read, id);
		if (!place) continue;
		const said = readTag(tagOf.get(id) ?? "");
		const text = said.ok ? codeText(said.value.tag, address) : null;
		// An address that is too long for a code leaves the sheet its tag in letters.
		const modules = text === null ? null : qrModules(text);
		sheets.push({
			name: place.name,
			way: around.map(({ name }) => name).reverse(),
			tag: said.ok && text !== null && modules !== null ? { tag: said.value.tag, text, modules } : null,
		});
	}
	return sheets;
}
