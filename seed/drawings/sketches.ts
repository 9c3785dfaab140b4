// Bench sketches, one for each kind of part: plain shapes around a middle at 0, 0, about 600 wide and 440 high.

import type { SketchKind } from "@/seed/data/types";
import { lettering } from "@/seed/drawings/lettering";
import {
	around,
	brass,
	card,
	circle,
	ellipse,
	foam,
	gold,
	group,
	ink,
	mist,
	oxide,
	type Paint,
	path,
	poly,
	rect,
	rust,
	sea,
	second,
	silver,
	steel,
	straw,
	stroke,
	tagStock,
	verdigris,
	wood,
} from "@/seed/drawings/pen";

const OUTLINE = 6;
const lined = (fill: string, width = OUTLINE): Paint => ({ fill, stroke: ink, width });
const pen = (width = OUTLINE): Paint => ({ stroke: ink, width });

/** One screw, head up, its slot turned a little more with each. */
export function screw(x: number, y: number, scale: number, turn: number): string {
	return group(
		[
			path("M-17 -6 H17 L14 96 L0 124 L-14 96 Z", lined(silver, 5)),
			...[10, 30, 50, 70, 90].map((dy) =>
				stroke(
					[
						[-17 + dy / 40, dy],
						[17 - dy / 40, dy + 10],
					],
					pen(4),
				),
			),
			path("M-40 -6 C-40 -34 -22 -46 0 -46 S40 -34 40 -6 Z", lined(straw, 5)),
			group([rect(-22, -5, 44, 9, { fill: ink }, 4)], `translate(0 -30) rotate(${turn})`),
		],
		`translate(${x.toFixed(1)} ${y.toFixed(1)}) scale(${scale})`,
	);
}

const terminal = (x: number, y: number): string[] => [
	circle(x, y, 12, lined(gold, 5)),
	stroke(
		[
			[x - 7, y + 5],
			[x + 7, y - 5],
		],
		pen(4),
	),
];
const hole = (x: number, y: number, radius = 10): string => circle(x, y, radius, lined(card, 5));
const corners = (width: number, height: number): [number, number][] => [
	[-width, -height],
	[width, -height],
	[-width, height],
	[width, height],
];

function toothed(radius: number, teeth: number, depth: number, paint: Paint): string {
	const step = 360 / teeth;
	const points = Array.from({ length: teeth }, (_, index) => index * step).flatMap((angle) => [
		around(0, 0, radius - depth, angle - step * 0.3),
		around(0, 0, radius, angle - step * 0.18),
		around(0, 0, radius, angle + step * 0.18),
		around(0, 0, radius - depth, angle + step * 0.3),
	]);
	return poly(points, paint);
}

const sketches: Readonly<Record<SketchKind, () => string[]>> = {
	ballast: () => [
		rect(-260, -80, 520, 170, lined("#3c4744"), 10),
		rect(-260, -80, 60, 170, lined(steel)),
		rect(200, -80, 60, 170, lined(steel)),
		hole(-230, 5),
		hole(230, 5),
		rect(-130, -42, 260, 94, lined(tagStock, 4), 4),
		...[-16, 8, 32].map((y) =>
			stroke(
				[
					[-106, y],
					[y === 32 ? 40 : 106, y],
				],
				{ stroke: second, width: 6 },
			),
		),
		path("M-200 -80 C-210 -150 -150 -170 -160 -210", { stroke: "#6b4425", width: 12 }),
		path("M-170 -80 C-172 -140 -110 -150 -110 -206", { stroke: "#3b6ea5", width: 12 }),
	],
	belt: () => [
		path("M-150 -130 H150 A130 130 0 0 1 150 130 H-150 A130 130 0 0 1 -150 -130 Z", pen(46)),
		path("M-150 -130 H150 A130 130 0 0 1 150 130 H-150 A130 130 0 0 1 -150 -130 Z", { stroke: "#48524f", width: 30 }),
		...Array.from({ length: 9 }, (_, index) =>
			stroke(
				[
					[-140 + index * 36, -142],
					[-130 + index * 36, -118],
				],
				{ stroke: ink, width: 5 },
			),
		),
		...Array.from({ length: 9 }, (_, index) =>
			stroke(
				[
					[-140 + index * 36, 118],
					[-130 + index * 36, 142],
				],
				{ stroke: ink, width: 5 },
			),
		),
	],
	block: () => [
		rect(-300, -90, 600, 180, lined(tagStock), 8),
		...Array.from({ length: 6 }, (_, index) => index).flatMap((index) => [
			rect(-278 + index * 94, -66, 82, 132, lined(card, 4), 6),
			...terminal(-237 + index * 94, -34),
			...terminal(-237 + index * 94, 34),
			lettering(String(index + 1), { x: -237 + index * 94, y: -126, height: 22, colour: ink, anchor: "middle" }),
		]),
	],
	board: () => [
		rect(-270, -180, 540, 360, lined("#2a7d6c"), 10),
		...corners(244, 154).map(([x, y]) => hole(x, y, 12)),
		rect(-80, -70, 160, 120, lined(ink), 6),
		...[-60, -30, 0, 30, 60].flatMap((x) => [
			stroke(
				[
					[x, -70],
					[x, -96],
				],
				{ stroke: silver, width: 7 },
			),
			stroke(
				[
					[x, 50],
					[x, 76],
				],
				{ stroke: silver, width: 7 },
			),
		]),
		rect(-200, 110, 400, 46, lined(sea, 5), 4),
		...Array.from({ length: 6 }, (_, index) => circle(-166 + index * 66, 133, 12, lined(silver, 4))),
		circle(-160, -60, 34, lined(silver)),
		rect(130, -110, 80, 44, lined(card, 5), 4),
		path("M-126 -60 H-80 M80 -20 H160 V-66 M-40 76 V110 M40 76 V110", { stroke: foam, width: 6 }),
	],
	bush: () => [
		ellipse(0, 60, 170, 70, lined("#3c4744")),
		path("M-170 60 V-60 A170 70 0 0 1 170 -60 V60", lined("#3c4744")),
		ellipse(0, -60, 170, 70, lined("#56625f")),
		ellipse(0, -60, 70, 28, lined(ink)),
		path("M-120 0 L-104 40 L-126 80 M90 10 L110 46 L96 96", { stroke: ink, width: 5 }),
	],
	buzzer: () => [
		rect(-210, -120, 420, 240, lined(wood), 16),
		circle(-50, 0, 96, lined(silver)),
		circle(-50, 0, 70, lined(gold, 5)),
		circle(-50, 0, 14, lined(ink, 4)),
		...[0, 1, 2].map((index) =>
			path(`M${86 + index * 34} ${-50 - index * 14} A${70 + index * 30} ${70 + index * 30} 0 0 1 ${86 + index * 34} ${50 + index * 14}`, {
				stroke: card,
				width: 8,
			}),
		),
		...corners(186, 96).map(([x, y]) => hole(x, y, 8)),
	],
	cam: () => [
		path(
			"M-160 20 C-160 -90 -70 -170 40 -170 C100 -170 120 -130 150 -80 C180 -30 180 40 130 100 C80 160 -10 180 -80 150 C-130 130 -160 80 -160 20 Z",
			lined(gold),
		),
		path("M34 -172 L52 -132 L74 -170", { fill: ink }),
		circle(0, 0, 48, lined(silver)),
		circle(0, 0, 24, lined(card, 5)),
		stroke(
			[
				[0, -48],
				[0, -74],
			],
			{ stroke: oxide, width: 9 },
		),
		rect(120, -196, 130, 26, lined(steel), 6),
		circle(126, -172, 20, lined(silver, 5)),
	],
	casting: () => [
		path("M-120 180 L-90 -120 C-88 -164 -50 -190 0 -190 S88 -164 90 -120 L120 180 Z", lined(steel)),
		path("M-180 180 H180 V216 H-180 Z", lined("#6d7975")),
		...[-150, 150].map((x) => hole(x, 198, 9)),
		path("M-60 150 L-46 -40 H46 L60 150 Z", lined("#6d7975", 5)),
		circle(0, -118, 34, lined(card, 5)),
		path("M-90 60 H-52 M52 60 H90 M-84 -10 H-48 M48 -10 H84", pen(5)),
	],
	cord: () => [
		path(
			"M-250 150 C-330 20 -180 -150 -20 -150 C150 -150 200 -10 80 50 C-20 100 -140 40 -90 -30 C-50 -84 70 -70 180 -20 C240 6 250 80 210 140",
			pen(30),
		),
		path(
			"M-250 150 C-330 20 -180 -150 -20 -150 C150 -150 200 -10 80 50 C-20 100 -140 40 -90 -30 C-50 -84 70 -70 180 -20 C240 6 250 80 210 140",
			{ stroke: "#66503b", width: 18 },
		),
		path("M176 132 C176 108 248 108 248 132 L240 196 H184 Z", lined(ink)),
		rect(192, 196, 13, 36, lined(gold, 4), 4),
		rect(220, 196, 13, 36, lined(gold, 4), 4),
	],
	coupling: () => [
		stroke(
			[
				[-300, 0],
				[300, 0],
			],
			pen(52),
		),
		stroke(
			[
				[-296, 0],
				[296, 0],
			],
			{ stroke: silver, width: 40 },
		),
		rect(-130, -96, 260, 192, lined(gold), 14),
		stroke(
			[
				[0, -96],
				[0, 96],
			],
			pen(8),
		),
		...[-66, 66].flatMap((x) => [
			circle(x, 0, 30, lined(brass, 5)),
			group([rect(-18, -4, 36, 8, { fill: ink }, 3)], `translate(${x} 0) rotate(${x > 0 ? 30 : -20})`),
		]),
		stroke(
			[
				[100, -96],
				[118, -60],
			],
			{ stroke: oxide, width: 8 },
		),
	],
	disc: () => [
		circle(0, 0, 208, lined(straw)),
		circle(0, 0, 166, { stroke: brass, width: 16, dash: "60 34" }),
		...[30, 150, 270].map((angle) => hole(...around(0, 0, 74, angle), 12)),
		circle(0, 0, 34, lined(silver)),
		circle(0, 0, 14, lined(card, 5)),
		poly([around(0, 0, 200, -90), around(0, 0, 176, -94), around(0, 0, 176, -86)], { fill: oxide }),
	],
	door: () => [
		rect(-180, -210, 360, 420, lined(verdigris), 12),
		rect(-150, -180, 300, 360, { stroke: sea, width: 8 }, 8),
		rect(-110, -140, 90, 140, lined(silver), 8),
		rect(-72, -120, 14, 80, { fill: ink }, 6),
		rect(16, -140, 100, 66, lined(ink), 6),
		circle(90, 110, 26, lined(gold)),
		rect(86, 98, 8, 26, { fill: ink }, 3),
		...[-150, 150].map((y) => rect(-204, y - 30, 30, 60, lined(steel, 5), 4)),
	],
	foot: () => [
		rect(-28, -200, 56, 230, lined(silver)),
		...Array.from({ length: 9 }, (_, index) =>
			stroke(
				[
					[-28, -184 + index * 22],
					[28, -174 + index * 22],
				],
				pen(4),
			),
		),
		poly(
			[
				[-80, 30],
				[80, 30],
				[96, 76],
				[-96, 76],
			],
			lined(steel),
		),
		path("M-150 160 C-150 110 -110 76 -70 76 H70 C110 76 150 110 150 160 Z", lined("#48524f")),
		rect(-162, 158, 324, 28, lined(ink), 8),
	],
	fuse: () => [
		path("M-200 -56 H200 V56 H-200 Z", lined(mist)),
		rect(-250, -66, 96, 132, lined(silver), 8),
		rect(154, -66, 96, 132, lined(silver), 8),
		path("M-154 0 C-80 -34 -40 34 30 0 S110 10 154 0", { stroke: oxide, width: 7 }),
		stroke(
			[
				[-130, -34],
				[120, -34],
			],
			{ stroke: card, width: 9 },
		),
	],
	gear: () => [
		toothed(206, 24, 30, lined(gold)),
		circle(0, 0, 138, lined(straw)),
		...[0, 72, 144, 216, 288].map((angle) => circle(...around(0, 0, 92, angle - 90), 30, lined(card))),
		circle(0, 0, 44, lined(silver)),
		circle(0, 0, 20, lined(card, 5)),
		rect(-6, -32, 12, 16, { fill: ink }),
	],
	glass: () => [
		rect(-270, -190, 540, 380, lined(mist), 6),
		poly(
			[
				[-180, -187],
				[-80, -187],
				[-240, 187],
				[-267, 187],
				[-267, 20],
			],
			{ fill: card, opacity: 0.7 },
		),
		poly(
			[
				[-40, -187],
				[0, -187],
				[-160, 187],
				[-200, 187],
			],
			{ fill: card, opacity: 0.7 },
		),
		...corners(270, 190).map(([x, y]) => rect(x - 26, y - 20, 52, 40, lined(gold, 5), 6)),
	],
	harness: () => [
		path("M-290 120 C-180 130 -130 40 -20 20 S170 -20 290 -130", pen(54)),
		path("M-290 120 C-180 130 -130 40 -20 20 S170 -20 290 -130", { stroke: "#b08d57", width: 42 }),
		...[-220, -150, -60, 20, 110, 190, 250].map((x, index) =>
			stroke(
				[
					[x, [102, 66, 8, -10, -30, -76, -120][index] ?? 0],
					[x + 16, [142, 118, 62, 44, 26, -30, -78][index] ?? 0],
				],
				{ stroke: card, width: 8 },
			),
		),
		path("M-110 66 C-130 130 -120 170 -150 210", { stroke: oxide, width: 11 }),
		path("M-92 60 C-98 140 -80 170 -100 214", { stroke: "#3b6ea5", width: 11 }),
		path("M130 -10 C150 70 180 100 170 170", { stroke: verdigris, width: 11 }),
		path("M146 -16 C180 60 220 90 222 160", { stroke: gold, width: 11 }),
		path("M-30 -6 C-40 -80 -10 -120 -30 -190", { stroke: ink, width: 11 }),
		...[
			[-150, 210],
			[-100, 214],
			[170, 170],
			[222, 160],
			[-30, -190],
		].map(([x = 0, y = 0]) => rect(x - 20, y - 12, 40, 26, lined(tagStock, 4), 4)),
	],
	holder: () => [
		rect(-240, -190, 100, 380, lined(card), 14),
		rect(140, -190, 100, 380, lined(card), 14),
		...[-190, 190].flatMap((x) => [
			rect(x - 8, -160, 16, 130, { fill: ink }, 6),
			circle(x, -30, 24, lined(silver)),
			...terminal(x - 22, 120),
			...terminal(x + 22, 120),
		]),
		lettering("L", { x: -190, y: 40, height: 40, colour: oxide, weight: 0.16, anchor: "middle" }),
		lettering("R", { x: 190, y: 40, height: 40, colour: oxide, weight: 0.16, anchor: "middle" }),
	],
	lamp: () => [
		path("M-92 40 C-160 -10 -170 -200 0 -206 C170 -200 160 -10 92 40 Z", lined("#fff2c4")),
		path("M-60 40 L-40 -60 L-14 -96 L12 -60 L36 -96 L60 40", { stroke: brass, width: 7 }),
		path("M-100 -60 C-100 -120 -70 -160 -30 -172", { stroke: card, width: 12 }),
		rect(-96, 40, 192, 120, lined(gold), 8),
		...[68, 98, 128].map((y) =>
			stroke(
				[
					[-96, y],
					[96, y],
				],
				pen(4),
			),
		),
		rect(-120, 84, 26, 22, lined(silver, 5), 4),
		rect(94, 84, 26, 22, lined(silver, 5), 4),
		path("M-60 160 H60 L40 200 H-40 Z", lined(ink)),
	],
	lever: () => [
		path("M-250 110 L170 -150 L206 -94 L-214 166 Z", lined(steel)),
		circle(-232, 138, 58, lined(gold)),
		circle(-232, 138, 24, lined(card, 5)),
		circle(188, -122, 70, lined(silver)),
		circle(188, -122, 34, lined(card, 5)),
		...[0.3, 0.5, 0.7].map((part) => circle(-232 + 420 * part, 138 - 260 * part, 14, lined(card, 5))),
	],
	mech: () => [
		rect(-190, -210, 380, 420, lined(silver), 14),
		path("M-130 -210 C-110 -60 60 -90 70 60 L70 210 H130 V40 C120 -140 -40 -110 -60 -210 Z", lined(tagStock)),
		circle(-96, -120, 52, lined(gold)),
		lettering("1", { x: -96, y: -146, height: 52, colour: ink, weight: 0.16, anchor: "middle" }),
		path("M-150 60 L-20 20 L-10 50 L-140 92 Z", lined(steel)),
		circle(-146, 76, 20, lined(brass)),
		path("M-120 140 q20 -22 36 0 q18 22 36 0 q18 -22 36 0", { stroke: ink, width: 7 }),
		...corners(164, 184).map(([x, y]) => hole(x, y, 10)),
	],
	motor: () => [
		rect(-150, -140, 300, 280, lined(steel), 26),
		...[-96, -48, 0, 48, 96].map((y) =>
			stroke(
				[
					[-120, y],
					[120, y],
				],
				{ stroke: "#6d7975", width: 10 },
			),
		),
		rect(-250, -110, 104, 220, lined("#6d7975"), 20),
		rect(150, -60, 50, 120, lined(silver)),
		rect(200, -18, 96, 36, lined(silver), 6),
		rect(-90, -62, 180, 116, lined(tagStock, 5), 6),
		lettering("MOTOR", { x: 0, y: -38, height: 26, colour: ink, anchor: "middle" }),
		stroke(
			[
				[-62, 16],
				[62, 16],
			],
			{ stroke: second, width: 6 },
		),
		stroke(
			[
				[-62, 34],
				[30, 34],
			],
			{ stroke: second, width: 6 },
		),
		poly(
			[
				[-170, 140],
				[170, 140],
				[200, 190],
				[-200, 190],
			],
			lined(ink),
		),
		path("M-240 -110 C-250 -190 -180 -180 -190 -214", { stroke: ink, width: 11 }),
		path("M-216 -110 C-214 -170 -140 -170 -140 -212", { stroke: oxide, width: 11 }),
	],
	panel: () => [
		rect(-270, -180, 540, 360, lined(wood), 6),
		...[-120, -60, 10, 70, 130].map((y, index) =>
			path(`M-250 ${y} C-120 ${y - 20 + index * 6} 60 ${y + 22 - index * 5} 250 ${y}`, { stroke: "#5f3818", width: 5 }),
		),
		...corners(240, 150).map(([x, y]) => hole(x, y, 12)),
		hole(0, -150, 12),
		hole(0, 150, 12),
	],
	paper: () => [
		poly(
			[
				[-170, -210],
				[110, -210],
				[170, -150],
				[170, 210],
				[-170, 210],
			],
			lined(card),
		),
		poly(
			[
				[110, -210],
				[110, -150],
				[170, -150],
			],
			lined(tagStock),
		),
		...[-150, -116, -82].map((y) =>
			stroke(
				[
					[-130, y],
					[y === -150 ? 70 : 120, y],
				],
				{ stroke: second, width: 7 },
			),
		),
		path("M-120 0 H-60 V-30 H20 V30 H-60 V0 M20 0 H110 M110 -30 V30 M124 -18 V18", pen(6)),
		circle(-20, 110, 40, pen(6)),
		path("M-130 110 H-60 M20 110 H120 M-34 110 L-20 84 L-6 136 L8 110", pen(6)),
	],
	plate: () => [
		rect(-230, -170, 460, 340, lined(silver), 14),
		...corners(190, 130).map(([x, y]) => hole(x, y, 18)),
		circle(0, 0, 74, lined(card)),
		...[90, 210, 330].map((angle) => hole(...around(0, 0, 112, angle), 11)),
		path("M-200 60 L-80 -120 M80 130 L200 -50", { stroke: card, width: 8, opacity: 0.8 }),
	],
	reel: () => [
		ellipse(-130, 0, 70, 180, lined(steel)),
		rect(-130, -180, 260, 360, { fill: card }),
		path("M-130 -180 H130 M-130 180 H130", pen()),
		ellipse(130, 0, 70, 180, lined(silver)),
		circle(130, 0, 26, lined(ink, 5)),
		lettering("3", { x: -6, y: -150, height: 60, colour: second, weight: 0.15, anchor: "middle" }),
		lettering("4", { x: -6, y: -32, height: 66, colour: ink, weight: 0.15, anchor: "middle" }),
		lettering("5", { x: -6, y: 92, height: 60, colour: second, weight: 0.15, anchor: "middle" }),
	],
	relay: () => [
		rect(-280, 120, 560, 60, lined(wood), 6),
		...[-200, 0, 200].flatMap((x) => [
			rect(x - 70, -20, 90, 140, lined(rust), 10),
			...[10, 38, 66, 94].map((y) =>
				stroke(
					[
						[x - 70, y],
						[x + 20, y],
					],
					{ stroke: oxide, width: 7 },
				),
			),
			path(`M${x - 80} -20 H${x + 50} V-60 H${x - 80} Z`, lined(silver)),
			...[0, 1, 2, 3].map((index) =>
				stroke(
					[
						[x + 30 + index * 16, 118],
						[x + 30 + index * 16, -150 + index * 12],
					],
					{ stroke: index % 2 === 0 ? gold : brass, width: 8 },
				),
			),
			rect(x + 20, 80, 70, 30, lined(ink, 4), 4),
		]),
	],
	rod: () => [
		group(
			[
				rect(-310, -22, 620, 44, lined(silver), 8),
				stroke(
					[
						[-290, -8],
						[290, -8],
					],
					{ stroke: card, width: 7 },
				),
				rect(-300, -22, 70, 18, { fill: ink, opacity: 0.35 }),
				rect(-90, -22, 60, 44, { fill: card, opacity: 0.7 }),
				rect(110, -22, 60, 44, { fill: card, opacity: 0.7 }),
			],
			"rotate(-14)",
		),
		path("M-290 168 H270 M-290 148 V188 M270 148 V188", pen(4)),
	],
	scene: () => [
		path(
			"M-290 200 C-270 60 -210 90 -170 -10 C-130 -110 -60 -60 -20 -160 C20 -220 90 -150 110 -70 C140 0 210 -10 240 80 C260 140 290 150 290 200 Z",
			lined("#5b6461"),
		),
		path("M-170 -10 C-130 40 -150 120 -190 200 M110 -70 C60 0 120 90 80 200 M-20 -160 C-40 -60 10 20 -30 200", { stroke: ink, width: 6 }),
		path("M-290 200 q45 -36 90 0 q45 -36 90 0 q45 -36 90 0 q45 -36 90 0 q45 -36 90 0 q45 -36 90 0", { stroke: foam, width: 14 }),
	],
	screws: () => [],
	seat: () => [
		path("M-220 -160 C-230 -200 -190 -214 -150 -210 H150 C190 -214 230 -200 220 -160 L200 40 H-200 Z", lined(rust)),
		path("M-230 40 H230 C260 60 260 130 230 150 H-230 C-260 130 -260 60 -230 40 Z", lined(oxide)),
		...[-110, 0, 110].map((x) => circle(x, -90, 14, lined(straw, 5))),
		...[-110, 0, 110].map((x) => path(`M${x} -200 V-104 M${x} -76 V36`, { stroke: oxide, width: 6 })),
		...[-190, 190].map((x) => rect(x - 16, 150, 32, 54, lined(wood, 5))),
	],
	shell: () => [
		path("M-300 20 C-180 -140 60 -190 300 0 C120 170 -120 170 -300 20 Z", lined(verdigris)),
		path("M-300 20 C-120 110 120 110 300 0 C120 170 -120 170 -300 20 Z", lined(card)),
		path("M-60 -128 C-20 -60 60 -66 100 -116 C60 -140 -10 -146 -60 -128 Z", lined(ink)),
		circle(180, -10, 28, lined(card)),
		path("M-290 20 L-340 -100 C-280 -90 -230 -60 -210 -40 Z", lined(oxide)),
	],
	ship: () => [
		path("M-250 40 H260 C240 130 200 170 140 170 H-160 C-220 170 -240 110 -250 40 Z", lined(rust)),
		rect(-150, -50, 260, 90, lined(card), 6),
		rect(-80, -160, 84, 110, lined(gold)),
		rect(-80, -160, 84, 32, lined(ink)),
		...[-100, -30, 40].map((x) => circle(x, -4, 18, lined(mist, 5))),
		stroke(
			[
				[170, 40],
				[170, -170],
			],
			pen(9),
		),
		poly(
			[
				[170, -166],
				[260, -134],
				[170, -100],
			],
			lined(oxide, 5),
		),
		stroke(
			[
				[0, 170],
				[0, 216],
			],
			{ stroke: silver, width: 14 },
		),
	],
	spring: () => [
		path("M-290 0 H-240 L-210 -90 L-160 90 L-110 -90 L-60 90 L-10 -90 L40 90 L90 -90 L140 90 L190 -90 L220 0 H290", {
			stroke: ink,
			width: 26,
		}),
		path("M-290 0 H-240 L-210 -90 L-160 90 L-110 -90 L-60 90 L-10 -90 L40 90 L90 -90 L140 90 L190 -90 L220 0 H290", {
			stroke: silver,
			width: 14,
		}),
		circle(-296, 0, 26, { stroke: ink, width: 14 }),
		circle(296, 0, 26, { stroke: ink, width: 14 }),
	],
	supply: () => [
		rect(-250, -150, 500, 300, lined(silver), 10),
		...Array.from({ length: 9 }, (_, row) => row).flatMap((row) =>
			Array.from({ length: 4 }, (_, col) => rect(-210 + row * 36, -116 + col * 36, 22, 22, { fill: steel }, 6)),
		),
		rect(-250, 70, 500, 80, lined(sea), 6),
		...Array.from({ length: 5 }, (_, index) => terminal(-190 + index * 95, 110)).flat(),
		rect(130, -116, 90, 130, lined(tagStock, 5), 4),
		lettering("24 V", { x: 175, y: -74, height: 24, colour: ink, anchor: "middle", fit: 72 }),
	],
	switch: () => [
		rect(-180, -70, 360, 180, lined(ink), 12),
		rect(-150, -40, 300, 120, { stroke: second, width: 5 }, 8),
		path("M-150 -84 C-60 -130 120 -150 250 -176", { stroke: ink, width: 18 }),
		path("M-150 -84 C-60 -130 120 -150 250 -176", { stroke: silver, width: 9 }),
		rect(-30, -96, 44, 30, lined(rust, 5), 6),
		...[-110, 0, 110].map((x) => rect(x - 14, 110, 28, 74, lined(gold, 5), 4)),
		hole(-130, 18, 15),
		hole(130, 18, 15),
	],
	timer: () => [
		rect(-270, 110, 540, 70, lined(steel), 8),
		circle(-80, -20, 140, lined(gold)),
		poly([around(-80, -20, 146, -100), around(-80, -20, 104, -90), around(-80, -20, 146, -80)], { fill: card, stroke: ink, width: 5 }),
		circle(-80, -20, 34, lined(silver)),
		circle(-80, -20, 14, lined(card, 5)),
		...[0, 1, 2, 3].map((index) =>
			stroke(
				[
					[120 + index * 30, 110],
					[120 + index * 30, -150 + index * 16],
				],
				{ stroke: index % 2 === 0 ? brass : gold, width: 10 },
			),
		),
		rect(100, 50, 140, 44, lined(ink, 5), 6),
		circle(72, -76, 20, lined(silver, 5)),
		stroke(
			[
				[84, -84],
				[120, -110],
			],
			pen(8),
		),
		lettering("REST", { x: -80, y: -196, height: 18, colour: oxide, anchor: "middle" }),
	],
	transformer: () => [
		rect(-190, -170, 380, 340, lined("#48524f"), 8),
		...Array.from({ length: 7 }, (_, index) =>
			stroke(
				[
					[-190, -130 + index * 44],
					[190, -130 + index * 44],
				],
				{ stroke: ink, width: 4 },
			),
		),
		rect(-120, -120, 240, 240, lined(rust), 16),
		...Array.from({ length: 8 }, (_, index) =>
			stroke(
				[
					[-120, -94 + index * 27],
					[120, -94 + index * 27],
				],
				{ stroke: oxide, width: 6 },
			),
		),
		rect(-240, 150, 480, 44, lined(steel), 6),
		hole(-210, 172, 11),
		hole(210, 172, 11),
		...[-80, -26, 26, 80].map((x, index) =>
			stroke(
				[
					[x, -120],
					[x + (index - 1.5) * 18, -208],
				],
				{ stroke: [oxide, ink, verdigris, verdigris][index] ?? ink, width: 11 },
			),
		),
	],
	tray: () => [
		poly(
			[
				[-270, -90],
				[270, -90],
				[310, 130],
				[-310, 130],
			],
			lined(silver),
		),
		poly(
			[
				[-230, -60],
				[230, -60],
				[258, 96],
				[-258, 96],
			],
			lined(mist),
		),
		poly(
			[
				[-310, 130],
				[310, 130],
				[310, 176],
				[-310, 176],
			],
			lined(steel),
		),
		...[-150, 0, 150].map((x) =>
			stroke(
				[
					[x * 0.9, -56],
					[x, 92],
				],
				{ stroke: steel, width: 6 },
			),
		),
		rect(-40, 142, 80, 22, lined(ink, 4), 8),
	],
	trim: () => [
		group(
			[
				rect(-300, -44, 600, 88, lined(straw), 10),
				rect(-300, -6, 600, 50, { fill: gold }, 8),
				rect(-300, -44, 600, 88, pen(), 10),
				...[-250, -125, 0, 125, 250].map((x) => hole(x, -4, 14)),
			],
			"rotate(-20)",
		),
	],
	tube: () => [
		group(
			[
				rect(-260, -40, 520, 80, lined("#fdfdf4"), 12),
				rect(-250, -30, 500, 20, { fill: mist, opacity: 0.8 }, 8),
				rect(-296, -44, 60, 88, lined(silver), 6),
				rect(236, -44, 60, 88, lined(silver), 6),
				...[-18, 18].flatMap((y) => [rect(-326, y - 5, 32, 10, lined(gold, 4)), rect(294, y - 5, 32, 10, lined(gold, 4))]),
				ellipse(-214, 0, 18, 30, { fill: second, opacity: 0.5 }),
				ellipse(214, 0, 18, 30, { fill: second, opacity: 0.5 }),
			],
			"rotate(-8)",
		),
	],
	wheel: () => [
		circle(0, 0, 190, { stroke: ink, width: 46 }),
		circle(0, 0, 190, { stroke: "#48524f", width: 34 }),
		...[90, 210, 330].map((angle) =>
			group([
				stroke([around(0, 0, 40, angle), around(0, 0, 174, angle)], pen(36)),
				stroke([around(0, 0, 40, angle), around(0, 0, 174, angle)], { stroke: silver, width: 24 }),
			]),
		),
		circle(0, 0, 58, lined(gold)),
		circle(0, 0, 24, lined(card, 5)),
		rect(-7, -38, 14, 18, { fill: ink }),
	],
};

/** The sketch of one part, around a middle at 0, 0. */
export const sketchOf = (kind: SketchKind): string => group(sketches[kind]());

/** Every kind that can be drawn. */
export const sketchKinds = Object.keys(sketches) as readonly SketchKind[];
