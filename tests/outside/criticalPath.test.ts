// The critical path and three-point estimates against textbooks and exercises; sources stand in each data file.
// Durations are counted in sixths of the file's unit, so nothing is rounded before it is added.
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { betaVariance, expectedSixths, sigmaOfLabour, variance36ths } from "@/lib/money/pert";
import { type Activity, criticalChains, longestPath } from "@/lib/schedule/longestPath";
import betaPert from "./data/quantiles/beta-pert.json";

type Row = {
	readonly id: string;
	readonly d?: number;
	readonly a?: number;
	readonly m?: number;
	readonly b?: number;
	readonly after: readonly string[];
};
type Net = {
	readonly name: string;
	readonly activities: readonly Row[];
	readonly expected: {
		readonly duration: number;
		readonly criticalActivities: readonly string[];
		readonly criticalPaths: readonly (readonly string[])[];
		readonly expectedTimes?: Readonly<Record<string, number>>;
		readonly variances?: Readonly<Record<string, number>>;
		readonly variance?: number;
		readonly standardDeviation?: number;
		readonly times: Readonly<Record<string, { es: number; ef: number; ls: number; lf: number; slack: number }>>;
	};
	readonly published?: { readonly duration?: number; readonly criticalPath?: readonly string[] };
};

const folder = path.join(import.meta.dirname, "data/pert");
const nets = readdirSync(folder).map((name): Net => JSON.parse(readFileSync(path.join(folder, name), "utf8")));

const estimateOf = ({ d, a, m, b }: Row) => ({ low: a ?? d ?? 0, likely: m ?? d ?? 0, high: b ?? d ?? 0 });
const activitiesOf = (net: Net): Activity[] =>
	net.activities.map((row) => ({ id: row.id, minutes: expectedSixths(estimateOf(row)), after: row.after }));
const pathOf = (net: Net) => {
	const found = longestPath(activitiesOf(net));
	if (!found.ok) throw new Error(found.error.say);
	return found.value;
};

describe("networks of activities", () => {
	it("there are seven", () => {
		expect(nets.map(({ name }) => name).sort()).toEqual([
			"assembly-seven",
			"eight-activities",
			"eight-slack",
			"fourteen-activities",
			"nursing-eleven",
			"openstax-house",
			"wikipedia-seven",
		]);
	});

	it.each(nets)("$name takes $expected.duration", (net) => {
		const found = pathOf(net);
		expect(found.makespan / 6).toBeCloseTo(net.expected.duration, 6);
		const critical = found.activities.filter(({ slack }) => slack === 0).map(({ id }) => id);
		expect([...critical].sort()).toEqual([...net.expected.criticalActivities].sort());
		expect(criticalChains(found, activitiesOf(net), 100).sort()).toEqual([...net.expected.criticalPaths].sort());
		for (const times of found.activities) {
			const { es, ef, ls, lf, slack } = net.expected.times[times.id] ?? {};
			const ours = [times.earliestStart, times.earliestFinish, times.latestStart, times.latestFinish, times.slack];
			[es, ef, ls, lf, slack].forEach((wanted, place) => {
				expect((ours[place] ?? Number.NaN) / 6).toBeCloseTo(wanted ?? Number.NaN, 5);
			});
		}
	});

	it.each(nets.filter(({ published }) => published?.criticalPath !== undefined))(
		"$name has the critical path that its source prints",
		(net) => {
			expect(pathOf(net).chain).toEqual(net.published?.criticalPath);
		},
	);

	it.each(nets.filter(({ expected }) => expected.variance !== undefined))("$name varies as computed", (net) => {
		const rows = new Map(net.activities.map((row) => [row.id, row]));
		const along = (chain: readonly string[]) => chain.flatMap((id) => rows.get(id) ?? []).map(estimateOf);
		for (const row of net.activities) {
			expect(expectedSixths(estimateOf(row)) / 6).toBeCloseTo(net.expected.expectedTimes?.[row.id] ?? Number.NaN, 5);
			expect(variance36ths(estimateOf(row)) / 36).toBeCloseTo(net.expected.variances?.[row.id] ?? Number.NaN, 5);
		}
		const chain = along(pathOf(net).chain);
		expect(chain.reduce((sum, step) => sum + variance36ths(step), 0) / 36).toBeCloseTo(net.expected.variance ?? Number.NaN, 5);
		expect(sigmaOfLabour(chain.map((estimate) => ({ estimate, people: 1 })))).toBeCloseTo(net.expected.standardDeviation ?? Number.NaN, 5);
	});

	it("adding rounded times would give 19.51 where the exact answer is 19.5", () => {
		const net = nets.find(({ name }) => name === "wikipedia-seven");
		expect(net?.published?.duration).toBe(19.51);
		expect(net && pathOf(net).makespan).toBe(19.5 * 6);
	});
});

// Formulas from memory, values from SciPy 1.17.1 (reference).
it.each(betaPert.cases)(
	"an estimate of $a, $m, $b has mean $mean and two different variances",
	({ a, m, b, mean, varianceBeta, varianceClassic }) => {
		const estimate = { low: a, likely: m, high: b };
		expect(expectedSixths(estimate) / 6).toBeCloseTo(mean, 8);
		expect(betaVariance(estimate)).toBeCloseTo(varianceBeta, 8);
		expect(variance36ths(estimate) / 36).toBeCloseTo(varianceClassic, 8);
	},
);
