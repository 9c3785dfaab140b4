// The demo's calendar: who worked when, and that it could have been so.

import { describe, expect, test } from "vitest";
import { docksideMagpie } from "@/seed/data/docksideMagpie";
import { hairpinRidge } from "@/seed/data/hairpinRidge";
import { meteorMinnow } from "@/seed/data/meteorMinnow";
import { shop } from "@/seed/data/shop";
import { skerryLight } from "@/seed/data/skerryLight";
import type { Instant, Session } from "@/seed/data/types";

const machines = [skerryLight, meteorMinnow, docksideMagpie, hairpinRidge];
const clock = new Intl.DateTimeFormat("en-GB", {
	timeZone: shop.timeZone,
	weekday: "short",
	year: "numeric",
	month: "2-digit",
	day: "2-digit",
	hour: "2-digit",
	minute: "2-digit",
	hourCycle: "h23",
});

/** An instant as the shop's own wall clock shows it, by the platform's zone tables. */
function onTheWall(instant: Instant | number): { weekday: string; day: string; time: string } {
	const parts = Object.fromEntries(clock.formatToParts(new Date(instant)).map((part) => [part.type, part.value]));
	return {
		weekday: parts.weekday ?? "",
		day: `${parts.year}-${parts.month}-${parts.day}`,
		time: `${parts.hour}:${parts.minute}`,
	};
}
const endOf = (session: Session): number => Date.parse(session.start) + session.minutes * 60_000;
const allSessions = machines.flatMap((machine) =>
	machine.steps.flatMap((step) => step.sessions.map((session) => ({ ...session, where: `${machine.number} ${step.id}` }))),
);

test("every session lies within a working day, never across lunch, never on a closed day, never after the demo's own today", () => {
	expect(allSessions.length).toBeGreaterThan(60);
	for (const session of allSessions) {
		const from = onTheWall(session.start);
		const until = onTheWall(endOf(session));
		expect(["Sat", "Sun"], session.where).not.toContain(from.weekday);
		expect(shop.closedDays as readonly string[], session.where).not.toContain(from.day);
		expect(until.day, session.where).toBe(from.day);
		expect(from.time >= shop.opens && until.time <= shop.closes, `${session.where} ${from.time}-${until.time}`).toBe(true);
		expect(until.time <= shop.lunch.from || from.time >= shop.lunch.to, `${session.where} ${from.time}-${until.time}`).toBe(true);
		expect(from.day <= shop.today, session.where).toBe(true);
	}
});

test("nobody is in two places at once", () => {
	for (const person of ["A", "B", "C"]) {
		const own = allSessions.filter((session) => session.person === person).sort((first, second) => (first.start < second.start ? -1 : 1));
		for (const [index, session] of own.entries()) {
			const before = own[index - 1];
			if (before !== undefined)
				expect(endOf(before), `${before.where} and ${session.where}`).toBeLessThanOrEqual(Date.parse(session.start));
		}
	}
});

describe.each(machines)("$name", (machine) => {
	const finish = (id: string): number => Math.max(...(machine.steps.find((step) => step.id === id)?.sessions ?? []).map(endOf));

	test("a done step's sessions add up to its minutes, for each of its people and nobody else", () => {
		for (const step of machine.steps) {
			const of = (person: string) =>
				step.sessions.filter((session) => session.person === person).reduce((total, session) => total + session.minutes, 0);
			expect(
				step.sessions.every((session) => step.who.includes(session.person)),
				step.id,
			).toBe(true);
			if (step.state === "done") for (const person of step.who) expect(of(person), step.id).toBe(step.actualMinutes);
			if (step.state === "planned") expect(step.sessions).toEqual([]);
			if (step.state !== "done") expect(step.actualMinutes).toBeUndefined();
		}
	});

	test("no step began before what it needs was done and waited for", () => {
		for (const step of machine.steps.filter((each) => each.sessions.length > 0)) {
			const start = Math.min(...step.sessions.map((session) => Date.parse(session.start)));
			expect(start).toBeGreaterThanOrEqual(Date.parse(machine.received));
			for (const id of step.after) {
				const needed = machine.steps.find((each) => each.id === id);
				expect(needed?.state, `${step.id} needs ${id}`).toBe("done");
				expect(start, `${step.id} after ${id}`).toBeGreaterThanOrEqual(finish(id) + (needed?.wait?.minutes ?? 0) * 60_000);
			}
		}
	});

	test("nothing was used before its parcel came", () => {
		for (const step of machine.steps.filter((each) => each.sessions.length > 0)) {
			for (const move of step.moves) {
				const lines = machine.newParts.find((part) => part.key === move.part)?.from ?? [];
				for (const line of lines) {
					const received = machine.purchases.find((purchase) => purchase.lines.some((each) => each.id === line))?.received;
					expect(
						received !== undefined && received <= onTheWall(Math.min(...step.sessions.map((session) => Date.parse(session.start)))).day,
						`${step.id} ${line}`,
					).toBe(true);
				}
			}
		}
	});

	test("a test is recorded within the step it belongs to, or its machine time", () => {
		for (const { id, runs } of machine.tests) {
			for (const run of runs) {
				const step = machine.steps.find((each) => each.id === run.step);
				const start = Math.min(...(step?.sessions ?? []).map((session) => Date.parse(session.start)));
				const end = finish(run.step) + (step?.wait?.minutes ?? 0) * 60_000;
				expect(Date.parse(run.at) >= start && Date.parse(run.at) <= end, `${id} in ${run.step}`).toBe(true);
				expect(step?.who).toContain(run.by);
			}
		}
	});
});

test("machine 12: S01 to S22 are all done before any later step begins, so that the checkpoint can be shown", () => {
	const ends = skerryLight.steps.filter((step) => step.id <= "S22").flatMap((step) => step.sessions.map(endOf));
	const later = skerryLight.steps
		.filter((step) => step.id > "S22")
		.flatMap((step) => step.sessions.map((session) => Date.parse(session.start)));
	expect(Math.max(...ends)).toBeLessThanOrEqual(Math.min(...later));
});

test("machine 12 came on 2 March 2026, its ballast went on 22 April, it was handed over after that", () => {
	expect(onTheWall(skerryLight.received).day).toBe("2026-03-02");
	expect(skerryLight.disposals.map((disposal) => disposal.day)).toEqual(["2026-04-22"]);
	const handOver = skerryLight.steps.at(-1)?.sessions[0]?.start ?? "";
	expect(onTheWall(handOver).day > "2026-04-22").toBe(true);
	expect((skerryLight.sale?.day ?? "") > onTheWall(handOver).day).toBe(true);
});

test("what was added later was known later", () => {
	for (const machine of machines) {
		for (const position of machine.positions)
			for (const later of position.asFound?.later ?? []) expect(later.at > machine.received, position.id).toBe(true);
	}
});
