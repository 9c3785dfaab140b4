// 300 labels in one PDF: laid out and drawn, against the same words and boxes put down by bare pdfkit in a font that it has
// built in, at places that are known already.

import PDFDocument from "pdfkit";
import { labelFonts } from "@/lib/labels/labelFonts";
import { layoutLabel } from "@/lib/labels/labelLayout";
import { labelPdf } from "@/lib/labels/labelPdf";
import { qrModules } from "@/lib/labels/qrModules";
import { good, manyLabels, printing, SHOP_ADDRESS, stock } from "@/tests/labels/printed";
import { percentile, report, timed } from "./timing";

const COUNT = 300;
const GOAL_MS = 2000;
const POINTS_PER_MM = 72 / 25.4;

export async function labels(): Promise<void> {
	const contents = manyLabels(COUNT);
	for (const id of ["a4-21", "roll-62x29"]) {
		const print = printing({ stock: stock(id), address: SHOP_ADDRESS });
		const made = await timed(7, async () => good(await labelPdf(contents, print)), 1);
		const tools = { type: labelFonts(), modulesOf: qrModules, address: SHOP_ADDRESS };
		const marks = contents.map((content) => good(layoutLabel(content, print.stock, tools)).marks);
		const bare = await timed(
			7,
			() =>
				new Promise<void>((resolve) => {
					const document = new PDFDocument({ autoFirstPage: false });
					document.on("data", () => undefined);
					document.on("end", () => resolve());
					for (const ofOne of marks) {
						document.addPage({ size: [62 * POINTS_PER_MM, 29 * POINTS_PER_MM], margin: 0 });
						for (const mark of ofOne) {
							if (mark.kind === "text") document.fontSize(mark.size * POINTS_PER_MM).text(mark.text, mark.x, mark.y, { lineBreak: false });
							if (mark.kind === "box") document.rect(mark.x, mark.y, mark.width, mark.height).fill("black");
						}
					}
					document.end();
				}),
			1,
		);
		report(`${COUNT} labels in one PDF on ${print.stock.name}, against their words and boxes in bare pdfkit`, made, bare, null);
		const median = percentile(made, 50);
		console.log(
			`  the goal is ${GOAL_MS / 1000} s on the shop's computer: ${median <= GOAL_MS ? "met" : "not met"} here, ${(median / 1000).toFixed(2)} s`,
		);
	}
}
