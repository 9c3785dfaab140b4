"use client";

import { useState } from "react";
import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import type { Option } from "@/app/ui/option";
import { SelectField } from "@/app/ui/selectField";
import { SureButton } from "@/app/ui/sureButton";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { formatMinutes } from "@/lib/core/minutes";
import type { Beside } from "@/lib/steps/besideQueries";
import {
	addTimeFormSchema,
	dropStepSchema,
	finishStepFormSchema,
	reopenStepSchema,
	startClockFormSchema,
	voidTimeSchema,
} from "@/lib/steps/schema";
import { addTimeAction, dropStepAction, finishStepAction, reopenStepAction, startClockAction, voidTimeAction } from "./actions";
import { MomentField } from "./momentField";

/** Somebody else's clock, started for them. */
export function StartForOther({ stepId, people }: { readonly stepId: string; readonly people: readonly Option[] }) {
	const form = useActionForm({
		schema: startClockFormSchema,
		defaults: { stepId, personId: people[0]?.value ?? "" },
		action: startClockAction,
	});
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<SelectField label="Somebody else" options={people} {...form.field("personId")} />
			<Button type="submit" className="sm:self-start" pending={form.pending}>
				Start their clock
			</Button>
		</form>
	);
}

/** Time that no clock saw. It stays marked as added from memory. */
export function AddTimeForm({ stepId, me, people }: { readonly stepId: string; readonly me: string; readonly people: readonly Option[] }) {
	const [beside, setBeside] = useState<readonly Beside[] | null>(null);
	const form = useActionForm({
		schema: addTimeFormSchema,
		defaults: { stepId, personId: me, minutes: "", began: "", note: "" },
		action: addTimeAction,
		onDone: (added, { reset }) => {
			reset();
			setBeside(added.beside);
		},
	});
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<FormRow>
				<TextField label="How long" hint="35, or 2 h 35" inputMode="text" {...form.field("minutes")} />
				<SelectField label="Who" options={people} {...form.field("personId")} />
			</FormRow>
			<MomentField label="When it began" hint="Left empty, it ended now." {...form.field("began")} />
			<TextField label="Note" optional {...form.field("note")} />
			<Button type="submit" className="sm:self-start" pending={form.pending}>
				Add the time
			</Button>
			{beside === null ? null : beside.length === 0 ? (
				<Notice means="original">Added, and marked as from memory.</Notice>
			) : (
				<Notice means="wait" title="Added, but at two things at once">
					<ul className="flex flex-col gap-1">
						{beside.map((other) => (
							<li key={`${other.machine} ${other.step} ${other.startedAt}`}>
								{`${formatMinutes(other.minutes)} of it also count on `}
								<Link href={`/machines/${other.machine}/work/${other.step}`}>
									{`step ${other.step} of machine ${other.machine}, ${other.title}`}
								</Link>
								.
							</li>
						))}
					</ul>
					<p>Both count until one is put right. It can be put right above.</p>
				</Notice>
			)}
		</form>
	);
}

/** Says that the step is done, and what happened. */
export function FinishForm({ stepId, wait }: { readonly stepId: string /** "filler sets, 1 day": begins now. */; readonly wait: string }) {
	const form = useActionForm({
		schema: finishStepFormSchema,
		defaults: { stepId, words: "", finished: "" },
		action: finishStepAction,
	});
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextArea
				label="What happened"
				hint="What the next person must know. It may come from the photos this evening."
				optional
				{...form.field("words")}
			/>
			<MomentField
				label="When it was done"
				hint={wait ? `Left empty, it is now. Its wait begins then: ${wait}.` : "Left empty, it is now."}
				{...form.field("finished")}
			/>
			<Button type="submit" kind="main" className="sm:self-start" pending={form.pending}>
				It is done
			</Button>
		</form>
	);
}

export function DropForm({ stepId }: { readonly stepId: string }) {
	const form = useActionForm({ schema: dropStepSchema, defaults: { stepId, why: "" }, action: dropStepAction });
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="Why it will not be done" {...form.field("why")} />
			<Button type="submit" className="sm:self-start" pending={form.pending}>
				Drop the step
			</Button>
		</form>
	);
}

export function ReopenForm({ stepId }: { readonly stepId: string }) {
	const form = useActionForm({ schema: reopenStepSchema, defaults: { stepId, why: "" }, action: reopenStepAction });
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="Why it is not done after all" {...form.field("why")} />
			<Button type="submit" className="sm:self-start" pending={form.pending}>
				Open it again
			</Button>
		</form>
	);
}

/** Takes one line of time back; it stays readable and counts for nothing. */
export function VoidTimeForm({ workId, whose }: { readonly workId: string; readonly whose: string }) {
	const form = useActionForm({ schema: voidTimeSchema, defaults: { workId, why: "" }, action: voidTimeAction });
	return (
		<details className="no-print">
			<summary className="text-ink-2">Take back</summary>
			<form className="af-form pt-2" {...form.formProps}>
				<FormProblem problem={form.problem} />
				<TextField label={`Why ${whose} was wrong`} {...form.field("why")} />
				<SureButton
					type="submit"
					kind="plain"
					pending={form.pending}
					question="It stays readable and counts for nothing."
					yes="Take it back"
				>
					Take it back
				</SureButton>
			</form>
		</details>
	);
}
