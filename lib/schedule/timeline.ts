// The plan as a picture: days side by side, nights left out, a row for each person, for what a machine waits for and for equipment.
// Pure. Places are shares of the width, 0 to 1.

import type { DayAhead } from "@/lib/calendar/windows";
import type { Day } from "@/lib/core/days";
import type { ShopPlan } from "@/lib/schedule/shopPlan";
import { plannedArrival, type ShopProblem } from "@/lib/schedule/shopProblem";
import { inCommon, type Windows } from "@/lib/schedule/workingTime";

export type TimelineColumn = {
	readonly day: Day;
	readonly from: number;
	readonly until: number;
	/** Nobody is in. */
	readonly isShut: boolean;
};

export type SliceKind = "work" | "wait" | "post" | "held" | "off";

export type Slice = {
	/** The task; -1 for what belongs to none. */
	readonly task: number;
	/** The parcel, for what is in the post; -1 else. */
	readonly parcel: number;
	readonly kind: SliceKind;
	readonly from: number;
	readonly until: number;
	/** The widest piece of a task in its row: it carries the label. */
	readonly isLabelled: boolean;
};

export type TimelineRow = {
	readonly of: "person" | "machine" | "equipment";
	/** Its number in the problem. */
	readonly at: number;
	/** Slices over each other, in lanes. */
	readonly lanes: readonly (readonly Slice[])[];
};

export type Timeline = {
	readonly columns: readonly TimelineColumn[];
	readonly rows: readonly TimelineRow[];
	/** Where now is; null when it is not among these days. */
	readonly now: number | null;
};

/** A day on which nobody is in is so wide, beside one on which somebody is. */
const SHUT_WIDTH = 0.35;

/** The picture of these days. Requires one day or more, in order. */
export function timelineOf(problem: ShopProblem, plan: Pick<ShopPlan, "tasks">, days: readonly DayAhead[]): Timeline {
	const [begins, ends] = [days[0]?.minutesTo(0) ?? 0, days.at(-1)?.minutesTo(1440) ?? 0];
	const shown = problem.people.map(({ windows }) => windows.filter(({ from, until }) => from < ends && until > begins));
	const scale = new Scale(days, shown);
	const pieces = (from: number, until: number, row: Omit<Slice, "from" | "until" | "isLabelled">, windows: Windows | null): Slice[] =>
		labelled(
			(windows ?? [{ from, until }])
				.map((window) => ({ from: scale.at(Math.max(from, window.from)), until: scale.at(Math.min(until, window.until)) }))
				.filter((piece) => piece.from < piece.until)
				.map((piece) => ({ ...row, ...piece })),
		);
	const none = { task: -1, parcel: -1 };
	const people = shown.map((windows, at): TimelineRow => {
		const work = plan.tasks.flatMap((row, task) => {
			if (!row.crew.includes(at) || !(row.finish > row.start) || row.finish === Number.POSITIVE_INFINITY) return [];
			const shared = row.crew.reduce<Windows>((common, person) => inCommon(common, shown[person] ?? []), windows);
			return pieces(row.start, row.finish, { ...none, kind: "work", task }, shared);
		});
		const off = scale.openDays.flatMap(({ from, until }) =>
			windows.some((window) => window.from < until && window.until > from) ? [] : pieces(from, until, { ...none, kind: "off" }, null),
		);
		return { of: "person", at, lanes: [[...off, ...work].sort((a, b) => a.from - b.from)] };
	});
	const machines = problem.machines.map((_, at): TimelineRow => {
		const mine = problem.tasks.flatMap((task, number) => (task.machine === at ? [number] : []));
		const waits = mine.flatMap((task) => {
			const row = plan.tasks[task];
			const rests = problem.tasks[task]?.release ?? 0;
			return [
				...(row === undefined || row.over === Number.POSITIVE_INFINITY
					? []
					: pieces(row.finish, row.over, { ...none, kind: "wait", task }, null)),
				...pieces(0, rests, { ...none, kind: "wait", task }, null),
			];
		});
		const parcels = [...new Set(mine.flatMap((task) => problem.tasks[task]?.parcels ?? []))].flatMap((parcel) => {
			const arrival = problem.arrivals[parcel];
			return arrival === undefined ? [] : pieces(0, plannedArrival(arrival), { ...none, kind: "post", parcel }, null);
		});
		return { of: "machine", at, lanes: inLanes([...parcels, ...waits]) };
	});
	const equipment = problem.equipment.map((_, at): TimelineRow => {
		const held = problem.tasks.flatMap(({ holds }, task) => {
			const row = plan.tasks[task];
			const hold = holds.find((one) => one.equipment === at);
			if (row === undefined || hold === undefined || row.finish === Number.POSITIVE_INFINITY) return [];
			return pieces(row.start, hold.throughWait ? row.over : row.finish, { ...none, kind: "held", task }, null);
		});
		return { of: "equipment", at, lanes: inLanes(held) };
	});
	return {
		columns: scale.columns,
		rows: [...people, ...[...machines, ...equipment].filter(({ lanes }) => lanes.length > 0)],
		now: scale.holds(0) ? scale.at(0) : null,
	};
}

/** Days side by side: of each the time in which anybody is ever in, the same clock for all; a day without anybody is narrow. */
class Scale {
	readonly columns: readonly TimelineColumn[];
	/** The days on which somebody is in, from midnight to midnight. */
	readonly openDays: readonly { readonly from: number; readonly until: number }[];
	private readonly days: readonly { readonly begins: number; readonly ends: number; readonly opens: number; readonly closes: number }[];

	constructor(days: readonly DayAhead[], people: readonly Windows[]) {
		const whole = days.map(({ day, minutesTo }) => {
			const [begins, ends] = [minutesTo(0), minutesTo(1440)];
			const within = people.flat().filter(({ from, until }) => from < ends && until > begins);
			return { day, begins, ends, within };
		});
		const clocks = whole.flatMap(({ begins, ends, within }) =>
			within.map(({ from, until }) => ({ opens: Math.max(from, begins) - begins, closes: Math.min(until, ends) - begins })),
		);
		const opens = Math.min(1440, ...clocks.map((clock) => clock.opens));
		const closes = Math.max(0, ...clocks.map((clock) => clock.closes));
		this.days = whole.map(({ begins, ends, within }) =>
			within.length === 0
				? { begins, ends, opens: begins, closes: ends }
				: { begins, ends, opens: begins + opens, closes: Math.min(ends, begins + closes) },
		);
		this.openDays = whole.filter(({ within }) => within.length > 0).map(({ begins, ends }) => ({ from: begins, until: ends }));
		const widths = whole.map(({ within }) => (within.length === 0 ? SHUT_WIDTH : 1));
		const total = widths.reduce((sum, width) => sum + width, 0);
		let from = 0;
		this.columns = whole.map(({ day, within }, at) => {
			const until = from + (widths[at] ?? 0) / total;
			const column = { day, from, until, isShut: within.length === 0 };
			from = until;
			return column;
		});
	}

	/** Where a moment lies: at night, at the edge between two days. Before the first day 0, after the last 1. */
	at(moment: number): number {
		for (const [number, { ends, opens, closes }] of this.days.entries()) {
			if (moment >= ends) continue;
			const column = this.columns[number];
			if (column === undefined) break;
			const share = Math.min(1, Math.max(0, (moment - opens) / (closes - opens)));
			return column.from + share * (column.until - column.from);
		}
		return 1;
	}

	holds(moment: number): boolean {
		return this.days.some(({ begins, ends }) => begins <= moment && moment < ends);
	}
}

function labelled(pieces: readonly Omit<Slice, "isLabelled">[]): Slice[] {
	const widest = pieces.reduce((most, { from, until }) => Math.max(most, until - from), 0);
	const at = pieces.findIndex(({ from, until }) => until - from === widest);
	return pieces.map((piece, number) => ({ ...piece, isLabelled: number === at }));
}

/** Puts what overlaps into lanes, each as high up as there is room. */
function inLanes(slices: readonly Slice[]): Slice[][] {
	const lanes: Slice[][] = [];
	for (const slice of [...slices].sort((a, b) => a.from - b.from || a.until - b.until)) {
		const lane = lanes.find((one) => (one.at(-1)?.until ?? 0) <= slice.from + 1e-9);
		if (lane === undefined) lanes.push([slice]);
		else lane.push(slice);
	}
	return lanes;
}
