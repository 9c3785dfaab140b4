// @vitest-environment happy-dom
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { padsToDecimal } from "@/app/ui/decimals";
import { isUnder, nav } from "@/app/ui/nav";
import { OriginalityStrip, SmallStrip } from "@/app/ui/originalityStrip";
import { Table } from "@/app/ui/table";

describe("a table", () => {
	it("lines its figures up on the decimal sign", () => {
		const figures = ["1 234.50", "9.995", "36", "−12.00", ""];
		const padded = figures.map((figure, line) => figure + (padsToDecimal(figures)[line] ?? ""));
		expect(padded.map((figure) => figure.length - figure.lastIndexOf("."))).toEqual([4, 4, 4, 4, 4]);
	});

	it("reads a comma as a decimal sign where the shop writes one, and needs no room where no figure has places", () => {
		expect(padsToDecimal(["1.234,5", "20,25"])).toEqual(["5", ""]);
		expect(padsToDecimal(["3", "12"])).toEqual(["", ""]);
	});

	it("loses no label when its rows are stacked", () => {
		const html = renderToStaticMarkup(
			<Table
				caption="Lines"
				rows={[{ id: "1", name: "Lamp", paid: "12.50" }]}
				rowKey={(row) => row.id}
				columns={[
					{ key: "name", head: "Line", main: true, cell: (row) => row.name },
					{ key: "paid", head: "EUR", align: "decimal", cell: (row) => row.paid, foot: "12.50" },
				]}
			/>,
		);
		const root = document.createElement("div");
		root.innerHTML = html;
		expect([...root.querySelectorAll("tbody td, tfoot td:not([data-none])")].map((cell) => cell.getAttribute("data-label"))).toEqual([
			"EUR",
			"EUR",
		]);
		expect(root.querySelector("tbody th")?.getAttribute("scope")).toBe("row");
		expect(root.querySelector("caption")?.textContent).toBe("Lines");
	});

	it("without a row shows what to do instead", () => {
		const html = renderToStaticMarkup(
			<Table caption="Bags" rows={[]} rowKey={String} columns={[{ key: "a", head: "Bag", cell: String }]} empty={<p>No bags yet.</p>} />,
		);
		expect(html).toBe("<p>No bags yet.</p>");
	});
});

describe("the originality strip", () => {
	const marks = [
		{ id: "1", name: "Lamp", state: "not-original" as const },
		{ id: "2", name: "Reflector", state: "kept" as const },
		{ id: "3", name: "Lens", state: "kept" as const },
	];
	it("names every mark with its word, and is one stop for the keyboard", () => {
		const root = document.createElement("div");
		root.innerHTML = renderToStaticMarkup(<OriginalityStrip label="Now" groups={[{ name: "Lamp house", marks }]} />);
		const buttons = [...root.querySelectorAll("button")];
		expect(buttons.map((button) => button.getAttribute("aria-label"))).toEqual([
			"Lamp: not original",
			"Reflector: original, kept",
			"Lens: original, kept",
		]);
		expect(buttons.map((button) => button.tabIndex)).toEqual([0, -1, -1]);
	});
	it("as one picture says its counts", () => {
		expect(renderToStaticMarkup(<SmallStrip label="Now" marks={marks} />)).toContain('aria-label="Now: 2 original, kept; 1 not original"');
	});
});

describe("the bar at the top", () => {
	const marked = (path: string) => nav.filter((entry) => isUnder(entry, path)).map((entry) => entry.label);
	it("marks the entry a page belongs to, and one at most", () => {
		expect(["/", "/machines/12/build", "/store", "/bags/12-0208-Q", "/buying/7", "/people/me", "/find"].map(marked)).toEqual([
			["Shop"],
			["Shop"],
			["Store"],
			["Store"],
			["Buying"],
			["People"],
			[],
		]);
	});
});
