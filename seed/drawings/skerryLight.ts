// The portrait of machine 12: a lighthouse behind glass, its beam leaving the cabinet.

import { lettering } from "@/seed/drawings/lettering";
import {
	brass,
	card,
	circle,
	clipTo,
	deep,
	ellipse,
	foam,
	gold,
	group,
	ink,
	mist,
	oxide,
	path,
	poly,
	rect,
	rust,
	sea,
	straw,
	stroke,
	tagStock,
	umber,
	verdigris,
	waves,
	wood,
} from "@/seed/drawings/pen";

const cabinet = { left: 540, right: 1060, top: 215, sill: 812, foot: 1090 } as const;
const lantern = { x: 842, y: 372 } as const;

function night(): string[] {
	return [
		rect(0, 0, 1600, 1200, { fill: deep }),
		circle(290, 180, 74, { fill: mist }),
		circle(322, 164, 66, { fill: deep }),
		...[
			[120, 120],
			[430, 90],
			[210, 420],
			[1290, 130],
			[1480, 260],
			[1390, 70],
			[1180, 300],
			[70, 560],
			[1530, 520],
		].map(([x = 0, y = 0]) => circle(x, y, 5, { fill: mist, opacity: 0.7 })),
		// The beam: two wedges from the lantern, out over the whole sheet.
		poly(
			[
				[lantern.x, lantern.y - 16],
				[0, 190],
				[0, 560],
				[lantern.x, lantern.y + 16],
			],
			{ fill: straw, opacity: 0.2 },
		),
		poly(
			[
				[lantern.x, lantern.y - 9],
				[0, 270],
				[0, 480],
				[lantern.x, lantern.y + 9],
			],
			{ fill: straw, opacity: 0.28 },
		),
		poly(
			[
				[lantern.x, lantern.y - 16],
				[1600, 190],
				[1600, 560],
				[lantern.x, lantern.y + 16],
			],
			{ fill: straw, opacity: 0.2 },
		),
		poly(
			[
				[lantern.x, lantern.y - 9],
				[1600, 270],
				[1600, 480],
				[lantern.x, lantern.y + 9],
			],
			{ fill: straw, opacity: 0.28 },
		),
		// The sea behind, and the floor the machine stands on.
		path(`${waves(-20, 760, 1660, 130, 46)} V1200 H-20 Z`, { fill: sea }),
		path(`${waves(-80, 850, 1760, 170, 52)} V1200 H-80 Z`, { fill: "#154a43" }),
		path(`${waves(-40, 950, 1700, 210, 56)} V1200 H-40 Z`, { fill: "#0f3833" }),
		rect(0, 1062, 1600, 138, { fill: tagStock }),
		rect(0, 1062, 1600, 10, { fill: "#c9b27a" }),
		ellipse(800, 1118, 340, 24, { fill: "#b79f66" }),
	];
}

function scene(): string[] {
	const { left, right, top, sill } = cabinet;
	const inner = { x: left + 34, y: top + 24, width: right - left - 68, height: sill - top - 48 };
	const { x, y } = lantern;
	const rock = "#2b3230";
	const tower = (from: number, until: number): [number, number][] => {
		const half = (at: number) => 44 + ((at - 430) / 230) * 28;
		return [
			[x - half(from), from],
			[x + half(from), from],
			[x + half(until), until],
			[x - half(until), until],
		];
	};
	return [
		group(
			[
				rect(inner.x, inner.y, inner.width, inner.height, { fill: "#2f8577" }),
				rect(inner.x, inner.y, inner.width, 150, { fill: "#247466" }),
				// The beam inside the case.
				poly(
					[
						[x, y - 18],
						[inner.x, y - 96],
						[inner.x, y + 80],
						[x, y + 18],
					],
					{ fill: straw },
				),
				poly(
					[
						[x, y - 18],
						[right, y - 96],
						[right, y + 80],
						[x, y + 18],
					],
					{ fill: straw },
				),
				poly(
					[
						[x, y - 8],
						[inner.x, y - 40],
						[inner.x, y + 26],
						[x, y + 8],
					],
					{ fill: "#fbeec0" },
				),
				poly(
					[
						[x, y - 8],
						[right, y - 40],
						[right, y + 26],
						[x, y + 8],
					],
					{ fill: "#fbeec0" },
				),
				// Sea, far to near, with the ship between.
				path(`${waves(inner.x - 30, 640, 560, 74, 24)} V900 H${inner.x - 30} Z`, { fill: foam }),
				group(
					[
						path("M-92 0 H92 C86 30 70 48 52 48 H-56 C-74 48 -88 30 -92 0 Z", { fill: rust }),
						rect(-92, -8, 184, 12, { fill: card }),
						rect(-48, -42, 92, 36, { fill: card }),
						rect(-20, -92, 32, 52, { fill: gold }),
						rect(-20, -92, 32, 14, { fill: ink }),
						stroke(
							[
								[62, -8],
								[62, -96],
							],
							{ stroke: ink, width: 6 },
						),
						poly(
							[
								[62, -94],
								[98, -82],
								[62, -68],
							],
							{ fill: rust },
						),
						circle(-30, -24, 7, { fill: verdigris }),
						circle(-4, -24, 7, { fill: verdigris }),
						circle(22, -24, 7, { fill: verdigris }),
					],
					"translate(666 650) rotate(-6) scale(0.86)",
				),
				path(`${waves(inner.x - 60, 706, 600, 92, 28)} V900 H${inner.x - 60} Z`, { fill: "#4aa392" }),
				// Rock and tower.
				poly(
					[
						[700, 812],
						[734, 728],
						[772, 700],
						[752, 656],
						[932, 650],
						[948, 688],
						[976, 712],
						[1006, 764],
						[1034, 812],
					],
					{ fill: rock },
				),
				poly(
					[
						[752, 656],
						[806, 700],
						[786, 812],
						[700, 812],
						[734, 720],
					],
					{ fill: "#3b4441" },
				),
				poly(tower(430, 660), { fill: card }),
				poly(tower(486, 540), { fill: oxide }),
				poly(tower(596, 650), { fill: oxide }),
				poly(
					[
						[x, 430],
						[x + 44, 430],
						[x + 72, 660],
						[x, 660],
					],
					{ fill: ink, opacity: 0.13 },
				),
				rect(x - 14, 556, 28, 34, { fill: ink }, 14),
				rect(x - 62, 414, 124, 18, { fill: ink }, 4),
				...[-52, -26, 0, 26, 52].map((dx) =>
					stroke(
						[
							[x + dx, 414],
							[x + dx, 394],
						],
						{ stroke: ink, width: 5 },
					),
				),
				stroke(
					[
						[x - 60, 394],
						[x + 60, 394],
					],
					{ stroke: ink, width: 5 },
				),
				rect(x - 34, 340, 68, 74, { fill: "#fff6d2" }),
				...[-34, -11, 11, 34].map((dx) =>
					stroke(
						[
							[x + dx, 340],
							[x + dx, 414],
						],
						{ stroke: ink, width: 6 },
					),
				),
				circle(x, y, 15, { fill: gold }),
				path(`M${x - 46} 342 C${x - 40} 306 ${x - 18} 292 ${x} 288 C${x + 18} 292 ${x + 40} 306 ${x + 46} 342 Z`, { fill: oxide }),
				stroke(
					[
						[x, 290],
						[x, 258],
					],
					{ stroke: ink, width: 6 },
				),
				circle(x, 284, 9, { fill: ink }),
				path(`${waves(inner.x - 20, 772, 560, 64, 22)} V900 H${inner.x - 20} Z`, { fill: sea }),
			],
			undefined,
			"case",
		),
		// Light on the glass.
		group(
			[
				poly(
					[
						[inner.x + 30, inner.y],
						[inner.x + 96, inner.y],
						[inner.x - 60, inner.y + 420],
						[inner.x - 126, inner.y + 420],
					],
					{ fill: card, opacity: 0.16 },
				),
				poly(
					[
						[inner.x + 118, inner.y],
						[inner.x + 136, inner.y],
						[inner.x - 20, inner.y + 420],
						[inner.x - 38, inner.y + 420],
					],
					{ fill: card, opacity: 0.16 },
				),
			],
			undefined,
			"case",
		),
	];
}

function woodwork(): string[] {
	const { left, right, top, sill, foot } = cabinet;
	return [
		...[left + 44, right - 44].flatMap((x) => [
			rect(x - 10, foot - 4, 20, 26, { fill: ink }),
			rect(x - 28, foot + 18, 56, 14, { fill: ink }, 6),
		]),
		rect(left, top, right - left, foot - top, { fill: verdigris }, 10),
		rect(right - 26, top, 26, foot - top, { fill: sea }, 10),
		rect(left + 18, top + 10, right - left - 36, sill - top - 20, { fill: ink }, 8),
	];
}

function front(): string[] {
	const { left, right, sill } = cabinet;
	const door = { x: 702, y: 872, width: 196, height: 158 };
	return [
		// Corner trims, bright metal.
		...[left + 9, right - 9].flatMap((x) => [
			stroke(
				[
					[x, 236],
					[x, sill - 20],
				],
				{ stroke: straw, width: 12 },
			),
			...[270, 395, 520, 645, 770].map((y) => circle(x, y, 5, { fill: brass })),
		]),
		rect(left, sill - 6, right - left, 26, { fill: gold }),
		rect(left, sill + 14, right - left, 6, { fill: brass }),
		// Coin door.
		rect(door.x, door.y, door.width, door.height, { fill: tagStock, stroke: brass, width: 6 }, 10),
		rect(door.x + 26, door.y + 28, 58, 92, { fill: card, stroke: ink, width: 5 }, 8),
		rect(door.x + 50, door.y + 44, 10, 46, { fill: ink }, 5),
		rect(door.x + 108, door.y + 28, 62, 40, { fill: ink }, 6),
		rect(door.x + 112, door.y + 84, 54, 36, { fill: oxide }, 6),
		circle(door.x + 98, door.y + 138, 8, { fill: brass }),
		...[
			[8, 8],
			[188, 8],
			[8, 150],
			[188, 150],
		].map(([dx = 0, dy = 0]) => circle(door.x + dx, door.y + dy, 5, { fill: brass })),
		// Plate and vents.
		rect(580, 882, 92, 54, { fill: straw, stroke: brass, width: 4 }, 4),
		lettering("NO. 0418", { x: 626, y: 902, height: 15, colour: ink, anchor: "middle", fit: 76 }),
		...[0, 1, 2, 3, 4].map((index) => rect(940, 882 + index * 20, 82, 9, { fill: sea }, 4)),
	];
}

function sign(): string[] {
	return [
		rect(560, 70, 480, 136, { fill: umber }, 14),
		rect(560, 194, 480, 24, { fill: wood }, 4),
		rect(578, 86, 444, 104, { fill: "#fff2cc" }, 8),
		rect(578, 86, 444, 104, { stroke: gold, width: 5 }, 8),
		lettering("SKERRY LIGHT", { x: 800, y: 114, height: 48, colour: oxide, weight: 0.19, anchor: "middle", fit: 400 }),
	];
}

export const skerryLightPortrait = (): { shapes: string[]; definitions: string[] } => ({
	definitions: [
		clipTo("case", rect(cabinet.left + 34, cabinet.top + 24, cabinet.right - cabinet.left - 68, cabinet.sill - cabinet.top - 48, {}, 4)),
	],
	shapes: [...night(), ...woodwork(), ...scene(), ...front(), ...sign()],
});
