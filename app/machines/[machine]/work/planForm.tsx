"use client";

import { useRouter } from "next/navigation";
import type { z } from "zod";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { MinutesField } from "@/app/ui/minutesField";
import type { Option } from "@/app/ui/option";
import { SelectField } from "@/app/ui/selectField";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import type { Overrun } from "@/lib/steps/overrun";
import { changeStepFormSchema, planStepFormSchema, STEP_KIND_WORDS, STEP_KINDS } from "@/lib/steps/schema";
import { changeStepAction, planStepAction } from "./actions";
import { RecordHint } from "./recordHint";
import { TickList } from "./tickList";

export type PlanChoices = {
	readonly steps: readonly Option[];
	readonly people: readonly Option[];
	readonly positions: readonly Option[];
	readonly conversions: readonly Option[];
	readonly parts: readonly Option[];
	readonly waits: readonly string[];
	readonly equipment: readonly Option[];
	readonly parcels: readonly Option[];
	readonly skills: readonly string[];
	/** What the shop's record says of each kind of step. */
	readonly record: readonly Overrun[];
};
export type PlanValues = Omit<z.input<typeof planStepFormSchema>, "machineId">;

/** Plans a new step of the machine, or changes the plan of one that stands. */
export function PlanForm({
	machineId,
	stepId,
	seen,
	workHref,
	defaults,
	choices,
	began,
}: {
	readonly machineId: string;
	/** The step whose plan is changed; null plans a new one. */
	readonly stepId: string | null;
	/** The entry that describes the step, as the page shows it. */
	readonly seen?: number;
	readonly workHref: string;
	readonly defaults: PlanValues;
	readonly choices: PlanChoices;
	/** Work has begun: a step planned now was not of the first plan, and says why. */
	readonly began: boolean;
}) {
	const router = useRouter();
	const planned = useActionForm({
		schema: planStepFormSchema,
		defaults: { ...defaults, machineId },
		action: planStepAction,
		onDone: ({ number }) => router.push(`${workHref}/${number}`),
	});
	const changed = useActionForm({
		schema: changeStepFormSchema,
		defaults: { ...defaults, stepId: stepId ?? "" },
		...(seen === undefined ? {} : { seen }),
		action: changeStepAction,
		onDone: () => router.back(),
	});
	const form = stepId === null ? planned : (changed as unknown as typeof planned);
	const [needs, crew] = [form.form.watch("needs") ?? [], form.form.watch("crew") ?? []];
	const [equipment, parcels] = [form.form.watch("equipment") ?? [], form.form.watch("parcels") ?? []];
	const set = (name: "needs" | "crew" | "equipment" | "parcels") => (chosen: string[]) =>
		form.form.setValue(name, chosen, { shouldDirty: true });
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="What is to be done" {...form.field("title")} />
			<ChoiceField
				label="Kind"
				options={STEP_KINDS.map((kind) => ({ value: kind, label: STEP_KIND_WORDS[kind] }))}
				{...form.field("kind")}
			/>
			<MinutesField
				label="How long it takes one person"
				hint="45 is minutes; 2 h 35 is hours and minutes. With only a likely time, low is 0.7 of it and high twice."
				low={form.field("minutes.low")}
				likely={form.field("minutes.likely")}
				high={form.field("minutes.high")}
			/>
			<RecordHint
				record={choices.record}
				kind={form.form.watch("kind")}
				minutes={form.form.watch("minutes") ?? {}}
				take={(minutes) => form.form.setValue("minutes", minutes, { shouldDirty: true, shouldValidate: true })}
			/>
			<TickList
				label="Who does it"
				hint="Two persons each count. With nobody named, the plan gives it to whoever is free first."
				optional
				name="crew"
				options={choices.people}
				chosen={crew}
				onChoose={set("crew")}
				error={form.errorOf("crew")}
			/>
			<TextField
				label="Somebody must be"
				hint="As skills are said under People: electrically skilled"
				optional
				suggest={choices.skills}
				{...form.field("skill")}
			/>
			{choices.steps.length > 0 ? (
				<TickList
					label="Needs these steps first"
					optional
					name="needs"
					options={choices.steps}
					chosen={needs}
					onChoose={set("needs")}
					error={form.errorOf("needs")}
				/>
			) : null}
			<FormRow>
				<TextField label="Wait after it" hint="24 h, 3 days" optional {...form.field("wait")} />
				<TextField
					label="What waits"
					hint="filler sets, paint dries, parts in the post"
					optional
					suggest={choices.waits}
					{...form.field("waitWhy")}
				/>
			</FormRow>
			<FormRow>
				<TextField label="The wait takes at least" hint="Where it is not sure" optional {...form.field("waitLow")} />
				<TextField label="The wait takes at most" hint="7 days in the post may be 14" optional {...form.field("waitHigh")} />
			</FormRow>
			{choices.parcels.length > 0 ? (
				<TickList
					label="Must have come first"
					optional
					name="parcels"
					options={choices.parcels}
					chosen={parcels}
					onChoose={set("parcels")}
					error={form.errorOf("parcels")}
				/>
			) : null}
			{choices.equipment.length > 0 ? (
				<TickList
					label="Holds"
					hint="Nobody else can use it meanwhile."
					optional
					name="equipment"
					options={choices.equipment}
					chosen={equipment}
					onChoose={set("equipment")}
					error={form.errorOf("equipment")}
				/>
			) : null}
			{equipment.length > 0 ? (
				<SelectField
					label="Until"
					options={[
						{ value: "no", label: "the work is done" },
						{ value: "yes", label: "the wait after it is over, too" },
					]}
					{...form.field("keepsThroughWait")}
				/>
			) : null}
			<TextArea label="Caution" hint="What a hand must know before it begins." optional {...form.field("caution")} />
			<FormRow>
				<SelectField label="Position" optional none="none" options={choices.positions} {...form.field("positionId")} />
				<SelectField label="Part" optional none="none" options={choices.parts} {...form.field("partId")} />
				<SelectField label="Conversion" optional none="none" options={choices.conversions} {...form.field("conversionId")} />
			</FormRow>
			<TextField
				label="Why it was added"
				hint={
					began
						? "Work has begun. With a reason it counts as added; left empty it counts as of the first plan."
						: "Only for what was not in the first plan."
				}
				optional
				{...form.field("addedWhy")}
			/>
			<Button type="submit" kind="main" className="sm:self-start" pending={form.pending}>
				{stepId === null ? "Plan the step" : "Keep the plan"}
			</Button>
		</form>
	);
}
