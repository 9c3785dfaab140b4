"use client";

import { useState } from "react";
import { Button } from "@/app/ui/button";
import { DayField } from "@/app/ui/dayField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { Notice } from "@/app/ui/notice";
import type { Option } from "@/app/ui/option";
import { SelectField } from "@/app/ui/selectField";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { changeEquipmentSchema, dayOffSchema, equipmentSchema, hoursSchema, takeBackDayOffSchema } from "@/lib/calendar/schema";
import { WEEKDAYS } from "@/lib/calendar/week";
import { addDayOffAction, addEquipmentAction, changeEquipmentAction, setHoursAction, takeBackDayOffAction } from "./actions";

/** Hours as they are offered to somebody who has none yet; seven days as typed. */
const USUAL = [
	"8:00-12:00 12:30-16:30",
	"8:00-12:00 12:30-16:30",
	"8:00-12:00 12:30-16:30",
	"8:00-12:00 12:30-16:30",
	"8:00-12:00 12:30-16:30",
	"",
	"",
];

export function HoursForm({
	people,
	today,
}: {
	/** With the week in force, as typed; empty when there is none. */
	readonly people: readonly (Option & { readonly week: readonly string[] })[];
	readonly today: string;
}) {
	const [done, setDone] = useState("");
	const weekOf = (personId: string): string[] => {
		const week = people.find(({ value }) => value === personId)?.week ?? [];
		return week.length === WEEKDAYS.length ? [...week] : USUAL;
	};
	const first = people[0]?.value ?? "";
	const form = useActionForm({
		schema: hoursSchema,
		defaults: { personId: first, fromDay: today, week: weekOf(first) },
		action: setHoursAction,
		onDone: (_, { getValues }) =>
			setDone(`${people.find(({ value }) => value === getValues("personId"))?.label ?? ""} has these hours from ${getValues("fromDay")}.`),
	});
	const person = form.field("personId");
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<SelectField
				label="Who"
				options={people}
				{...person}
				onChange={async (event) => {
					const isTyped = form.form.getFieldState("week").isDirty;
					await person.onChange(event);
					// A week that was typed is for whoever is chosen now.
					if (!isTyped) for (const [at, hours] of weekOf(event.target.value).entries()) form.form.setValue(`week.${at}` as "week.0", hours);
					setDone("");
				}}
			/>
			<DayField label="From" hint="Until then the earlier hours hold." {...form.field("fromDay")} />
			{WEEKDAYS.map((day, at) => (
				<TextField
					key={day}
					label={day}
					optional
					{...(at === 0 ? { hint: "8:00-12:00 12:30-16:30; empty is a day off" } : {})}
					{...form.field(`week.${at}` as "week.0")}
				/>
			))}
			<Button type="submit" kind="main" pending={form.pending}>
				Set the hours
			</Button>
			{done ? <Notice means="original">{done}</Notice> : null}
		</form>
	);
}

export function DayOffForm({ people, today }: { readonly people: readonly Option[]; readonly today: string }) {
	const [done, setDone] = useState("");
	const form = useActionForm({
		schema: dayOffSchema,
		defaults: { personId: "", fromDay: today, untilDay: "", words: "" },
		action: addDayOffAction,
		onDone: (moved, { setValue }) => {
			setDone(moved.length === 0 ? "Kept. It moves no machine." : `Kept. ${moved.join("; ")}.`);
			setValue("words", "");
			setValue("untilDay", "");
		},
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<SelectField label="Who is off" none="Everybody: the shop is closed" options={people} {...form.field("personId")} />
			<FormRow>
				<DayField label="From" {...form.field("fromDay")} />
				<DayField label="Last day" optional hint="Empty: that one day" {...form.field("untilDay")} />
			</FormRow>
			<TextField label="What for" optional {...form.field("words")} />
			<Button type="submit" kind="main" pending={form.pending}>
				Add days off
			</Button>
			{done ? <Notice means="original">{done}</Notice> : null}
		</form>
	);
}

export function InAfterAll({ dayOffId, says }: { readonly dayOffId: string; readonly says: string }) {
	const form = useActionForm({ schema: takeBackDayOffSchema, defaults: { dayOffId }, action: takeBackDayOffAction });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<Button type="submit" kind="quiet" pending={form.pending} aria-label={`In after all: ${says}`}>
				In after all
			</Button>
		</form>
	);
}

export function EquipmentForm() {
	const form = useActionForm({
		schema: equipmentSchema,
		defaults: { name: "", count: "1" },
		action: addEquipmentAction,
		onDone: (_, { reset }) => reset(),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<FormRow>
				<TextField label="What" hint="bench, spray booth, hoist" {...form.field("name")} />
				<TextField label="How many" inputMode="numeric" {...form.field("count")} />
			</FormRow>
			<Button type="submit" kind="main" pending={form.pending}>
				Add it
			</Button>
		</form>
	);
}

export function ChangeEquipment({
	equipment,
}: {
	readonly equipment: {
		readonly id: string;
		readonly entry: number;
		readonly name: string;
		readonly count: number;
		readonly state: "here" | "gone";
	};
}) {
	const { id, entry, name, count, state } = equipment;
	const form = useActionForm({
		schema: changeEquipmentSchema,
		defaults: { equipmentId: id, name, count: String(count), state },
		seen: entry,
		action: changeEquipmentAction,
	});
	return (
		<details className="af-details">
			<summary>Change</summary>
			<form {...form.formProps}>
				<FormProblem problem={form.problem} />
				<TextField label="What" {...form.field("name")} />
				<TextField label="How many" inputMode="numeric" {...form.field("count")} />
				<SelectField
					label="Is it here"
					options={[
						{ value: "here", label: "here" },
						{ value: "gone", label: "gone" },
					]}
					{...form.field("state")}
				/>
				<Button type="submit" pending={form.pending}>
					Keep this
				</Button>
			</form>
		</details>
	);
}
