"use client";

import { useState } from "react";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import type { Means } from "@/app/ui/means";
import { Notice } from "@/app/ui/notice";
import type { Option } from "@/app/ui/option";
import { SelectField } from "@/app/ui/selectField";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import type { Verdict } from "@/lib/tests/limits";
import { runTestFormSchema } from "@/lib/tests/schema";
import { MomentField } from "../work/momentField";
import { runTestAction } from "./actions";

const MEANS: Readonly<Record<Verdict, Means>> = { pass: "original", fail: "stop", unjudged: "wait" };

/** Records what was measured. The limit stands; it is held against it as soon as it is recorded. */
export function RunForm({
	testId,
	hint,
	unit,
	me,
	people,
	instruments,
	phase,
}: {
	readonly testId: string;
	readonly hint: string;
	readonly unit: string;
	readonly me: string;
	readonly people: readonly Option[];
	readonly instruments: readonly string[];
	/** What this run most likely is. */
	readonly phase: "before" | "after";
}) {
	const [judged, setJudged] = useState<{ readonly verdict: Verdict; readonly say: string } | null>(null);
	const form = useActionForm({
		schema: runTestFormSchema,
		defaults: { testId, phase, value: "", words: "", instrument: "", personId: me, captureId: "", measured: "" },
		action: runTestAction,
		onDone: ({ verdict, say }, { setValue }) => {
			setJudged({ verdict, say });
			setValue("value", "");
			setValue("words", "");
		},
	});
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<ChoiceField
				label="When in the work"
				options={[
					{ value: "before", label: "before", hint: "as found" },
					{ value: "after", label: "after" },
				]}
				{...form.field("phase")}
			/>
			<TextField label={unit ? `What was measured, ${unit}` : "What was measured"} hint={hint} {...form.field("value")} />
			<FormRow>
				<TextField label="Instrument" hint="Make, serial, calibrated when" optional suggest={instruments} {...form.field("instrument")} />
				<SelectField label="By whom" options={people} {...form.field("personId")} />
			</FormRow>
			<MomentField label="When it was measured" {...form.field("measured")} />
			<TextField label="Remark" optional {...form.field("words")} />
			<Button type="submit" kind="main" className="sm:self-start" pending={form.pending}>
				Record the reading
			</Button>
			{judged ? (
				<div className="mt-3">
					<Notice means={MEANS[judged.verdict]} title="Recorded">
						{judged.say}
					</Notice>
				</div>
			) : null}
		</form>
	);
}
