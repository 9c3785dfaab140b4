// Shapes as SVG text, and the house's colours.

export const ink = "#1c2424";
export const paper = "#f5f1e6";
export const card = "#fffdf6";
export const line = "#d8d0bb";
export const second = "#59625f";
export const verdigris = "#1d6b5f";
export const oxide = "#9b3220";
export const brass = "#7d5a10";
export const tagStock = "#ecdcb4";
/** Lighter and darker neighbours of the three, for flat areas of a picture. */
export const sea = "#123f39";
export const deep = "#0e2a28";
export const foam = "#7cc8b6";
export const mist = "#c9ded3";
export const gold = "#d9a83f";
export const straw = "#e9c877";
export const rust = "#c4573a";
export const blush = "#e9b79a";
export const umber = "#4a2f1b";
export const wood = "#7a4a25";
export const steel = "#8c9894";
export const silver = "#c4cbc5";

export type Paint = {
	readonly fill?: string;
	readonly stroke?: string;
	readonly width?: number;
	readonly opacity?: number;
	readonly dash?: string;
};

const painted = ({ fill = "none", stroke, width = 4, opacity, dash }: Paint): string =>
	`fill="${fill}"${stroke === undefined ? "" : ` stroke="${stroke}" stroke-width="${width}" stroke-linejoin="round" stroke-linecap="round"`}${opacity === undefined ? "" : ` opacity="${opacity}"`}${dash === undefined ? "" : ` stroke-dasharray="${dash}"`}`;

const n = (value: number): string => String(Math.round(value * 100) / 100);

export const rect = (x: number, y: number, width: number, height: number, paint: Paint, radius = 0): string =>
	`<rect x="${n(x)}" y="${n(y)}" width="${n(width)}" height="${n(height)}"${radius === 0 ? "" : ` rx="${n(radius)}"`} ${painted(paint)}/>`;

export const circle = (x: number, y: number, radius: number, paint: Paint): string =>
	`<circle cx="${n(x)}" cy="${n(y)}" r="${n(radius)}" ${painted(paint)}/>`;

export const ellipse = (x: number, y: number, rx: number, ry: number, paint: Paint): string =>
	`<ellipse cx="${n(x)}" cy="${n(y)}" rx="${n(rx)}" ry="${n(ry)}" ${painted(paint)}/>`;

export const path = (d: string, paint: Paint): string => `<path d="${d}" ${painted(paint)}/>`;

export const poly = (points: readonly (readonly [number, number])[], paint: Paint): string =>
	`<polygon points="${points.map(([x, y]) => `${n(x)},${n(y)}`).join(" ")}" ${painted(paint)}/>`;

export const stroke = (points: readonly (readonly [number, number])[], paint: Paint): string =>
	`<polyline points="${points.map(([x, y]) => `${n(x)},${n(y)}`).join(" ")}" ${painted(paint)}/>`;

export const group = (shapes: readonly string[], transform?: string, clip?: string): string =>
	`<g${transform === undefined ? "" : ` transform="${transform}"`}${clip === undefined ? "" : ` clip-path="url(#${clip})"`}>${shapes.join("")}</g>`;

export const clipTo = (id: string, shape: string): string => `<clipPath id="${id}">${shape}</clipPath>`;

/** Angle in degrees clockwise from the right, as a point on a circle. */
export const around = (x: number, y: number, radius: number, degrees: number): [number, number] => [
	x + radius * Math.cos((degrees * Math.PI) / 180),
	y + radius * Math.sin((degrees * Math.PI) / 180),
];

/** A row of waves from `x` to `x + length`. */
export function waves(x: number, y: number, length: number, step: number, rise: number): string {
	const count = Math.ceil(length / step);
	return `M${n(x)} ${n(y)} ${Array.from({ length: count }, () => `q${n(step / 2)} ${n(-rise)} ${n(step)} 0`).join(" ")}`;
}

/** Rays of a poster sun: wedges from one point. */
export const rays = (x: number, y: number, radius: number, count: number, fill: string, opacity = 1, turn = 0): string =>
	Array.from({ length: count }, (_, index) => {
		const from = (360 / count) * index + turn;
		return poly([[x, y], around(x, y, radius, from), around(x, y, radius, from + 180 / count)], { fill, opacity });
	}).join("");

export const svg = (width: number, height: number, shapes: readonly string[], definitions: readonly string[] = []): string =>
	`<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}"><defs>${definitions.join("")}</defs>${shapes.join("")}</svg>`;
