// The portrait of machine 14: a rocket that is half a fish, on its rocking base.

import { lettering } from "@/seed/drawings/lettering";
import {
	around,
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
	verdigris,
} from "@/seed/drawings/pen";

const star = (x: number, y: number, size: number, fill: string): string =>
	poly(
		Array.from({ length: 8 }, (_, index) => around(x, y, index % 2 === 0 ? size : size * 0.28, index * 45 - 90)),
		{ fill },
	);

function sky(): string[] {
	return [
		rect(0, 0, 1600, 1200, { fill: straw }),
		rays(880, 560, 1500, 22, "#f3dfa4", 1, 4),
		circle(880, 560, 400, { fill: "#f6e7bb" }),
		circle(1370, 190, 92, { fill: rust }),
		ellipse(1370, 190, 168, 30, { stroke: oxide, width: 14 }),
		path("M1278 190 A92 92 0 0 1 1462 190 Z", { fill: rust }),
		star(250, 170, 46, oxide),
		star(430, 300, 24, verdigris),
		star(160, 420, 22, oxide),
		star(1130, 110, 26, verdigris),
		star(1490, 430, 34, verdigris),
		star(640, 110, 18, oxide),
		rect(0, 1050, 1600, 150, { fill: sea }),
		rect(0, 1050, 1600, 12, { fill: deep }),
		ellipse(790, 1112, 620, 30, { fill: deep }),
	];
}

function base(): string[] {
	return [
		// Arm, saddle, link.
		poly(
			[
				[720, 690],
				[900, 690],
				[940, 880],
				[680, 880],
			],
			{ fill: ink },
		),
		poly(
			[
				[742, 712],
				[800, 712],
				[790, 880],
				[704, 880],
			],
			{ fill: "#33403d" },
		),
		rect(640, 676, 340, 42, { fill: steel }, 12),
		circle(700, 697, 9, { fill: ink }),
		circle(920, 697, 9, { fill: ink }),
		// Skirts.
		path("M330 1096 L390 868 C396 846 410 836 432 836 H1170 C1192 836 1206 846 1212 868 L1272 1096 Z", { fill: oxide }),
		path("M330 1096 L344 1042 H1258 L1272 1096 Z", { fill: "#7d2717" }),
		path("M384 892 L390 868 C396 846 410 836 432 836 H1170 C1192 836 1206 846 1212 868 L1218 892 Z", { fill: rust }),
		stroke(
			[
				[370, 940],
				[1232, 940],
			],
			{ stroke: straw, width: 8 },
		),
		stroke(
			[
				[352, 1016],
				[1250, 1016],
			],
			{ stroke: straw, width: 8 },
		),
		lettering("METEOR MINNOW", { x: 800, y: 954, height: 48, colour: card, weight: 0.19, anchor: "middle", fit: 720 }),
		...[400, 500, 600, 1000, 1100, 1200].map((x) => circle(x, 866, 7, { fill: "#7d2717" })),
		...[420, 1180].flatMap((x) => [rect(x - 12, 1092, 24, 20, { fill: steel }), rect(x - 34, 1108, 68, 14, { fill: steel }, 6)]),
	];
}

function column(): string[] {
	return [
		group(
			[
				ellipse(228, 1102, 104, 16, { fill: deep }),
				path("M150 1100 L166 1060 H290 L306 1100 Z", { fill: ink }),
				path("M166 1064 L182 690 H274 L290 1064 Z", { fill: verdigris }),
				path("M228 690 H274 L290 1064 H228 Z", { fill: sea, opacity: 0.45 }),
				path("M150 700 V560 C150 500 186 470 228 470 S306 500 306 560 V700 Z", { fill: silver }),
				path("M228 470 C270 470 306 500 306 560 V700 H228 Z", { fill: steel, opacity: 0.55 }),
				circle(228, 566, 54, { fill: card, stroke: ink, width: 6 }),
				rect(222, 536, 12, 60, { fill: ink }, 6),
				rect(182, 640, 92, 34, { fill: ink }, 8),
				circle(228, 740, 14, { fill: gold }),
				rect(204, 800, 48, 150, { fill: straw }, 6),
				lettering("1", { x: 228, y: 830, height: 46, colour: oxide, weight: 0.18, anchor: "middle" }),
				lettering("COIN", { x: 228, y: 894, height: 12, colour: ink, anchor: "middle", fit: 38 }),
			],
			"translate(-90 0)",
		),
	];
}

function rocket(): string[] {
	const body = "M386 560 C470 430 690 372 920 380 C1120 388 1300 446 1420 540 C1310 640 1110 704 900 704 C680 704 476 676 386 560 Z";
	return [
		group(
			[
				// Tail: three tongues of flame painted on tin, then the fish's tail itself.
				path("M452 560 C372 512 332 430 226 388 C252 452 268 516 300 560 C268 604 252 668 226 732 C332 690 372 608 452 560 Z", {
					fill: oxide,
				}),
				path("M452 560 C384 532 338 476 268 436 C290 484 302 526 322 560 C302 594 290 636 268 684 C338 644 384 588 452 560 Z", {
					fill: rust,
				}),
				path("M520 590 C490 680 450 730 396 776 C480 770 600 730 660 660 Z", { fill: "#7d2717" }),
				path(body, { fill: verdigris }),
				group(
					[
						path("M380 560 C560 640 1100 660 1420 540 V760 H380 Z", { fill: card }),
						path("M380 560 C560 640 1100 660 1420 540 L1424 566 C1100 690 560 668 380 590 Z", { fill: straw }),
						// Scales.
						...[0, 1, 2].flatMap((row) =>
							Array.from({ length: 5 }, (_, index) =>
								path(`M${560 + index * 58 + row * 29} ${470 + row * 40} a29 29 0 0 0 58 0`, { stroke: foam, width: 6 }),
							),
						),
						path("M386 560 C470 430 690 372 920 380 C1120 388 1300 446 1420 540 C1300 470 1120 420 920 412 C690 404 500 452 386 560 Z", {
							fill: "#2b8576",
						}),
					],
					undefined,
					"body",
				),
				path("M1262 444 C1330 474 1384 508 1420 540 C1380 576 1330 604 1270 628 C1232 570 1232 504 1262 444 Z", { fill: gold }),
				circle(1420, 540, 20, { fill: "#fff6d2", stroke: brass, width: 6 }),
				// Eye, which is a porthole.
				circle(1180, 516, 46, { fill: card, stroke: ink, width: 8 }),
				circle(1192, 516, 22, { fill: ink }),
				circle(1200, 508, 7, { fill: card }),
				path("M1300 600 C1270 622 1236 626 1206 616", { stroke: ink, width: 8 }),
				// Fin at the side, gill.
				path("M800 610 C760 690 700 740 620 764 C640 690 680 640 730 600 Z", { fill: rust }),
				stroke(
					[
						[770, 622],
						[670, 726],
					],
					{ stroke: oxide, width: 6 },
				),
				path("M1096 444 C1064 500 1064 570 1094 632", { stroke: sea, width: 10 }),
				// Cockpit, windscreen, yoke.
				path("M700 410 C720 384 744 380 770 379 H960 C990 380 1006 396 1010 420 C940 452 780 452 700 410 Z", { fill: ink }),
				path("M716 408 C740 300 760 270 800 262 C812 300 806 360 812 424 C776 424 740 418 716 408 Z", { fill: oxide }),
				path("M960 396 C962 330 996 268 1046 244 C1072 290 1070 360 1040 418 Z", { fill: mist, stroke: ink, width: 7, opacity: 0.92 }),
				path("M992 372 C996 330 1014 300 1036 284", { stroke: card, width: 7 }),
				stroke(
					[
						[930, 420],
						[900, 350],
					],
					{ stroke: ink, width: 9 },
				),
				path("M866 352 C880 336 920 332 938 344", { stroke: ink, width: 13 }),
				// Back fin.
				path("M640 424 C600 360 560 322 500 300 C560 296 650 330 712 396 Z", { fill: oxide }),
				lettering("211", { x: 980, y: 500, height: 50, colour: straw, weight: 0.17, anchor: "middle" }),
			],
			"rotate(-7 820 640)",
		),
	];
}

export const meteorMinnowPortrait = (): { shapes: string[]; definitions: string[] } => ({
	definitions: [
		clipTo(
			"body",
			path("M386 560 C470 430 690 372 920 380 C1120 388 1300 446 1420 540 C1310 640 1110 704 900 704 C680 704 476 676 386 560 Z", {}),
		),
	],
	shapes: [...sky(), ...base(), ...rocket(), ...column()],
});
