// The bridge from what was estimated to what it comes to: by cost row, what is over and what is under. Pure.
//
// Each step begins where the one before it ended, so that the bars add up to the table beside them, to the last unit.
import { type MinorUnits, minor } from "@/lib/money/money";

export type BridgeRow = { readonly what: string; readonly estimated: MinorUnits; readonly atCompletion: MinorUnits };

export type BridgeStep = {
	readonly what: string;
	/** The two ends stand on nothing; between them a row lifts or lowers. */
	readonly kind: "estimate" | "over" | "under" | "completion";
	/** Where the bar begins and ends. */
	readonly from: MinorUnits;
	readonly to: MinorUnits;
};

/** From the estimate over every row that differs from it to completion. Rows that come out as estimated make no step. */
export function bridgeOf(rows: readonly BridgeRow[]): BridgeStep[] {
	let at = minor(rows.reduce((sum, { estimated }) => sum + estimated, 0));
	const steps: BridgeStep[] = [{ what: "Estimated", kind: "estimate", from: minor(0), to: at }];
	for (const { what, estimated, atCompletion } of rows) {
		if (atCompletion === estimated) continue;
		const next = minor(at + atCompletion - estimated);
		steps.push({ what, kind: next > at ? "over" : "under", from: at, to: next });
		at = next;
	}
	return [...steps, { what: "At completion", kind: "completion", from: minor(0), to: at }];
}

/** What a step adds, or takes off. */
export const liftOf = ({ from, to }: BridgeStep): MinorUnits => minor(to - from);
