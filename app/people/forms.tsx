"use client";

import { useState } from "react";
import { Button } from "@/app/ui/button";
import { DayField } from "@/app/ui/dayField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { MoneyField } from "@/app/ui/moneyField";
import { Notice } from "@/app/ui/notice";
import type { Option } from "@/app/ui/option";
import { SelectField } from "@/app/ui/selectField";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import type { CurrencyCode } from "@/lib/money/currency";
import { describePersonSchema, personSchema, rateSchema } from "@/lib/people/schema";
import { describeShopSchema } from "@/lib/shop/schema";
import { addPersonAction, describePersonAction, describeShopAction, setRateAction } from "./actions";

export function AddPersonForm() {
	const form = useActionForm({
		schema: personSchema,
		defaults: { name: "", initials: "", skills: "" },
		action: addPersonAction,
		onDone: (_, { reset }) => reset(),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="Name" {...form.field("name")} />
			<TextField label="Initials" hint="As they stand on a label: one to four letters." {...form.field("initials")} />
			<TextField label="What they do" hint="Mechanic, electrically skilled, finisher" optional {...form.field("skills")} />
			<Button type="submit" kind="main" pending={form.pending}>
				Add
			</Button>
		</form>
	);
}

export function RateForm({ people, currency, today }: { people: readonly Option[]; currency: CurrencyCode; today: string }) {
	const [done, setDone] = useState("");
	const form = useActionForm({
		schema: rateSchema(currency),
		defaults: { personId: people[0]?.value ?? "", fromDay: today, cost: "", charge: "" },
		action: setRateAction,
		onDone: (_, { getValues, setValue }) => {
			setDone(`The rate holds from ${getValues("fromDay")}.`);
			setValue("cost", "");
			setValue("charge", "");
		},
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<SelectField label="Who" options={people} {...form.field("personId")} />
			<DayField label="From" hint="Earlier work keeps the rate of its day." {...form.field("fromDay")} />
			<FormRow>
				<MoneyField label="Costs an hour" currency={currency} {...form.field("cost")} />
				<MoneyField label="Charged an hour" currency={currency} {...form.field("charge")} />
			</FormRow>
			<Button type="submit" kind="main" pending={form.pending}>
				Set the rate
			</Button>
			{done ? <Notice means="original">{done}</Notice> : null}
		</form>
	);
}

type PersonRow = {
	readonly entry: number;
	readonly id: string;
	readonly name: string;
	readonly initials: string;
	readonly skills: string;
	readonly state: "here" | "left";
};

export function PersonStateButton({ person }: { person: PersonRow }) {
	const { id, name, initials, skills } = person;
	const form = useActionForm({
		schema: describePersonSchema,
		defaults: { id, name, initials, skills, state: person.state === "here" ? "left" : "here" },
		seen: person.entry,
		action: describePersonAction,
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<Button
				type="submit"
				kind="quiet"
				pending={form.pending}
				aria-label={person.state === "here" ? `${name} has left` : `${name} is back`}
			>
				{person.state === "here" ? "Has left" : "Is back"}
			</Button>
		</form>
	);
}

export function ShopForm({
	defaults,
	seen,
	currency,
}: {
	seen: number;
	defaults: { readonly name: string; readonly timeZone: string; readonly address: string };
	currency: CurrencyCode;
}) {
	const [done, setDone] = useState(false);
	const form = useActionForm({ schema: describeShopSchema, defaults, seen, action: describeShopAction, onDone: () => setDone(true) });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="Name of the shop" {...form.field("name")} />
			<TextField label="Time zone" hint={`Days on paper are days here. Money is kept in ${currency}.`} {...form.field("timeZone")} />
			<TextField
				label="Address on labels"
				optional
				mono
				hint="By which phones reach this computer, like shop.local:3200. With it, any phone's camera opens a bag's page; without it, a label's code holds the bare tag."
				{...form.field("address")}
			/>
			<Button type="submit" pending={form.pending}>
				Keep this
			</Button>
			{done ? <Notice means="original">Kept. Labels printed from now on use it.</Notice> : null}
		</form>
	);
}
