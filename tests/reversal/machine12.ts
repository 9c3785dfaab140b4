// Machine 12, SKERRY LIGHT: a coin-operated harbour novelty, converted, and to be taken back. Invented, with realistic figures.
// A new part stands in the way of whatever the part it replaced stood in the way of.

import {
	type Alteration,
	type Obstruction,
	type Part,
	type Position,
	PROBLEM_FORMAT,
	type Problem,
	type Times,
} from "@/lib/reversal/problem";

/** `position|host position|what|blocked by|minutes out/in`. A side is written `front: ...; rear: ...`. */
const TABLE = `
k01|-|lower rear panel|-|4/6
k02|-|upper rear panel|-|3/4
k03|-|sign box|-|8/10
k04|k03|reflector tray|-|4/6
k05|k04|fluorescent tube 15 W|k03|1/1
k06|k04|starter|k03|1/1
k07|k04|ballast|k03, k05|6/8
k08|k04|lamp holders, pair L/R|k03, k05|8/12
k09|k03|sign glass, painted|k04|5/8
k10|-|front glass|k03|4/5
k11|-|left glass|k03, k13|3/4
k12|-|right glass|k03, k14|3/4
k13|-|corner trim, left|-|5/6
k14|-|corner trim, right|-|5/6
k15|-|rock scene, plaster|k01, k10, k20, k21|20/25
k16|k15|tower|k17|8/10
k17|-|lantern optic, 3 panels|front: k10; rear: k02|4/5
k18|-|lantern lamp|k17|1/1
k19|-|tin ship|k10|3/5
k20|-|rocker rod and crank|k01|5/7
k21|-|lantern shaft 1/4 x 320 mm|k17, k18, k22|6/9
k22|-|shaft coupling|k01|4/6
k23|-|drive plate|k01, k20, k22|12/16
k24|-|rubber bushes, lot of 4|k23|2/3
k25|k23|motor|k38|8/12
k26|k23|timer unit: cam, 2 switch stacks|k25|10/15
k27|-|transformer 230/6.3 V|k01|10/14
k28|-|fuse holder|k01|6/8
k29|k28|fuse link|k01|1/1
k30|-|mains flex|k01|5/10
k31|-|terminal block, 12 way|k01|25/40
k32|-|harness, cloth|k01, k31|45/70
k33|-|coin door|-|6/8
k34|k33|coin mechanism|-|3/5
k35|k33|coin switch|k34|6/10
k36|-|cash box|-|1/1
k37|-|fog buzzer|k01|6/8
k38|-|floor panel, particle board 19 mm|k15, k23, k27, k36|40/60
k39|-|leg levellers, lot of 4|-|8/8
k40|-|maker's plate|-|-
n1|-|control board, loose|k01|5/6
n2|n1|supply 24 V 60 W|-|4/5
n3|n1|controller|-|4/5
n4|k04|light bars, pair|k03|3/6
n5|k25|motor 24 V on adapter plate|-|5/7
`;

/** Places that take no part of their own. */
const PLACES = ["rear-wall", "cabinet"];

/** The parts that the conversions and repairs put in, by position. n1 to n5 are places the conversion made. */
const NEW: Readonly<Record<string, string>> = {
	k18: "lantern lamp, LED",
	k21: "lantern shaft, made in the shop",
	k22: "clamp coupling",
	k24: "rubber bushes, new",
	k25: "adapter plate",
	k29: "fuse link T1A",
	k30: "three-core flex",
	k35: "coin switch, unused period",
	n1: "control board, loose",
	n2: "supply 24 V 60 W",
	n3: "controller",
	n4: "light bars, pair",
	n5: "motor 24 V",
};

/** Parts of the as found state that are out now: in bags, and the ballast gone by law. */
const OUT_NOW = ["k05", "k06", "k07", "k08", "k18", "k21", "k22", "k24", "k25", "k29", "k30", "k35"];

/** What the 32 original parts are: all positions but these. */
const NOT_ORIGINAL = new Set(["k39", "k05", "k06", "k12", "k35", "k18", "k29", "k30"]);

type Row = { id: string; host: string; what: string; blockedBy: string; minutes: string };

const ROWS: readonly Row[] = TABLE.trim()
	.split("\n")
	.map((line) => {
		const [id = "", host = "", what = "", blockedBy = "", minutes = ""] = line.split("|");
		return { id, host, what, blockedBy, minutes };
	});

export const found = (position: string): string => `${position}-as-found`;
export const added = (position: string): string => `${position}-new`;

/** The part that carries the guests of a position: the adapter plate for n5, the board for n2 and n3, else the part as found. */
const carrierOf = (position: string): string => (position === "k25" || position.startsWith("n") ? added(position) : found(position));

const isNewPlace = (position: string): boolean => position.startsWith("n");

const sidesOf = (blockedBy: string): { side: string | undefined; by: string[] }[] =>
	blockedBy.split(";").map((part) => {
		const [first = "", second] = part.split(":");
		const list = (second ?? first).trim();
		return { side: second === undefined ? undefined : first.trim(), by: list === "-" ? [] : list.split(",").map((one) => one.trim()) };
	});

const threePoint = (likely: number) => ({ low: Math.floor(likely * 0.7), likely, high: likely * 2 });

const positions: readonly Position[] = [
	...ROWS.map(({ id, host, what, blockedBy }): Position => {
		const sides = sidesOf(blockedBy).flatMap(({ side }) => (side === undefined ? [] : [side]));
		return { id, name: what, ...(host === "-" ? {} : { host: carrierOf(host) }), ...(sides.length === 0 ? {} : { sides }) };
	}),
	...PLACES.map((id) => ({ id })),
];

const parts: readonly Part[] = ROWS.flatMap(({ id, what }): Part[] => [
	...(isNewPlace(id)
		? []
		: [
				{
					id: found(id),
					name: what,
					...(id === "k07" ? { unavailable: "licensed disposal, 22 April 2026" } : {}),
					...(id === "k25" ? { condition: "does not work: winding open" } : {}),
					...(id === "k24" ? { condition: "perished: fit new ones if it is to run" } : {}),
					...(id === "k29" ? { danger: "the fuse is bridged with foil" } : {}),
					...(id === "k30" ? { danger: "two-core flex, no earth" } : {}),
				},
			]),
	...(NEW[id] === undefined ? [] : [{ id: added(id), name: NEW[id] }]),
]);

/** In the way are the part as found and the one that took its place. */
const obstructions: readonly Obstruction[] = ROWS.flatMap(({ id, blockedBy }) =>
	sidesOf(blockedBy).flatMap(({ side, by }) =>
		by.flatMap((blocker) =>
			[found(blocker), added(blocker)]
				.filter((part) => parts.some((one) => one.id === part))
				.map((part) => ({ part, position: id, ...(side === undefined ? {} : { sides: [side] }) })),
		),
	),
);

const times: Readonly<Record<string, Times>> = Object.fromEntries(
	ROWS.filter(({ minutes }) => minutes !== "-").map(({ id, minutes }) => {
		const [out = 0, back = 0] = minutes.split("/").map(Number);
		return [id, { out: threePoint(out), in: threePoint(back) }];
	}),
);

const alterations: readonly Alteration[] = [
	{
		id: "a1",
		name: "4 stripped holes opened to 10 mm, filled, M6 inserts",
		position: "k23",
		undo: { low: 25, likely: 40, high: 70, wait: 1440 },
		leavesTrace: true,
	},
	{ id: "a2", name: "leads cut 40 mm from the body", part: found("k25"), undo: { low: 10, likely: 15, high: 30 }, leavesTrace: true },
	{ id: "a3", name: "cable hole 12 to 16 mm", position: "rear-wall", undo: null },
	{ id: "a4", name: "4 removable pads", position: "n4", undo: { low: 6, likely: 10, high: 20 } },
	{ id: "a5", name: "3 chips touched up over an isolating varnish", position: "cabinet", undo: { low: 15, likely: 25, high: 45 } },
	{ id: "a6", name: "corner 40 x 120 mm consolidated and rebuilt", position: "k38", undo: null },
	{ id: "a7", name: "screw sheared, drilled out, tapped 2BA", position: "k07", undo: { low: 20, likely: 30, high: 60 }, leavesTrace: true },
];

const asFound = Object.fromEntries(ROWS.filter(({ id }) => !isNewPlace(id)).map(({ id }) => [id, found(id)]));

const asLeft = Object.fromEntries(
	ROWS.flatMap(({ id }) => {
		if (NEW[id] !== undefined) return [[id, added(id)]];
		return OUT_NOW.includes(id) ? [] : [[id, found(id)]];
	}),
);

/** The positions of the new drive (C1) and of the sign and lantern light (C2), with the places that were altered for them. */
export const C1_AND_C2: readonly string[] = [
	..."k21 k22 k24 k25 n1 n2 n3 n5 k23 k38".split(" "),
	..."k05 k06 k07 k08 k18 n4".split(" "),
	"rear-wall",
];

/** Machine 12 as left, to be taken back to as found: the conversions C1 and C2, the mains safety C3 stays. */
export const machine12: Problem = {
	format: PROBLEM_FORMAT,
	positions,
	parts,
	now: asLeft,
	target: asFound,
	scope: C1_AND_C2,
	obstructions,
	alterations,
	times,
};

/** The same with nothing left out: the most that it could ever be again. */
export const machine12Whole: Problem = { ...machine12, scope: undefined };

/** The position and part of each of the 32 originals. */
export const ORIGINALS: ReadonlyMap<string, string> = new Map(
	ROWS.filter(({ id }) => !isNewPlace(id) && !NOT_ORIGINAL.has(id)).map(({ id }) => [id, found(id)]),
);
