// How likely by when, as points to draw. Pure. Places are shares of width and height, 0 to 1, from the left and from below.

import { addDays, dayOf, formatWeekday, startOfDay } from "@/lib/core/days";
import { addMinutes, type Instant, millisOf } from "@/lib/core/instants";
import type { Quantile } from "@/lib/schedule/sample";

export type FinishCurve = {
	readonly points: readonly { readonly x: number; readonly y: number }[];
	/** Days, not too many. */
	readonly ticks: readonly { readonly x: number; readonly label: string }[];
	readonly marks: readonly { readonly percent: number; readonly x: number; readonly y: number; readonly minutes: number }[];
	/** Where a moment stands, drawn at the edge when it lies outside. */
	readonly lineAt: (minutes: number, label: string) => { readonly x: number; readonly label: string };
};

const STEPS = 100;
const MOST_TICKS = 6;

/** `ends` are simulated ends, sorted, in minutes from a moment. The hundredth of the runs at either end is left outside. */
export function finishCurve(
	ends: Float64Array,
	{ from, timeZone, quantiles }: { readonly from: Instant; readonly timeZone: string; readonly quantiles: readonly Quantile[] },
): FinishCurve {
	const endAt = (share: number): number => ends[Math.min(ends.length - 1, Math.max(0, Math.ceil(share * ends.length) - 1))] ?? 0;
	// Runs in which the hours run out have no end: the curve stops below 1 then.
	const known = ends.filter(Number.isFinite);
	const [first, last] = [Math.min(endAt(0.005), known.at(-1) ?? 0), Math.min(endAt(0.995), known.at(-1) ?? 0)];
	// Even what has no spread has some width.
	const room = Math.max(60, (last - first) * 0.08);
	const [left, right] = [first - room, last + room];
	const x = (minutes: number): number => Math.min(1, Math.max(0, (minutes - left) / (right - left)));
	const inner = Array.from({ length: STEPS + 1 }, (_, at) => ({ x: x(endAt(at / STEPS)), y: at / STEPS })).filter(({ y }) =>
		Number.isFinite(endAt(y)),
	);
	return {
		points: [{ x: 0, y: 0 }, { x: inner[0]?.x ?? 0, y: 0 }, ...inner, { x: 1, y: inner.at(-1)?.y ?? 0 }],
		ticks: ticksBetween(left, right, from, timeZone, x),
		marks: quantiles
			.filter(({ value }) => Number.isFinite(value))
			.map(({ percent, value }) => ({ percent, x: x(value), y: percent / 100, minutes: value })),
		lineAt: (minutes, label) => ({ x: x(minutes), label }),
	};
}

/** Midnights between two moments, every one or every so many, named by the day that begins. */
function ticksBetween(left: number, right: number, from: Instant, timeZone: string, x: (minutes: number) => number): FinishCurve["ticks"] {
	const moments: { minutes: number; label: string }[] = [];
	const until = dayOf(addMinutes(from, Math.ceil(right)), timeZone);
	for (let day = addDays(dayOf(addMinutes(from, Math.floor(left)), timeZone), 1); day <= until; day = addDays(day, 1)) {
		const minutes = (millisOf(startOfDay(day, timeZone)) - millisOf(from)) / 60_000;
		if (minutes > left && minutes < right) moments.push({ minutes, label: formatWeekday(day) });
	}
	const every = Math.max(1, Math.ceil(moments.length / MOST_TICKS));
	return moments.filter((_, at) => at % every === 0).map(({ minutes, label }) => ({ x: x(minutes), label }));
}
