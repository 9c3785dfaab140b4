import { cornerOf, labelsPerPage, type Stock } from "@/lib/labels/stock";

/** Labels that are drawn at most; a slip of the hand must not draw ten thousand. */
const MOST_DRAWN = 1000;

/** The sheet, or the label of a roll, drawn to scale. What sticks out of the sheet is hatched. */
export function StockPicture({ stock }: { readonly stock: Stock }) {
	const height = stock.kind === "continuous" ? stock.shortest : stock.height;
	const page = stock.kind === "sheet" ? { width: stock.pageWidth, height: stock.pageHeight } : { width: stock.width, height: height };
	const air = Math.max(page.width, page.height) * 0.03;
	const places = Array.from({ length: Math.min(MOST_DRAWN, labelsPerPage(stock)) }, (_, place) => cornerOf(stock, place));
	const out = (corner: { x: number; y: number }): boolean =>
		corner.x < -0.01 || corner.y < -0.01 || corner.x + stock.width > page.width + 0.01 || corner.y + height > page.height + 0.01;
	const outside = places.filter(out).length;
	const label =
		stock.kind === "sheet"
			? `A sheet of ${page.width} by ${page.height} mm with ${labelsPerPage(stock)} labels${outside > 0 ? `, ${outside} of them over its edge` : ""}`
			: `A label of ${page.width} by ${page.height} mm`;
	return (
		<svg
			className="af-stock-picture"
			viewBox={`${-air} ${-air} ${page.width + 2 * air} ${page.height + 2 * air}`}
			role="img"
			aria-label={label}
			data-kind={stock.kind}
		>
			<rect className="af-stock-page" x={0} y={0} width={page.width} height={page.height} />
			{stock.kind === "sheet"
				? places.map((corner, place) => (
						<rect
							// biome-ignore lint/suspicious/noArrayIndexKey: a label of a sheet is its place
							key={place}
							className="af-stock-label"
							data-out={out(corner) ? "" : undefined}
							x={corner.x}
							y={corner.y}
							width={stock.width}
							height={height}
							rx={1}
						/>
					))
				: null}
			{stock.kind === "continuous" ? <line className="af-stock-cut" x1={0} x2={page.width} y1={page.height} y2={page.height} /> : null}
		</svg>
	);
}
