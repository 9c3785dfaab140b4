"use client";

// The fields that intake and correction share, in the order in which one looks at a machine that has just come in.

import type { ReactNode } from "react";
import type { UseFormRegisterReturn } from "react-hook-form";
import type { z } from "zod";
import { Card } from "@/app/ui/card";
import { ChoiceField } from "@/app/ui/choiceField";
import { DayField } from "@/app/ui/dayField";
import { Columns, FormRow, Stack } from "@/app/ui/layouts";
import { MoneyField } from "@/app/ui/moneyField";
import { SelectField } from "@/app/ui/selectField";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import type { takeInMachineSchema } from "@/lib/machines/schema";
import { MadeField } from "./madeField";

export type MachineInput = z.input<ReturnType<typeof takeInMachineSchema>>;
type Name = Exclude<keyof MachineInput, "number">;
export type PartyChoice = { readonly id: string; readonly name: string };

export const OWNERSHIP_OPTIONS = [
	{ value: "shop", label: "The shop's own" },
	{ value: "customer", label: "A customer's" },
	{ value: "collection", label: "For the collection" },
] as const;

/** What the fields show depends on these; they are watched by the form of the page. */
export const WATCHED = ["made", "ownership", "sellerId", "ownerId"] as const;

/** Everything that is said of a machine but its number; `field` is that of the page's own form. */
export function MachineFields({
	field,
	watched: [made, ownership, sellerId, ownerId],
	onTakeMade,
	parties,
	currency,
	used,
	children,
}: {
	readonly field: (name: Name) => UseFormRegisterReturn & { readonly error: string | undefined };
	/** The values of `WATCHED`. */
	readonly watched: readonly [MachineInput["made"], MachineInput["ownership"], MachineInput["sellerId"], MachineInput["ownerId"]];
	/** Takes a suggested date in place of what was typed. */
	readonly onTakeMade: (edtf: string) => void;
	readonly parties: readonly PartyChoice[];
	readonly currency: string;
	readonly used: { readonly kinds: readonly string[]; readonly makers: readonly string[] };
	/** What stands at the end: the number, the button. */
	readonly children: ReactNode;
}) {
	const known = parties.map((party) => ({ value: party.id, label: party.name }));
	return (
		<Columns even>
			<Stack>
				<Card title="What it is">
					<TextField label="Name" hint="As people call it, or as its glass says." {...field("name")} />
					<FormRow>
						<TextField label="Kind" optional suggest={used.kinds} {...field("kind")} />
						<TextField label="Maker" optional suggest={used.makers} {...field("maker")} />
					</FormRow>
					<FormRow>
						<TextField label="Model" optional {...field("model")} />
						<TextField label="Serial number" optional mono {...field("serial")} />
					</FormRow>
					<MadeField typed={typeof made === "string" ? made : ""} onTake={onTakeMade} {...field("made")} />
				</Card>
				<Card title="How it came">
					<DayField label="Came in on" {...field("receivedDay")} />
					<FormRow>
						{known.length > 0 ? (
							<SelectField
								label="From whom"
								optional
								none="Somebody new, or not known"
								hint="Names stay out of a dossier."
								options={known}
								{...field("sellerId")}
							/>
						) : null}
						{sellerId ? null : (
							<TextField
								label={known.length > 0 ? "Their name" : "From whom"}
								optional
								hint={known.length > 0 ? "Stays out of a dossier." : "Stays out of what a dossier shows."}
								{...field("sellerName")}
							/>
						)}
					</FormRow>
					<ChoiceField label="Whose is it" options={[...OWNERSHIP_OPTIONS]} {...field("ownership")} />
					{ownership === "shop" || ownership === undefined ? null : (
						<FormRow>
							{known.length > 0 ? (
								<SelectField label="Owner" optional={ownership !== "customer"} none="Somebody new" options={known} {...field("ownerId")} />
							) : null}
							{ownerId ? null : (
								<TextField
									label={known.length > 0 ? "Owner's name" : "Owner"}
									optional={ownership !== "customer"}
									{...field("ownerName")}
								/>
							)}
						</FormRow>
					)}
					<FormRow>
						<MoneyField label="Paid for it" optional currency={currency} hint="Withheld from a dossier." {...field("price")} />
						<MoneyField label="Carriage" optional currency={currency} hint="Withheld as well." {...field("carriage")} />
					</FormRow>
					<TextArea
						label="How it was carried"
						optional
						hint="Upright or laid down, what was secured, what tore loose."
						{...field("carried")}
					/>
				</Card>
			</Stack>
			<Stack>
				<Card title="What one sees">
					<TextArea
						label="Condition"
						optional
						hint="Before anything is touched or plugged in: complete, damp, odours, insects."
						{...field("condition")}
					/>
					<TextArea
						label="Hazards"
						optional
						hint="What a hand must know first: mains on metal, loaded springs, mercury, weight, old paint; one a line. They stand first on the machine's page."
						{...field("hazards")}
					/>
				</Card>
				{children}
			</Stack>
		</Columns>
	);
}
