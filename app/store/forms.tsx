"use client";

import { useState } from "react";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { Notice } from "@/app/ui/notice";
import type { Option } from "@/app/ui/option";
import { SelectField } from "@/app/ui/selectField";
import { StepperField } from "@/app/ui/stepperField";
import { TextField } from "@/app/ui/textField";
import { typesOf, useActionForm } from "@/app/ui/useActionForm";
import type { addLocationSchema, renameLocationSchema } from "@/lib/store/schema";
import { addLocationAction, renameLocationAction, tagPlacesAction } from "./actions";

const KINDS = [
	{ value: "room", label: "Room" },
	{ value: "rack", label: "Rack" },
	{ value: "shelf", label: "Shelf" },
	{ value: "bin", label: "Bin" },
];
type Kind = "room" | "rack" | "shelf" | "bin";

/** What usually stands in what. */
const inside: Readonly<Record<Kind, Kind>> = { room: "rack", rack: "shelf", shelf: "bin", bin: "bin" };

/** A new place; inside another when its page asks. Several can be added one after the other. */
export function AddPlaceForm({
	places,
	within,
}: {
	places: readonly Option[];
	within: { readonly id: string; readonly kind: Kind } | null;
}) {
	const [done, setDone] = useState("");
	const form = useActionForm({
		schema: typesOf<typeof addLocationSchema>(),
		defaults: { parentId: within?.id ?? "", kind: within ? inside[within.kind] : "room", name: "" },
		action: addLocationAction,
		onDone: ({ path }, { setValue, setFocus }) => {
			setDone(`${path} is there.`);
			setValue("name", "");
			setFocus("name");
		},
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="Its name" hint="as it is written on it: Back room, B, 2" {...form.field("name")} />
			<ChoiceField label="What it is" options={KINDS} {...form.field("kind")} />
			{within ? null : <SelectField label="It stands in" none="Nothing: it is a room" options={places} {...form.field("parentId")} />}
			<Button type="submit" kind="main" pending={form.pending}>
				Add the place
			</Button>
			{done ? <Notice means="original">{done}</Notice> : null}
		</form>
	);
}

/** Its name, what it is, where it stands, its turn in the walk. */
export function ChangePlaceForm({
	place,
	places,
}: {
	place: { readonly id: string; readonly name: string; readonly kind: Kind; readonly parentId: string | null; readonly rank: number };
	places: readonly Option[];
}) {
	const [done, setDone] = useState("");
	const form = useActionForm({
		schema: typesOf<typeof renameLocationSchema>(),
		defaults: { locationId: place.id, name: place.name, kind: place.kind, parentId: place.parentId ?? "", rank: place.rank },
		action: renameLocationAction,
		onDone: ({ path }) => setDone(`It is ${path} now.`),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="Its name" {...form.field("name")} />
			<ChoiceField label="What it is" options={KINDS} {...form.field("kind")} />
			<FormRow>
				<SelectField label="It stands in" none="Nothing: it is a room" options={places} {...form.field("parentId")} />
				<StepperField label="Its turn in the walk" min={0} max={9999} {...form.field("rank", { valueAsNumber: true })} />
			</FormRow>
			<Button type="submit" pending={form.pending}>
				Keep it
			</Button>
			{done ? <Notice means="original">{done}</Notice> : null}
		</form>
	);
}

/** A tag of its own, for a sheet on the shelf that a phone can scan. */
export function TagPlaceForm({ locationId }: { locationId: string }) {
	const form = useActionForm({ defaults: { locationIds: [locationId] }, action: tagPlacesAction });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<p className="af-sub pb-2">With a tag on it a thing is put away by scanning it and then the place.</p>
			<Button type="submit" pending={form.pending}>
				Give it a tag
			</Button>
		</form>
	);
}
