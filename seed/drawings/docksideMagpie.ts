// The portrait of machine 15: a digger in its tall case, the magpie on top.

import { lettering } from "@/seed/drawings/lettering";
import {
	around,
	blush,
	brass,
	card,
	circle,
	clipTo,
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
	umber,
	verdigris,
	wood,
} from "@/seed/drawings/pen";

const box = { left: 520, right: 1080, top: 262, sill: 800, foot: 1090 } as const;

const dockCrane = (x: number, y: number, scale: number, flip: boolean, fill: string): string =>
	group(
		[
			poly(
				[
					[-60, 0],
					[-40, -180],
					[40, -180],
					[60, 0],
					[36, 0],
					[20, -120],
					[-20, -120],
					[-36, 0],
				],
				{ fill },
			),
			rect(-52, -240, 104, 66, { fill }),
			poly(
				[
					[20, -226],
					[270, -420],
					[282, -408],
					[44, -190],
				],
				{ fill },
			),
			stroke(
				[
					[272, -412],
					[272, -250],
				],
				{ stroke: fill, width: 6 },
			),
			rect(256, -252, 32, 26, { fill }),
			stroke(
				[
					[-40, -240],
					[-10, -320],
					[150, -326],
				],
				{ stroke: fill, width: 8 },
			),
		],
		`translate(${x} ${y}) scale(${flip ? -scale : scale} ${scale})`,
	);

function dusk(): string[] {
	return [
		rect(0, 0, 1600, 1200, { fill: "#b9472f" }),
		rays(800, 700, 1500, 26, "#c65a3c", 1, 3),
		circle(800, 640, 480, { fill: "#dd8a55" }),
		circle(800, 640, 380, { fill: "#eab268" }),
		rect(0, 830, 1600, 400, { fill: "#7c2b1d" }),
		dockCrane(240, 836, 1.15, false, "#7c2b1d"),
		dockCrane(1370, 836, 1.3, true, "#7c2b1d"),
		dockCrane(60, 836, 0.7, false, "#8f3723"),
		poly(
			[
				[0, 836],
				[0, 780],
				[150, 780],
				[170, 810],
				[420, 810],
				[440, 836],
			],
			{ fill: "#7c2b1d" },
		),
		poly(
			[
				[1600, 836],
				[1600, 770],
				[1500, 770],
				[1480, 806],
				[1200, 806],
				[1180, 836],
			],
			{ fill: "#7c2b1d" },
		),
		...[880, 930, 984].map((y, index) =>
			stroke(
				[
					[60 + index * 40, y],
					[420 - index * 30, y],
				],
				{ stroke: "#a0442d", width: 8 },
			),
		),
		...[880, 930, 984].map((y, index) =>
			stroke(
				[
					[1180 + index * 30, y],
					[1540 - index * 40, y],
				],
				{ stroke: "#a0442d", width: 8 },
			),
		),
		rect(0, 1056, 1600, 144, { fill: tagStock }),
		rect(0, 1056, 1600, 10, { fill: "#c9b27a" }),
		ellipse(800, 1114, 370, 24, { fill: "#b79f66" }),
	];
}

function magpie(): string {
	return group(
		[
			path("M-150 34 C-230 20 -300 -6 -360 -50 C-290 -44 -210 -30 -140 -10 Z", { fill: "#1f4f49" }),
			path("M-150 30 C-220 30 -286 18 -352 -14 C-282 -8 -210 0 -140 6 Z", { fill: ink }),
			path("M-160 20 C-120 -50 -40 -84 40 -74 C70 -110 128 -116 156 -82 L206 -66 L158 -52 C150 0 96 48 20 58 C-50 66 -120 52 -160 20 Z", {
				fill: ink,
			}),
			path("M-60 50 C-20 62 60 56 104 10 C110 -10 104 -26 92 -34 C60 -8 0 20 -60 50 Z", { fill: card }),
			path("M-120 2 C-70 -44 -20 -58 36 -46 C0 -10 -60 12 -120 2 Z", { fill: "#2c7a6c" }),
			path("M-66 -10 C-40 -34 -6 -46 30 -44 C8 -22 -28 -8 -66 -10 Z", { fill: card }),
			circle(124, -76, 9, { fill: card }),
			circle(126, -76, 4, { fill: ink }),
			poly(
				[
					[154, -80],
					[210, -66],
					[156, -54],
				],
				{ fill: gold },
			),
			circle(222, -62, 15, { stroke: gold, width: 8 }),
			stroke(
				[
					[0, 56],
					[-6, 92],
				],
				{ stroke: ink, width: 9 },
			),
			stroke(
				[
					[40, 54],
					[40, 92],
				],
				{ stroke: ink, width: 9 },
			),
		],
		"translate(812 122) scale(0.78)",
	);
}

function prize(x: number, y: number, kind: number): string {
	const shapes: Record<number, string[]> = {
		0: [circle(0, -26, 26, { fill: rust }), path("M-26 -26 A26 26 0 0 1 26 -26 Z", { fill: card })],
		1: [
			circle(0, -24, 24, { fill: gold }),
			circle(0, -24, 17, { fill: card }),
			stroke(
				[
					[0, -24],
					[0, -36],
				],
				{ stroke: ink, width: 4 },
			),
			stroke(
				[
					[0, -24],
					[9, -20],
				],
				{ stroke: ink, width: 4 },
			),
			circle(0, -52, 6, { stroke: gold, width: 5 }),
		],
		2: [rect(-24, -44, 48, 44, { fill: verdigris }, 3), rect(-5, -44, 10, 44, { fill: straw }), rect(-24, -27, 48, 10, { fill: straw })],
		3: [path("M-16 0 V-40 C-16 -52 -7 -50 -7 -62 H7 C7 -50 16 -52 16 -40 V0 Z", { fill: foam }), rect(-9, -72, 18, 12, { fill: oxide })],
		4: [
			poly(
				Array.from({ length: 10 }, (_, index) => around(0, -26, index % 2 === 0 ? 30 : 12, index * 36 - 90)),
				{ fill: straw },
			),
		],
		5: [path("M-30 0 C-30 -40 30 -40 30 0 Z", { fill: oxide }), circle(0, -34, 9, { fill: oxide }), rect(-32, -6, 64, 8, { fill: gold })],
	};
	return group(shapes[kind] ?? [], `translate(${x} ${y})`);
}

function innards(): string[] {
	const { left, right, top, sill } = box;
	return [
		group(
			[
				rect(left, top, right - left, sill - top, { fill: "#23504a" }),
				circle(800, 470, 250, { fill: "#2c6a61" }),
				rays(800, 470, 420, 18, "#34776c", 0.8, 5),
				poly(
					[
						[left, top],
						[left + 150, top],
						[left + 60, sill],
						[left, sill],
					],
					{ fill: "#1d443f" },
				),
				poly(
					[
						[right, top],
						[right - 150, top],
						[right - 60, sill],
						[right, sill],
					],
					{ fill: "#1d443f" },
				),
				// Lamps.
				...[660, 800, 940].flatMap((x) => [
					poly(
						[
							[x - 16, top + 40],
							[x + 16, top + 40],
							[x + 130, 790],
							[x - 130, 790],
						],
						{ fill: straw, opacity: 0.16 },
					),
					circle(x, top + 34, 18, { fill: "#fff2c4" }),
				]),
				// The turning prize bed.
				ellipse(800, 752, 236, 66, { fill: umber }),
				ellipse(800, 738, 236, 66, { fill: brass }),
				ellipse(800, 732, 222, 58, { fill: "#f0dca6" }),
				...Array.from({ length: 12 }, (_, index) =>
					stroke(
						[
							[800, 732],
							[800 + 222 * Math.cos((index * Math.PI) / 6), 732 + 58 * Math.sin((index * Math.PI) / 6)],
						],
						{ stroke: "#dcc186", width: 4 },
					),
				),
				prize(668, 724, 2),
				prize(720, 704, 4),
				prize(890, 702, 3),
				prize(940, 722, 0),
				// Crane tower, boom, bucket.
				ellipse(800, 728, 44, 14, { fill: ink }),
				poly(
					[
						[772, 726],
						[784, 500],
						[816, 500],
						[828, 726],
					],
					{ fill: steel },
				),
				poly(
					[
						[800, 726],
						[800, 500],
						[816, 500],
						[828, 726],
					],
					{ fill: "#6d7975" },
				),
				...[540, 590, 640, 690].map((y) =>
					stroke(
						[
							[781 - (y - 500) / 26, y],
							[819 + (y - 500) / 26, y],
						],
						{ stroke: ink, width: 5 },
					),
				),
				circle(800, 494, 30, { fill: ink }),
				circle(800, 494, 14, { fill: gold }),
				stroke(
					[
						[800, 488],
						[972, 366],
					],
					{ stroke: silver, width: 11 },
				),
				stroke(
					[
						[812, 514],
						[978, 396],
					],
					{ stroke: silver, width: 11 },
				),
				...[0, 1, 2, 3, 4].map((index) =>
					stroke(
						[
							[826 + index * 34, 472 - index * 24],
							[846 + index * 32, 490 - index * 23],
						],
						{ stroke: silver, width: 7 },
					),
				),
				...[0, 1, 2, 3].map((index) =>
					stroke(
						[
							[846 + index * 32, 490 - index * 23],
							[860 + index * 34, 446 - index * 24],
						],
						{ stroke: silver, width: 7 },
					),
				),
				circle(980, 378, 18, { fill: ink }),
				stroke(
					[
						[784, 494],
						[730, 430],
						[726, 380],
					],
					{ stroke: ink, width: 8 },
				),
				rect(704, 366, 44, 26, { fill: rust }, 6),
				stroke(
					[
						[996, 380],
						[996, 520],
					],
					{ stroke: card, width: 5 },
				),
				path("M956 520 H1036 L1030 546 H962 Z", { fill: ink }),
				path("M962 546 C944 580 950 616 990 630 L994 546 Z", { fill: gold }),
				path("M1030 546 C1048 580 1042 616 1002 630 L998 546 Z", { fill: brass }),
				...[960, 976, 1008, 1026].map((x) =>
					poly(
						[
							[x, 612],
							[x + 12, 612],
							[x + 6, 636],
						],
						{ fill: ink },
					),
				),
				// In front of the tower.
				prize(640, 752, 1),
				prize(706, 768, 5),
				prize(872, 766, 1),
				prize(792, 784, 0),
				prize(948, 758, 2),
			],
			undefined,
			"glass",
		),
		group(
			[
				poly(
					[
						[left + 70, top],
						[left + 130, top],
						[left - 30, sill],
						[left - 90, sill],
					],
					{ fill: card, opacity: 0.13 },
				),
				poly(
					[
						[left + 152, top],
						[left + 168, top],
						[left + 8, sill],
						[left - 8, sill],
					],
					{ fill: card, opacity: 0.13 },
				),
			],
			undefined,
			"glass",
		),
	];
}

function cabinet(): string[] {
	const { left, right, top, sill, foot } = box;
	return [
		...[left + 46, right - 46].map((x) =>
			path(`M${x - 40} ${foot + 34} L${x - 24} ${foot - 10} H${x + 24} L${x + 40} ${foot + 34} Z`, { fill: ink }),
		),
		rect(left - 26, top - 20, right - left + 52, foot - top + 20, { fill: wood }, 8),
		rect(right - 4, top - 20, 30, foot - top + 20, { fill: umber }, 8),
		// Stepped crown.
		rect(left - 40, top - 44, right - left + 80, 30, { fill: umber }, 4),
		rect(left - 16, top - 62, right - left + 32, 22, { fill: wood }, 4),
		path(
			`M${left + 30} ${top - 58} C${left + 60} ${top - 102} ${left + 150} ${top - 116} 800 ${top - 116} S${right - 60} ${top - 102} ${right - 30} ${top - 58} Z`,
			{ fill: brass },
		),
		path(
			`M${left + 60} ${top - 60} C${left + 90} ${top - 88} ${left + 160} ${top - 98} 800 ${top - 98} S${right - 90} ${top - 88} ${right - 60} ${top - 60} Z`,
			{ fill: gold },
		),
		...[-3, -2, -1, 1, 2, 3].map((index) =>
			poly(
				[
					[800 + index * 16, top - 60],
					[800 + index * 16 + 8, top - 60],
					[800 + index * 52 + 4, top - 92],
					[800 + index * 52 - 10, top - 92],
				],
				{ fill: brass, opacity: 0.55 },
			),
		),
		rect(left - 6, top - 6, right - left + 12, sill - top + 12, { fill: ink }, 6),
	];
}

function lower(): string[] {
	const { left, right, sill } = box;
	const wheel = { x: 800, y: 962 };
	return [
		rect(left - 26, sill - 2, right - left + 52, 70, { fill: ink }),
		rect(left - 26, sill - 2, right - left + 52, 9, { fill: gold }),
		rect(left - 26, sill + 60, right - left + 52, 9, { fill: gold }),
		lettering("DOCKSIDE MAGPIE", { x: 800, y: sill + 17, height: 34, colour: straw, weight: 0.17, anchor: "middle", fit: 500 }),
		...[0, 1, 2].flatMap((index) => [
			stroke(
				[
					[left + 10 + index * 16, 900],
					[left + 10 + index * 16, 1068],
				],
				{ stroke: gold, width: 6 },
			),
			stroke(
				[
					[right - 10 - index * 16, 900],
					[right - 10 - index * 16, 1068],
				],
				{ stroke: gold, width: 6 },
			),
		]),
		rect(600, 908, 92, 116, { fill: silver, stroke: ink, width: 5 }, 8),
		rect(640, 924, 12, 52, { fill: ink }, 6),
		rect(616, 992, 60, 18, { fill: steel }, 6),
		rect(904, 908, 96, 116, { fill: ink }, 8),
		path("M912 1016 V956 C912 930 992 930 992 956 V1016 Z", { fill: sea }),
		lettering("PRIZE", { x: 952, y: 988, height: 16, colour: mist, anchor: "middle" }),
		circle(wheel.x, wheel.y, 78, { fill: umber }),
		circle(wheel.x, wheel.y, 66, { stroke: gold, width: 15 }),
		...[0, 60, 120].map((turn) =>
			stroke([around(wheel.x, wheel.y, 64, turn), around(wheel.x, wheel.y, 64, turn + 180)], { stroke: gold, width: 9 }),
		),
		circle(wheel.x, wheel.y, 19, { fill: oxide, stroke: gold, width: 7 }),
		circle(...around(wheel.x, wheel.y, 66, -50), 12, { fill: blush }),
	];
}

export const docksideMagpiePortrait = (): { shapes: string[]; definitions: string[] } => ({
	definitions: [clipTo("glass", rect(box.left + 14, box.top + 12, box.right - box.left - 28, box.sill - box.top - 24, {}, 4))],
	shapes: [...dusk(), ...cabinet(), ...innards(), ...lower(), magpie()],
});
