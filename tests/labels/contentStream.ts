// What a PDF draws, read from its own drawing: a small interpreter of content streams (ISO 32000-1, 8.2 to 9.4) that knows
// nothing of the program. Millimetres from the page's top left corner.

import { inflateSync } from "node:zlib";

export type Box = { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };
export type Page = {
	readonly width: number;
	readonly height: number;
	/** Each path that was filled or stroked, by the rectangles and points that it is made of. */
	readonly paths: readonly { readonly box: Box; readonly rectangles: number; readonly how: "fill" | "stroke" }[];
	/** Each piece of text: where its base line begins, and the height of its em. */
	readonly texts: readonly { readonly x: number; readonly y: number; readonly em: number }[];
	/** Every colour that was set, as its numbers. */
	readonly colours: readonly string[];
};

type Matrix = readonly [number, number, number, number, number, number];
const MM = 25.4 / 72;

/** `first` and then `second`, as the operator cm joins them. */
const joined = ([a, b, c, d, e, f]: Matrix, [A, B, C, D, E, F]: Matrix): Matrix => [
	a * A + b * C,
	a * B + b * D,
	c * A + d * C,
	c * B + d * D,
	e * A + f * C + E,
	e * B + f * D + F,
];

/** The pages of a PDF whose objects are not packed, as pdfkit writes them. */
export function pagesDrawn(pdf: Buffer): Page[] {
	const text = pdf.toString("latin1");
	const objects = new Map([...text.matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g)].map(([, id, body]) => [id, body ?? ""]));
	const order = [...objects.values()].find((body) => /\/Type \/Pages\b/.test(body)) ?? "";
	return [...(/\/Kids \[([^\]]*)\]/.exec(order)?.[1] ?? "").matchAll(/(\d+) 0 R/g)].map(([, id]) => {
		const page = objects.get(id ?? "") ?? "";
		const [, width = "", height = ""] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(page) ?? [];
		const contents = objects.get(/\/Contents (\d+) 0 R/.exec(page)?.[1] ?? "") ?? "";
		const packed = /stream\n([\s\S]*)\nendstream/.exec(contents)?.[1] ?? "";
		return drawn(inflateSync(Buffer.from(packed, "latin1")).toString("latin1"), Number(width), Number(height));
	});
}

function drawn(content: string, width: number, height: number): Page {
	const paths: Page["paths"][number][] = [];
	const texts: Page["texts"][number][] = [];
	const colours = new Set<string>();
	let now: Matrix = [1, 0, 0, 1, 0, 0];
	const kept: Matrix[] = [];
	let given: number[] = [];
	let points: [number, number][] = [];
	let rectangles = 0;
	let line: Matrix = now;
	let size = 0;
	const at = (x: number, y: number): [number, number] => [
		(now[0] * x + now[2] * y + now[4]) * MM,
		(height - (now[1] * x + now[3] * y + now[5])) * MM,
	];
	const six = (): Matrix => given.slice(-6) as unknown as Matrix;
	const paint = (how: "fill" | "stroke"): void => {
		const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
		paths.push({ box: { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) }, rectangles, how });
		points = [];
		rectangles = 0;
	};
	for (const token of content.match(/<[0-9a-fA-F\s]*>|\[|\]|\/[^\s/[\]<>]+|[^\s/[\]<>]+/g) ?? []) {
		if (/^[-+.\d]/.test(token)) {
			given.push(Number(token));
			continue;
		}
		const [a = 0, b = 0, c = 0, d = 0] = given;
		switch (token) {
			case "q":
				kept.push(now);
				break;
			case "Q":
				now = kept.pop() ?? now;
				break;
			case "cm":
				now = joined(six(), now);
				break;
			case "re":
				points.push(at(a, b), at(a + c, b + d));
				rectangles += 1;
				break;
			case "m":
			case "l":
				points.push(at(a, b));
				break;
			case "f":
			case "f*":
				paint("fill");
				break;
			case "S":
				paint("stroke");
				break;
			case "scn":
			case "SCN":
			case "rg":
			case "g":
				colours.add(given.join(" "));
				break;
			case "Tf":
				size = given.at(-1) ?? 0;
				break;
			case "Tm":
				line = six();
				break;
			case "TJ":
			case "Tj": {
				const whole = joined(line, now);
				texts.push({ x: whole[4] * MM, y: (height - whole[5]) * MM, em: size * Math.hypot(whole[2], whole[3]) * MM });
				break;
			}
		}
		if (!/^[<[\]/]/.test(token)) given = [];
	}
	return { width: width * MM, height: height * MM, paths, texts, colours: [...colours] };
}
