"use client";

import { useRouter } from "next/navigation";
import { useMemo } from "react";
import { useWatch } from "react-hook-form";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { DayField } from "@/app/ui/dayField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow, Stack } from "@/app/ui/layouts";
import { MoneyField } from "@/app/ui/moneyField";
import { Picture } from "@/app/ui/photoGrid";
import { SelectField } from "@/app/ui/selectField";
import { SureButton } from "@/app/ui/sureButton";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { describeMachineSchema, handOverSchema, setMachineStateSchema, setPortraitSchema } from "@/lib/machines/schema";
import type { CurrencyCode } from "@/lib/money/currency";
import { describeMachineAction, handOverAction, setMachineStateAction, setPortraitAction } from "../../actions";
import { MachineFields, type MachineInput, type PartyChoice, WATCHED } from "../../machineFields";

type Used = { readonly kinds: readonly string[]; readonly makers: readonly string[] };

/** Corrects what was said at the door. */
export function DescribeForm({
	machine,
	seen,
	number,
	currency,
	parties,
	used,
}: {
	readonly machine: MachineInput & { readonly machineId: string };
	readonly seen: number;
	readonly number: number;
	readonly currency: CurrencyCode;
	readonly parties: readonly PartyChoice[];
	readonly used: Used;
}) {
	const router = useRouter();
	const schema = useMemo(() => describeMachineSchema(currency), [currency]);
	const form = useActionForm({
		schema,
		defaults: machine,
		seen,
		action: describeMachineAction,
		onDone: () => router.push(`/machines/${number}`),
	});
	const watched = useWatch({ control: form.form.control, name: WATCHED });
	return (
		<form {...form.formProps}>
			<Stack>
				<FormProblem problem={form.problem} />
				<MachineFields
					field={form.field}
					watched={watched}
					onTakeMade={(edtf) => form.form.setValue("made", edtf, { shouldDirty: true, shouldValidate: form.form.formState.isSubmitted })}
					parties={parties}
					currency={currency}
					used={used}
				>
					<Button type="submit" kind="main" wide pending={form.pending}>
						Record what is said of it
					</Button>
				</MachineFields>
			</Stack>
		</form>
	);
}

/** How far the machine is. */
export function StateForm({ machineId, state }: { readonly machineId: string; readonly state: "waiting" | "work" | "ready" | "left" }) {
	const form = useActionForm({
		schema: setMachineStateSchema,
		defaults: { machineId, state: state === "left" ? "ready" : state },
		action: setMachineStateAction,
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<ChoiceField
				label={state === "left" ? "It has left. Is it back?" : "How far it is"}
				options={[
					{ value: "waiting", label: "Waits", hint: "nothing begun" },
					{ value: "work", label: "In work" },
					{ value: "ready", label: "Finished", hint: "still in the shop" },
				]}
				{...form.field("state")}
			/>
			<Button type="submit" pending={form.pending}>
				{state === "left" ? "It is back in the shop" : "Say how far it is"}
			</Button>
		</form>
	);
}

/** The machine leaves; what it would leave behind stands above the button. */
export function HandOverForm({
	machineId,
	today,
	currency,
	parties,
	behind,
}: {
	readonly machineId: string;
	readonly today: string;
	readonly currency: CurrencyCode;
	readonly parties: readonly PartyChoice[];
	/** Sentences about bags not empty and parts outside. */
	readonly behind: readonly string[];
}) {
	const schema = useMemo(() => handOverSchema(currency), [currency]);
	const form = useActionForm({
		schema,
		defaults: { machineId, leftDay: today, buyerId: "", buyerName: "", sold: "", why: "" },
		action: handOverAction,
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<DayField label="Leaves on" {...form.field("leftDay")} />
			<FormRow>
				{parties.length > 0 ? (
					<SelectField
						label="To whom"
						optional
						none="Somebody new, or back to its owner"
						options={parties.map(({ id, name }) => ({ value: id, label: name }))}
						{...form.field("buyerId")}
					/>
				) : null}
				<TextField label={parties.length > 0 ? "Their name, if new" : "To whom"} optional {...form.field("buyerName")} />
			</FormRow>
			<MoneyField label="Sold for" optional currency={currency} {...form.field("sold")} />
			{behind.length === 0 ? null : (
				<>
					<p className="af-error">It is not complete: {behind.join("; ")}.</p>
					<TextArea label="Why it leaves all the same" rows={2} {...form.field("why")} />
				</>
			)}
			<SureButton
				type="submit"
				kind="plain"
				pending={form.pending}
				question="Hand the machine over? Its record stays, and it can come back."
				yes="Hand it over"
			>
				Hand it over
			</SureButton>
		</form>
	);
}

/** Which photo stands for the machine. */
export function PortraitForm({
	machineId,
	shown,
	photos,
}: {
	readonly machineId: string;
	readonly shown: string | null;
	readonly photos: readonly { readonly sha: string; readonly words: string }[];
}) {
	const form = useActionForm({ schema: setPortraitSchema, defaults: { machineId, fileSha: shown ?? "" }, action: setPortraitAction });
	const { error, defaultValue: _, ...radio } = form.field("fileSha");
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<fieldset>
				<legend className="af-label">The photo that stands for the machine</legend>
				<div className="af-photos">
					{photos.map((photo, index) => (
						<label key={photo.sha} className="af-choice">
							<input {...radio} type="radio" value={photo.sha} defaultChecked={photo.sha === shown} />
							<span>
								<Picture
									src={`/files/${photo.sha}/small`}
									alt={photo.words === "" ? `Photo ${index + 1}, without words yet` : photo.words}
								/>
								<small>{photo.words === "" ? "no words yet" : photo.words}</small>
							</span>
						</label>
					))}
				</div>
				<p className="af-error">{error}</p>
			</fieldset>
			<Button type="submit" pending={form.pending}>
				Let it stand for the machine
			</Button>
		</form>
	);
}
