// The portrait of machine 16: a driving game, the road seen through its glass, the same ridge behind it.

import { lettering } from "@/seed/drawings/lettering";
import {
	around,
	blush,
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
	rays,
	rect,
	rust,
	sea,
	silver,
	steel,
	straw,
	stroke,
	tagStock,
	verdigris,
} from "@/seed/drawings/pen";

const box = { left: 500, right: 1100 } as const;
const view = { x: 540, y: 330, width: 520, height: 360 } as const;

function ridge(): string[] {
	return [
		rect(0, 0, 1600, 1200, { fill: "#cfe0d4" }),
		circle(1270, 290, 150, { fill: rust }),
		circle(1270, 290, 220, { stroke: rust, width: 6, opacity: 0.5 }),
		circle(1270, 290, 276, { stroke: rust, width: 4, opacity: 0.3 }),
		poly(
			[
				[0, 620],
				[170, 360],
				[270, 470],
				[420, 230],
				[620, 560],
				[760, 430],
				[930, 610],
				[1120, 420],
				[1300, 600],
				[1450, 470],
				[1600, 610],
				[1600, 1200],
				[0, 1200],
			],
			{ fill: "#8fb9aa" },
		),
		poly(
			[
				[420, 230],
				[352, 338],
				[400, 330],
				[430, 366],
				[466, 320],
				[484, 336],
			],
			{ fill: card },
		),
		poly(
			[
				[1120, 420],
				[1062, 484],
				[1104, 478],
				[1130, 504],
				[1176, 476],
			],
			{ fill: card },
		),
		path("M0 760 C160 640 300 640 470 740 C700 880 900 660 1100 700 C1300 740 1440 660 1600 720 V1200 H0 Z", { fill: "#4b8c7c" }),
		path("M0 900 C220 800 380 820 560 900 C820 1010 1060 820 1280 850 C1400 866 1520 850 1600 830 V1200 H0 Z", { fill: verdigris }),
		// The hairpins, climbing on both sides of the machine.
		path("M-60 1052 C260 1060 430 1010 300 960 C180 912 60 900 130 850 C200 806 400 830 420 780 C430 750 470 728 540 720", {
			stroke: ink,
			width: 46,
		}),
		path("M-60 1052 C260 1060 430 1010 300 960 C180 912 60 900 130 850 C200 806 400 830 420 780 C430 750 470 728 540 720", {
			stroke: tagStock,
			width: 5,
			dash: "26 24",
		}),
		path("M1660 1052 C1300 1062 1180 1010 1310 956 C1440 904 1550 880 1480 836 C1410 800 1180 812 1060 770", { stroke: ink, width: 44 }),
		path("M1660 1052 C1300 1062 1180 1010 1310 956 C1440 904 1550 880 1480 836 C1410 800 1180 812 1060 770", {
			stroke: tagStock,
			width: 5,
			dash: "26 24",
		}),
		...[
			[90, 760],
			[418, 930],
			[300, 800],
			[1210, 900],
			[1470, 1010],
			[1540, 800],
			[120, 1010],
		].flatMap(([x = 0, y = 0]) => [
			poly(
				[
					[x, y - 92],
					[x + 34, y],
					[x - 34, y],
				],
				{ fill: sea },
			),
			poly(
				[
					[x, y - 92],
					[x + 34, y],
					[x, y],
				],
				{ fill: deep },
			),
		]),
		rect(0, 1074, 1600, 126, { fill: tagStock }),
		rect(0, 1074, 1600, 10, { fill: "#c9b27a" }),
		ellipse(800, 1126, 400, 24, { fill: "#b79f66" }),
	];
}

function road(): string[] {
	const { x, y, width, height } = view;
	const middle = x + width / 2;
	return [
		group(
			[
				rect(x, y, width, height, { fill: "#f2c98a" }),
				circle(x + 140, y + 96, 60, { fill: rust }),
				rays(x + 140, y + 96, 420, 20, "#f7d9a6", 0.7, 4),
				circle(x + 140, y + 96, 60, { fill: rust }),
				poly(
					[
						[x, y + 190],
						[x + 110, y + 110],
						[x + 190, y + 160],
						[x + 300, y + 60],
						[x + 420, y + 170],
						[x + width, y + 120],
						[x + width, y + height],
						[x, y + height],
					],
					{ fill: "#7fa99b" },
				),
				poly(
					[
						[x + 300, y + 60],
						[x + 258, y + 98],
						[x + 294, y + 94],
						[x + 312, y + 112],
						[x + 346, y + 100],
					],
					{ fill: card },
				),
				path(`M${x} ${y + 200} C${x + 140} ${y + 160} ${x + 380} ${y + 220} ${x + width} ${y + 176} V${y + height} H${x} Z`, {
					fill: verdigris,
				}),
				// The road, in two bends.
				path(
					`M${middle - 230} ${y + height + 10} C${middle - 190} ${y + 290} ${middle + 150} ${y + 300} ${middle + 130} ${y + 250} C${middle + 112} ${y + 216} ${middle - 90} ${y + 240} ${middle - 86} ${y + 204} C${middle - 82} ${y + 186} ${middle + 20} ${y + 192} ${middle + 36} ${y + 176} L${middle + 50} ${y + 178} C${middle + 36} ${y + 202} ${middle - 44} ${y + 196} ${middle - 40} ${y + 210} C${middle - 30} ${y + 232} ${middle + 190} ${y + 204} ${middle + 208} ${y + 256} C${middle + 226} ${y + 314} ${middle + 60} ${y + 312} ${middle + 110} ${y + height + 10} Z`,
					{ fill: ink },
				),
				path(
					`M${middle - 60} ${y + height} C${middle - 40} ${y + 300} ${middle + 176} ${y + 308} ${middle + 168} ${y + 256} C${middle + 160} ${y + 214} ${middle - 56} ${y + 236} ${middle - 64} ${y + 206}`,
					{ stroke: straw, width: 5, dash: "18 16" },
				),
				...[
					[x + 60, y + 290],
					[x + 110, y + 250],
					[x + 470, y + 330],
					[x + 484, y + 230],
				].map(([px = 0, py = 0]) =>
					poly(
						[
							[px, py - 60],
							[px + 22, py],
							[px - 22, py],
						],
						{ fill: deep },
					),
				),
				// The little car on its carriage.
				group(
					[
						ellipse(0, 34, 64, 11, { fill: deep }),
						rect(-50, 8, 24, 28, { fill: deep }, 6),
						rect(26, 8, 24, 28, { fill: deep }, 6),
						path("M-34 -14 L-24 -44 C-22 -50 -18 -52 -12 -52 H12 C18 -52 22 -50 24 -44 L34 -14 Z", { fill: "#7d2717" }),
						path("M-25 -16 L-18 -42 H18 L25 -16 Z", { fill: mist }),
						path("M-58 18 C-58 -10 -52 -18 -34 -18 H34 C52 -18 58 -10 58 18 C58 24 54 26 48 26 H-48 C-54 26 -58 24 -58 18 Z", {
							fill: oxide,
						}),
						rect(-50, -8, 20, 12, { fill: gold }, 5),
						rect(30, -8, 20, 12, { fill: gold }, 5),
						rect(-18, 0, 36, 14, { fill: card }, 3),
						rect(-58, 18, 116, 9, { fill: silver }, 4),
					],
					`translate(${middle - 62} ${y + 302})`,
				),
			],
			undefined,
			"view",
		),
		group(
			[
				poly(
					[
						[x + 40, y],
						[x + 110, y],
						[x - 30, y + height],
						[x - 100, y + height],
					],
					{ fill: card, opacity: 0.2 },
				),
				poly(
					[
						[x + 134, y],
						[x + 152, y],
						[x + 12, y + height],
						[x - 6, y + height],
					],
					{ fill: card, opacity: 0.2 },
				),
			],
			undefined,
			"view",
		),
	];
}

function cabinet(): string[] {
	const { left, right } = box;
	return [
		rect(left + 20, 1096, 60, 24, { fill: ink }, 4),
		rect(right - 80, 1096, 60, 24, { fill: ink }, 4),
		// Body, with the console standing forward of it.
		poly(
			[
				[left, 96],
				[right, 96],
				[right + 10, 720],
				[right + 40, 1102],
				[left - 40, 1102],
				[left - 10, 720],
			],
			{ fill: oxide },
		),
		poly(
			[
				[right, 96],
				[right - 26, 96],
				[right - 18, 720],
				[right + 6, 1102],
				[right + 40, 1102],
				[right + 10, 720],
			],
			{ fill: "#7d2717" },
		),
		poly(
			[
				[left - 8, 600],
				[right + 8, 600],
				[right + 10, 640],
				[left - 10, 640],
			],
			{ fill: "#7d2717" },
		),
		rect(view.x - 20, view.y - 20, view.width + 40, view.height + 40, { fill: ink }, 18),
		rect(view.x - 12, view.y - 12, view.width + 24, view.height + 24, { stroke: silver, width: 6 }, 12),
	];
}

function topper(): string[] {
	return [
		rect(520, 62, 560, 216, { fill: ink }, 16),
		group(
			[
				rect(538, 80, 524, 180, { fill: "#ffe9b8" }),
				poly(
					[
						[538, 260],
						[538, 206],
						[620, 150],
						[676, 190],
						[760, 118],
						[850, 200],
						[930, 146],
						[1062, 214],
						[1062, 260],
					],
					{ fill: foam },
				),
				path("M538 244 C640 220 760 262 860 240 C940 222 1000 250 1062 232 V270 H538 Z", { fill: verdigris }),
			],
			undefined,
			"topper",
		),
		rect(538, 80, 524, 180, { stroke: gold, width: 6 }, 8),
		lettering("HAIRPIN RIDGE", { x: 800, y: 112, height: 62, colour: card, weight: 0.34, tracking: 1.8, anchor: "middle", fit: 470 }),
		lettering("HAIRPIN RIDGE", { x: 800, y: 112, height: 62, colour: oxide, weight: 0.2, tracking: 1.8, anchor: "middle", fit: 470 }),
	];
}

function console(): string[] {
	const wheel = { x: 800, y: 820 };
	const reel = (x: number, digit: string): string[] => [
		rect(x, 724, 42, 54, { fill: card, stroke: ink, width: 4 }, 4),
		lettering(digit, { x: x + 21, y: 736, height: 30, colour: ink, weight: 0.15, anchor: "middle" }),
	];
	return [
		poly(
			[
				[480, 714],
				[1120, 714],
				[1152, 922],
				[448, 922],
			],
			{ fill: "#b1402b" },
		),
		poly(
			[
				[480, 714],
				[1120, 714],
				[1124, 734],
				[476, 734],
			],
			{ fill: silver },
		),
		poly(
			[
				[452, 904],
				[1148, 904],
				[1152, 930],
				[448, 930],
			],
			{ fill: ink },
		),
		...reel(520, "0"),
		...reel(566, "4"),
		...reel(612, "7"),
		rect(946, 728, 150, 52, { fill: ink }, 6),
		lettering("TIME", { x: 1021, y: 744, height: 20, colour: straw, anchor: "middle" }),
		// Wheel.
		circle(wheel.x, wheel.y + 8, 122, { fill: "#7d2717" }),
		circle(wheel.x, wheel.y, 112, { stroke: ink, width: 24 }),
		circle(wheel.x, wheel.y, 112, { stroke: steel, width: 4 }),
		...[180, 0, 90].map((turn) =>
			stroke([around(wheel.x, wheel.y, 26, turn), around(wheel.x, wheel.y, 104, turn)], { stroke: silver, width: 17 }),
		),
		circle(wheel.x, wheel.y, 36, { fill: gold, stroke: ink, width: 8 }),
		circle(wheel.x, wheel.y, 12, { fill: brass }),
		// Coin door with two slots, pedal.
		rect(530, 962, 150, 112, { fill: steel, stroke: ink, width: 5 }, 8),
		...[562, 618].flatMap((x) => [
			rect(x, 980, 34, 52, { fill: card, stroke: ink, width: 4 }, 5),
			rect(x + 13, 988, 8, 34, { fill: ink }, 4),
		]),
		rect(578, 1046, 54, 14, { fill: ink }, 5),
		poly(
			[
				[872, 1062],
				[1012, 1062],
				[996, 980],
				[888, 980],
			],
			{ fill: ink },
		),
		...[996, 1014, 1032, 1050].map((y) =>
			stroke(
				[
					[890 - (y - 996) / 5, y],
					[994 + (y - 996) / 5, y],
				],
				{ stroke: steel, width: 6 },
			),
		),
		stroke(
			[
				[942, 980],
				[942, 952],
			],
			{ stroke: silver, width: 12 },
		),
		circle(746, 1016, 16, { fill: blush, stroke: ink, width: 5 }),
	];
}

export const hairpinRidgePortrait = (): { shapes: string[]; definitions: string[] } => ({
	definitions: [clipTo("view", rect(view.x, view.y, view.width, view.height, {}, 8)), clipTo("topper", rect(538, 80, 524, 180, {}, 8))],
	shapes: [...ridge(), ...cabinet(), ...road(), ...topper(), ...console()],
});
