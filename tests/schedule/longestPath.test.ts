import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Activity, criticalChains, longestPath } from "@/lib/schedule/longestPath";

/** Any net without a loop: each activity may need earlier ones only. */
const net: fc.Arbitrary<Activity[]> = fc
	.array(fc.record({ minutes: fc.nat(20), wait: fc.nat(10), needs: fc.array(fc.nat(100), { maxLength: 3 }) }), { maxLength: 9 })
	.map((rows) =>
		rows.map(({ minutes, wait, needs }, place) => ({
			id: `s${place}`,
			minutes,
			wait,
			after: place === 0 ? [] : needs.map((need) => `s${need % place}`),
		})),
	);

/** The end of the longest way by walking every way there is: too slow for a shop, too simple to be wrong. */
function everyWay(activities: readonly Activity[]): number {
	const over = (id: string): number => {
		const activity = activities.find((candidate) => candidate.id === id);
		if (activity === undefined) return 0;
		return Math.max(0, ...activity.after.map(over)) + activity.minutes + (activity.wait ?? 0);
	};
	return Math.max(0, ...activities.map(({ id }) => over(id)));
}

const found = (activities: readonly Activity[]) => {
	const path = longestPath(activities);
	if (!path.ok) throw new Error(path.error.say);
	return path.value;
};

describe("the longest way through the steps", () => {
	it("is as long as the longest of all ways", () => {
		fc.assert(
			fc.property(net, (activities) => {
				expect(found(activities).makespan).toBe(everyWay(activities));
			}),
			{ seed: 22, numRuns: 500 },
		);
	});

	it("slack is exactly how far a step may slip without moving the end", () => {
		fc.assert(
			fc.property(net, fc.nat(8), (activities, pick) => {
				const path = found(activities);
				const times = path.activities[pick % Math.max(1, path.activities.length)];
				fc.pre(times !== undefined);
				const slipped = (by: number) =>
					found(activities.map((activity) => (activity.id === times.id ? { ...activity, minutes: activity.minutes + by } : activity)));
				expect(slipped(times.slack).makespan).toBe(path.makespan);
				expect(slipped(times.slack + 1).makespan).toBe(path.makespan + 1);
			}),
			{ seed: 23, numRuns: 300 },
		);
	});

	it("a critical chain runs from the start to the end without a gap", () => {
		fc.assert(
			fc.property(net, (activities) => {
				const path = found(activities);
				fc.pre(activities.length > 0);
				for (const chain of criticalChains(path, activities, 20)) {
					const length = chain.reduce((sum, id) => {
						const activity = activities.find((candidate) => candidate.id === id);
						return sum + (activity?.minutes ?? 0) + (activity?.wait ?? 0);
					}, 0);
					expect(length).toBe(path.makespan);
					chain.slice(1).forEach((id, place) => {
						expect(activities.find((candidate) => candidate.id === id)?.after).toContain(chain[place]);
					});
				}
				expect(path.chain.length).toBeGreaterThan(0);
			}),
			{ seed: 24, numRuns: 300 },
		);
	});

	it("ends when the last wait is over", () => {
		const path = found([
			{ id: "paint", minutes: 20, wait: 1440, after: [] },
			{ id: "sweep", minutes: 30, after: [] },
		]);
		expect(path.makespan).toBe(1460);
		expect(path.activities).toMatchObject([
			{ id: "paint", earliestFinish: 20, latestFinish: 20, slack: 0 },
			{ id: "sweep", earliestFinish: 30, latestFinish: 1460, slack: 1430 },
		]);
	});

	it("a loop of needs is named step by step", () => {
		const looped = longestPath([
			{ id: "start", minutes: 1, after: [] },
			{ id: "glue", minutes: 1, after: ["start", "drill"] },
			{ id: "sand", minutes: 1, after: ["glue"] },
			{ id: "drill", minutes: 1, after: ["sand"] },
			{ id: "end", minutes: 1, after: ["drill"] },
		]);
		expect(looped.ok === false && looped.error.code).toBe("needs-loop");
		expect(looped.ok === false && looped.error.say).toBe(
			"These steps wait for each other: glue before sand before drill before glue. Take one of these needs away.",
		);
	});

	it("any loop named is a loop", () => {
		const tangle = fc
			.array(fc.array(fc.nat(5), { maxLength: 3 }), { minLength: 1, maxLength: 6 })
			.map((rows) =>
				rows.map((needs, place): Activity => ({ id: `s${place}`, minutes: 1, after: needs.map((need) => `s${need % rows.length}`) })),
			);
		fc.assert(
			fc.property(tangle, (activities) => {
				const path = longestPath(activities);
				if (path.ok) return;
				const loop = path.error.facts?.loop as readonly string[];
				expect(loop.length).toBeGreaterThan(0);
				loop.forEach((id, place) => {
					const next = loop[(place + 1) % loop.length];
					expect(activities.find((activity) => activity.id === next)?.after).toContain(id);
				});
			}),
			{ seed: 25, numRuns: 1000 },
		);
	});

	it("a step listed twice, an unknown need and broken minutes are refused by name", () => {
		const codeOf = (...activities: Activity[]) => {
			const path = longestPath(activities);
			return path.ok ? path.value.makespan : `${path.error.code} ${path.error.facts?.step}`;
		};
		const one = { id: "a", minutes: 5, after: [] };
		expect(codeOf()).toBe(0);
		expect(codeOf(one, one)).toBe("step-twice a");
		expect(codeOf({ ...one, after: ["b"] })).toBe("need-unknown a");
		expect(codeOf({ ...one, after: ["a"] })).toBe("needs-loop undefined");
		for (const minutes of [-1, 0.5, Number.NaN]) expect(codeOf({ ...one, minutes })).toBe("step-not-whole a");
		expect(codeOf({ ...one, wait: -1 })).toBe("step-not-whole a");
	});

	it("a job of 20,000 steps in one long row does not break it", () => {
		const row = Array.from(
			{ length: 20_000 },
			(_, place): Activity => ({ id: `s${place}`, minutes: 1, after: place === 0 ? [] : [`s${place - 1}`] }),
		);
		expect(found(row).makespan).toBe(20_000);
		const ring = row.map((activity, place) => (place === 0 ? { ...activity, after: ["s19999"] } : activity));
		const looped = longestPath(ring);
		expect(looped.ok === false && looped.error.code).toBe("needs-loop");
	});
});
