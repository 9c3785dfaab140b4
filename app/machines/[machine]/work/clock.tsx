"use client";

import { useEffect, useState } from "react";
import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { useActionForm } from "@/app/ui/useActionForm";
import { formatMinutes } from "@/lib/core/minutes";
import { startClockFormSchema, stopClockFormSchema } from "@/lib/steps/schema";
import { startClockAction, stopClockAction } from "./actions";
import { MomentField } from "./momentField";

/**
 * How long a clock has run. The shop keeps the moment it was started and says how long ago that was; from then on the
 * phone only counts on, so that a phone whose own clock is wrong shows the right time, too.
 */
export function Elapsed({ seconds }: { /** Run already when the page was made. */ readonly seconds: number }) {
	const [run, setRun] = useState(seconds);
	useEffect(() => {
		const shownAt = Date.now();
		const show = () => setRun(seconds + Math.max(0, Math.floor((Date.now() - shownAt) / 1000)));
		show();
		const timer = setInterval(show, 5_000);
		return () => clearInterval(timer);
	}, [seconds]);
	return <span className="af-amount">{formatMinutes(Math.floor(run / 60))}</span>;
}

/** Starts a person's clock on a step with one press. */
export function StartClock({
	stepId,
	personId,
	words,
	main = false,
}: {
	readonly stepId: string;
	readonly personId: string;
	readonly words: string;
	readonly main?: boolean;
}) {
	const form = useActionForm({ schema: startClockFormSchema, defaults: { stepId, personId }, action: startClockAction });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<Button type="submit" kind={main ? "main" : "plain"} wide={main} pending={form.pending}>
				{words}
			</Button>
		</form>
	);
}

/** Stops a clock. One that ran over a night asks when it really stopped. */
export function StopClock({
	workId,
	words,
	forgotten,
	main = false,
}: {
	readonly workId: string;
	readonly words: string;
	readonly forgotten: boolean;
	readonly main?: boolean;
}) {
	const form = useActionForm({ schema: stopClockFormSchema, defaults: { workId, stopped: "", note: "" }, action: stopClockAction });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			{forgotten ? (
				<MomentField
					label="When did the work stop?"
					hint="The clock has run over a night. Left empty, it stops now and all of it counts."
					{...form.field("stopped")}
				/>
			) : null}
			<Button type="submit" kind={main ? "main" : "plain"} wide={main} pending={form.pending}>
				{words}
			</Button>
		</form>
	);
}
