"use client";

import { ChoiceField } from "@/app/ui/choiceField";
import { FormRow } from "@/app/ui/layouts";
import { MoneyField } from "@/app/ui/moneyField";
import type { Option } from "@/app/ui/option";
import { SelectField } from "@/app/ui/selectField";
import { TextField } from "@/app/ui/textField";
import type { ActionForm } from "@/app/ui/useActionForm";
import { UNDO_WORDS } from "@/lib/alterations/schema";
import { type DecisionTyped, DOES_WORDS, thingOf } from "@/lib/decisions/schema";
import { thoughtOf } from "@/lib/reversal/thought";
import { Beforehand } from "./beforehand";

/** What an option may speak of; the values are "position:ID" and "part:ID". */
export type Things = { readonly positions: readonly Option[]; readonly parts: readonly Option[] };

const DOES = [
	{ value: "nothing", label: DOES_WORDS.nothing, hint: "it goes back as it was" },
	{ value: "alter", label: DOES_WORDS.alter, hint: "drills, cuts, strips" },
	{ value: "parting", label: DOES_WORDS.parting, hint: "scrapped, sold, used elsewhere" },
	{ value: "other", label: DOES_WORDS.other },
];
const UNDO = [
	{ value: "clean", label: UNDO_WORDS.clean },
	{ value: "trace", label: UNDO_WORDS.trace },
	{ value: "never", label: UNDO_WORDS.never },
];
const STATES = [
	{ value: "open", label: "open" },
	{ value: "chosen", label: "chosen" },
	{ value: "refused", label: "refused" },
];

/** One option: what it is, what it costs, what it does to the machine, and what reversal would lose by that, worked out at once. */
export function DecideOption({
	index,
	form,
	machineId,
	currency,
	things,
}: {
	readonly index: number;
	readonly form: ActionForm<DecisionTyped>;
	readonly machineId: string;
	readonly currency: string;
	readonly things: Things;
}) {
	const does = form.form.watch(`options.${index}.does`) ?? "other";
	const thing = form.form.watch(`options.${index}.thing`) ?? "";
	const undo = form.form.watch(`options.${index}.undo`) ?? null;
	const { positionId, partId } = thingOf(thing);
	return (
		<fieldset className="min-w-0 rounded-plain border border-line p-4">
			<legend className="px-1 font-bold">{`Option ${index + 1}`}</legend>
			<TextField label="What it is" {...form.field(`options.${index}.words`)} />
			<FormRow>
				<MoneyField label="Cost" optional currency={currency} {...form.field(`options.${index}.cost`)} />
				<TextField label="Time" optional hint="35, or 2 h 35" {...form.field(`options.${index}.minutes`)} />
			</FormRow>
			<ChoiceField label="What it would do to the machine" options={DOES} {...form.field(`options.${index}.does`)} />
			{does === "alter" ? (
				<>
					<SelectField
						label="What it would alter"
						none="choose"
						groups={[
							{ label: "Parts, wherever they are", options: things.parts },
							{ label: "Positions: a seat, a hole", options: things.positions },
						]}
						{...form.field(`options.${index}.thing`)}
					/>
					<ChoiceField label="Undoing it" options={UNDO} {...form.field(`options.${index}.undo`)} />
				</>
			) : null}
			{does === "parting" ? (
				<SelectField label="Which part goes" none="choose" options={things.parts} {...form.field(`options.${index}.thing`)} />
			) : null}
			<Beforehand machineId={machineId} thought={thoughtOf({ does, positionId, partId, undo })} />
			<TextField
				label={does === "other" ? "What reversal would lose" : "What else is lost by it"}
				optional
				{...form.field(`options.${index}.loses`)}
			/>
			<ChoiceField label="Decided" options={STATES} {...form.field(`options.${index}.state`)} />
		</fieldset>
	);
}
