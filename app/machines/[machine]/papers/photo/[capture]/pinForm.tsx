"use client";

import { useEffect, useRef, useState } from "react";
import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { Buttons, Stack } from "@/app/ui/layouts";
import { SelectField } from "@/app/ui/selectField";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import type { ThingGroup } from "@/lib/pins/choices";
import { addPinAction, changePinAction, takeOffPinAction } from "../../pinActions";

/** A list longer than this is narrowed by typing. */
const LONG = 25;

type First = { readonly thing: string; readonly words: string };

/** What a pin marks: a position, a wire, a fixing, or words alone. */
export function PinForm({
	captureId,
	pin,
	at,
	first,
	named,
	groups,
	onDone,
}: {
	readonly captureId: string;
	/** Null for a new one. */
	readonly pin: { readonly id: string; readonly entry: number; readonly number: number } | null;
	readonly at: { readonly x: number; readonly y: number };
	readonly first: First;
	/** How what it marks is called: it may no longer be among what is offered. */
	readonly named: string;
	readonly groups: readonly ThingGroup[];
	readonly onDone: (words: string) => void;
}) {
	const [search, setSearch] = useState("");
	// The photo fills a phone: what is asked stands below it.
	const head = useRef<HTMLHeadingElement>(null);
	useEffect(() => head.current?.scrollIntoView({ block: "center" }), []);
	const form = useActionForm({
		defaults: { ...first },
		action: (raw) => {
			const said = { ...raw, x: at.x, y: at.y };
			return pin ? changePinAction({ ...said, pinId: pin.id }) : addPinAction({ ...said, captureId });
		},
		...(pin ? { seen: pin.entry } : {}),
		onDone: ({ number }) => onDone(`Pin ${number} is kept.`),
	});
	const chosen = form.form.watch("thing");
	const many = groups.reduce((sum, { options }) => sum + options.length, 0) > LONG;
	const known = groups.some(({ options }) => options.some(({ value }) => value === first.thing));
	return (
		<Stack>
			<form {...form.formProps}>
				<Stack>
					<h3 ref={head}>{pin ? `Pin ${pin.number}` : "What is here?"}</h3>
					<FormProblem problem={form.problem} />
					{many ? (
						<TextField
							label="Shorten the list"
							hint="A piece of a name, a mark or a tag."
							optional
							value={search}
							onChange={(event) => setSearch(event.target.value)}
							onKeyDown={(event) => {
								if (event.key === "Enter") event.preventDefault();
							}}
						/>
					) : null}
					<SelectField
						label="It is"
						optional
						none="nothing on record: words alone"
						groups={[
							...(first.thing === "" || known ? [] : [{ label: "As it was", options: [{ value: first.thing, label: named }] }]),
							...narrowed(groups, search, chosen),
						]}
						{...form.field("thing")}
					/>
					<TextField
						label="Words"
						optional
						hint="What matters there: which way round, what to mind."
						maxLength={200}
						{...form.field("words")}
					/>
					<Buttons>
						<Button type="submit" kind="main" pending={form.pending}>
							Keep the pin
						</Button>
						<Button kind="quiet" onClick={() => onDone("")}>
							Leave it
						</Button>
					</Buttons>
				</Stack>
			</form>
			{pin ? <TakeOff pin={pin} onDone={onDone} /> : null}
		</Stack>
	);
}

function TakeOff({
	pin,
	onDone,
}: {
	readonly pin: { readonly id: string; readonly number: number };
	readonly onDone: (words: string) => void;
}) {
	const form = useActionForm({
		defaults: { pinId: pin.id, why: "" },
		action: takeOffPinAction,
		onDone: ({ number }) => onDone(`Pin ${number} is off. Its number is not used again.`),
	});
	return (
		<details className="af-details">
			<summary>Take it off</summary>
			<form {...form.formProps}>
				<Stack>
					<FormProblem problem={form.problem} />
					<TextField label="Why" {...form.field("why")} />
					<Button type="submit" kind="danger" pending={form.pending}>
						Take off pin {pin.number}
					</Button>
				</Stack>
			</form>
		</details>
	);
}

/** What holds every word that was typed, and what is chosen. */
function narrowed(groups: readonly ThingGroup[], search: string, chosen: string): ThingGroup[] {
	const words = search.toLowerCase().split(/\s+/).filter(Boolean);
	return groups.flatMap(({ label, options }) => {
		const left = options.filter((option) => option.value === chosen || words.every((word) => option.label.toLowerCase().includes(word)));
		return left.length === 0 ? [] : [{ label, options: left }];
	});
}
