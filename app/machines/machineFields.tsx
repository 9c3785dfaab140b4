"use client";

// The fields that intake and correction share, in the order in which one looks at a machine that has just come in.

import type { ReactNode } from "react";
import { useWatch } from "react-hook-form";
import type { z } from "zod";
import { Card } from "@/app/ui/card";
import { ChoiceField } from "@/app/ui/choiceField";
import { DayField } from "@/app/ui/dayField";
import { Columns, FormRow, Stack } from "@/app/ui/layouts";
import { MoneyField } from "@/app/ui/moneyField";
import { SelectField } from "@/app/ui/selectField";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import type { ActionForm } from "@/app/ui/useActionForm";
import type { takeInMachineSchema } from "@/lib/machines/schema";
import { MadeField } from "./madeField";

export type MachineInput = z.input<ReturnType<typeof takeInMachineSchema>>;
export type PartyChoice = { readonly id: string; readonly name: string };

export const OWNERSHIP_OPTIONS = [
	{ value: "shop", label: "The shop's own" },
	{ value: "customer", label: "A customer's" },
	{ value: "collection", label: "For the collection" },
] as const;

/** Everything that is said of a machine but its number. `form` is the form of the whole page. */
export function MachineFields({
	form,
	parties,
	currency,
	used,
	children,
}: {
	readonly form: ActionForm<MachineInput>;
	readonly parties: readonly PartyChoice[];
	readonly currency: string;
	readonly used: { readonly kinds: readonly string[]; readonly makers: readonly string[] };
	/** What stands at the end: the number, the button. */
	readonly children: ReactNode;
}) {
	const { control } = form.form;
	const [made, ownership, sellerId, ownerId] = useWatch({ control, name: ["made", "ownership", "sellerId", "ownerId"] });
	const known = parties.map((party) => ({ value: party.id, label: party.name }));
	return (
		<Columns even>
			<Stack>
				<Card title="What it is">
					<TextField label="Name" hint="As people call it, or as its glass says." {...form.field("name")} />
					<FormRow>
						<TextField label="Kind" optional suggest={used.kinds} {...form.field("kind")} />
						<TextField label="Maker" optional suggest={used.makers} {...form.field("maker")} />
					</FormRow>
					<FormRow>
						<TextField label="Model" optional {...form.field("model")} />
						<TextField label="Serial number" optional mono {...form.field("serial")} />
					</FormRow>
					<MadeField
						typed={typeof made === "string" ? made : ""}
						onTake={(edtf) => form.form.setValue("made", edtf, { shouldDirty: true, shouldValidate: form.form.formState.isSubmitted })}
						{...form.field("made")}
					/>
				</Card>
				<Card title="How it came">
					<DayField label="Came in on" {...form.field("receivedDay")} />
					<FormRow>
						{known.length > 0 ? (
							<SelectField
								label="From whom"
								optional
								none="Somebody new, or not known"
								hint="Names stay out of a dossier."
								options={known}
								{...form.field("sellerId")}
							/>
						) : null}
						{sellerId ? null : (
							<TextField
								label={known.length > 0 ? "Their name" : "From whom"}
								optional
								hint={known.length > 0 ? "Stays out of a dossier." : "Stays out of what a dossier shows."}
								{...form.field("sellerName")}
							/>
						)}
					</FormRow>
					<ChoiceField label="Whose is it" options={[...OWNERSHIP_OPTIONS]} {...form.field("ownership")} />
					{ownership === "shop" || ownership === undefined ? null : (
						<FormRow>
							{known.length > 0 ? (
								<SelectField
									label="Owner"
									optional={ownership !== "customer"}
									none="Somebody new"
									options={known}
									{...form.field("ownerId")}
								/>
							) : null}
							{ownerId ? null : (
								<TextField
									label={known.length > 0 ? "Owner's name" : "Owner"}
									optional={ownership !== "customer"}
									{...form.field("ownerName")}
								/>
							)}
						</FormRow>
					)}
					<FormRow>
						<MoneyField label="Paid for it" optional currency={currency} hint="Withheld from a dossier." {...form.field("price")} />
						<MoneyField label="Carriage" optional currency={currency} hint="Withheld as well." {...form.field("carriage")} />
					</FormRow>
					<TextArea
						label="How it was carried"
						optional
						hint="Upright or laid down, what was secured, what tore loose."
						{...form.field("carried")}
					/>
				</Card>
			</Stack>
			<Stack>
				<Card title="What one sees">
					<TextArea
						label="Condition"
						optional
						hint="Before anything is touched or plugged in: complete, damp, odours, insects."
						{...form.field("condition")}
					/>
					<TextArea
						label="Hazards"
						optional
						hint="What a hand must know first: mains on metal, loaded springs, mercury, weight, old paint. They stand on every page of work."
						{...form.field("hazards")}
					/>
				</Card>
				{children}
			</Stack>
		</Columns>
	);
}
