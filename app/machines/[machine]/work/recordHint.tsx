"use client";

import { useState } from "react";
import { Button } from "@/app/ui/button";
import { formatMinutes } from "@/lib/core/minutes";
import { threePointsField } from "@/lib/positions/threePoints";
import { corrected, factorInWords, NO_CORRECTION_WEIGHS, type Overrun, TOO_FEW } from "@/lib/steps/overrun";
import { STEP_KIND_WORDS } from "@/lib/steps/schema";

type Typed = { readonly low?: unknown; readonly likely?: unknown; readonly high?: unknown };

/** What the shop's record says of an estimate as it is typed, in numbers, and one press to take it over. */
export function RecordHint({
	record,
	kind,
	minutes,
	take,
}: {
	readonly record: readonly Overrun[];
	readonly kind: string;
	readonly minutes: Typed;
	readonly take: (minutes: { low: string; likely: string; high: string }) => void;
}) {
	// What was taken over already is not multiplied once more.
	const [taken, setTaken] = useState("");
	const found = record.find((one) => one.kind === kind);
	if (found === undefined) return null;
	const read = threePointsField.safeParse(minutes);
	const estimate = read.success ? read.data : null;
	const then = estimate === null ? null : corrected(estimate, found.factor);
	const isTaken = estimate !== null && taken === `${kind} ${estimate.likely}`;
	const isOther = then !== null && estimate !== null && !isTaken && then.likely !== estimate.likely;
	const say =
		`Your last ${found.steps === 1 ? "step" : `${found.steps} steps`} of the kind "${STEP_KIND_WORDS[found.kind]}" took ${factorInWords(found.ratio)} times what was expected` +
		`${found.steps < TOO_FEW ? ", too few to tell" : ""}; counted for ${found.steps} parts in ${found.steps + NO_CORRECTION_WEIGHS}, that is ${factorInWords(found.factor)} times.`;
	return (
		<div className="flex flex-col items-start gap-2 text-ink-2">
			<p>{say}</p>
			{isOther && then !== null ? (
				<Button
					kind="quiet"
					onClick={() => {
						setTaken(`${kind} ${then.likely}`);
						take({ low: formatMinutes(then.low), likely: formatMinutes(then.likely), high: formatMinutes(then.high) });
					}}
				>
					{`Take ${formatMinutes(then.low)}, ${formatMinutes(then.likely)}, ${formatMinutes(then.high)}`}
				</Button>
			) : null}
		</div>
	);
}
