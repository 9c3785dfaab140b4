"use client";

import { useRef, useState } from "react";
import { type BagChoice, Into, type IntoChoice, intoOf } from "@/app/t/into";
import { Button } from "@/app/ui/button";
import { CheckField } from "@/app/ui/checkField";
import { ChoiceField } from "@/app/ui/choiceField";
import { clientId } from "@/app/ui/clientId";
import { FormProblem } from "@/app/ui/formProblem";
import { ActionBar } from "@/app/ui/layouts";
import { SelectField } from "@/app/ui/selectField";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import type { TakenOut } from "@/lib/fittings/changes";
import { type TakeOut, takeOutSchema } from "@/lib/fittings/schema";
import { useShowDone } from "../../justDone";
import { takeOutAction } from "../actions";
import { ShotStrip, useShots } from "../shots";
import { type FixingLine, FixingLines, linesTyped, type ShownFixing } from "./fixingLines";
import { NotOut } from "./notOut";
import { Out } from "./out";
import { type SettingLine, SettingLines } from "./settingLines";
import { type ShownWire, type WireLine, WireLines } from "./wireLines";

export type TakeOutFormProps = {
	readonly machine: { readonly id: string; readonly number: number };
	readonly position: { readonly id: string; readonly mark: string; readonly name: string; readonly sides: readonly string[] };
	readonly part: {
		readonly id: string;
		readonly name: string;
		readonly tag: string | null;
		readonly origin: string;
		readonly works: "works" | "faulty" | "unknown";
		readonly condition: string;
	};
	readonly wayRound: string;
	readonly fixings: readonly ShownFixing[];
	readonly wires: readonly ShownWire[];
	readonly settings: readonly { readonly id: string; readonly kind: string; readonly value: string }[];
	readonly behind: boolean;
	readonly came: readonly { readonly partId: string; readonly name: string; readonly known: boolean }[];
	readonly bags: readonly BagChoice[];
	readonly places: readonly { readonly id: string; readonly path: string }[];
	readonly steps: readonly { readonly id: string; readonly number: number; readonly title: string; readonly state: string }[];
	readonly conversions: readonly { readonly id: string; readonly number: number; readonly name: string }[];
	/** The step that it is done for, where the page knows. */
	readonly stepId?: string;
	/** What follows on this very page, where it is one of a list ("Go on with the reversal"). */
	readonly goOn?: string;
	/** Where it goes unless something else is chosen. */
	readonly first?: IntoChoice["kind"];
};

const WORKS = [
	{ value: "works", label: "Works" },
	{ value: "faulty", label: "Faulty" },
	{ value: "unknown", label: "Not known" },
];

/** What is said with the photo: only what differs from the record needs a tap. */
export function TakeOutForm(props: TakeOutFormProps) {
	const { machine, position, part, came } = props;
	const photos = useShots(machine.id);
	const [fixings, setFixings] = useState<readonly FixingLine[]>(() => props.fixings.map(asOnRecord));
	const [another, setAnother] = useState("");
	const [wires, setWires] = useState<readonly WireLine[]>(() =>
		props.wires.map((wire) => ({
			...wire,
			key: wire.id,
			connectionId: wire.id,
			state: wire.state === "connected" ? "parked" : wire.state,
		})),
	);
	const [settings, setSettings] = useState<readonly SettingLine[]>([]);
	const [into, setInto] = useState<IntoChoice>({
		kind: props.first ?? "new-bag",
		role: "holding",
		bagId: "",
		locationId: "",
		words: "",
		caution: "",
		tag: "",
	});
	const [first, setFirst] = useState<readonly string[]>([]);
	const showDone = useShowDone();
	const wantsLabel = useRef(true);
	const hasWires = props.wires.length > 0;
	const hasSettings = props.settings.length > 0;

	const form = useActionForm({
		schema: takeOutSchema,
		defaults: {
			machineId: machine.id,
			positionId: position.id,
			wayRound: props.wayRound,
			works: part.works,
			condition: part.condition,
			stepId: props.stepId ?? props.steps.find((step) => step.state === "doing")?.id ?? "",
			conversionId: "",
			anyway: props.behind ? { reason: "", covers: "note" } : null,
		},
		action: async (typed) => {
			const kept = await photos.captureIds();
			if (!kept.ok) return kept;
			const whole: TakeOut & { deed: string } = {
				...typed,
				fixings: [...fixings, ...linesTyped(another)].map(({ key: _, recorded: _was, ...line }) => line),
				connections: wires.map(({ key: _, ...line }) => line),
				settings: settings.map(({ kind, value }) => ({ kind, value })),
				into: intoOf(into),
				cameBefore: first.map((partId) => ({ partId, side: "" })),
				captureIds: kept.value,
			};
			return takeOutAction(whole);
		},
		onDone: (taken) => {
			if (taken.bagId) rememberBag(machine.number, taken.bagId);
			const labels = labelHref(taken, into.kind === "new-bag");
			showDone(<Out done={taken} machine={machine} part={part} position={position} labelHref={labels} goOn={props.goOn} />);
			window.scrollTo({ top: 0 });
			// A label is a page of its own, so that the phone's own print dialogue can be used; the link stays if it is blocked.
			if (wantsLabel.current) window.open(labels, "_blank", "noopener");
		},
	});

	return (
		<>
			<form {...form.formProps} className="flex flex-col gap-4" id="take-out">
				<FormProblem problem={form.problem} />
				<ShotStrip photos={photos} deed="Take the photo" />
				{props.behind ? (
					<>
						<TextField
							label="It came out all the same: how?"
							hint="The record says that something is in the way. Your hand is right: say how it went."
							{...form.field("anyway.reason")}
						/>
						<ChoiceField
							label="And what covers it"
							options={[
								{ value: "note", label: "Covers it, as a rule" },
								{ value: "withdraw", label: "Does not cover it" },
							]}
							{...form.field("anyway.covers")}
						/>
					</>
				) : null}
				<FixingLines lines={fixings} onChange={setFixings} typed={another} onTyped={setAnother} bags={props.bags} />
				{hasWires ? <WireLines lines={wires} onChange={setWires} /> : null}
				{hasSettings ? <SettingLines lines={settings} onChange={setSettings} onRecord={props.settings} /> : null}
				<Into
					choice={into}
					onChange={setInto}
					bags={props.bags}
					places={props.places}
					machineNumber={machine.number}
					partName={part.name}
					isOriginal={part.origin === "original"}
				/>
				<details className="af-details">
					<summary>Which way round, does it work, its condition</summary>
					<div className="flex flex-col gap-2 pt-2">
						<TextField
							label="Which way round it sat"
							hint="As seen from the player's place"
							optional
							suggest={["flat side to the glass", "terminals to the rear", "slot upwards"]}
							{...form.field("wayRound")}
						/>
						<ChoiceField label="Does it work" options={WORKS} {...form.field("works")} />
						<TextArea label="Its condition" optional rows={2} {...form.field("condition")} />
					</div>
				</details>
				{hasWires && hasSettings ? null : (
					<details className="af-details">
						<summary>
							{[hasWires ? null : "Wires and hoses", hasSettings ? null : hasWires ? "How it was set" : "how it was set"]
								.filter(Boolean)
								.join(", ")}
						</summary>
						<div className="flex flex-col gap-4 pt-2">
							{hasWires ? null : <WireLines lines={wires} onChange={setWires} />}
							{hasSettings ? null : <SettingLines lines={settings} onChange={setSettings} onRecord={props.settings} />}
						</div>
					</details>
				)}
				{came.length > 0 ? (
					<details className="af-details">
						<summary>What had to come off first</summary>
						<fieldset className="pt-2">
							<legend className="af-sub">Parts that came out before it: the ones ticked cover it from now on.</legend>
							{came.map((before) =>
								before.known ? (
									<p key={before.partId} className="af-sub">
										{before.name}: on record
									</p>
								) : (
									<CheckField
										key={before.partId}
										label={before.name}
										name={`first-${before.partId}`}
										onChange={(event) =>
											setFirst(event.target.checked ? [...first, before.partId] : first.filter((partId) => partId !== before.partId))
										}
									/>
								),
							)}
						</fieldset>
					</details>
				) : null}
				<details className="af-details">
					<summary>Step, conversion, earlier time</summary>
					<div className="flex flex-col gap-2 pt-2">
						<SelectField
							label="For which step"
							none="No step"
							options={props.steps.map((step) => ({
								value: step.id,
								label: `${step.number} ${step.title}${step.state === "doing" ? " (running)" : ""}`,
							}))}
							{...form.field("stepId")}
						/>
						<SelectField
							label="For which conversion"
							none="No conversion"
							options={props.conversions.map((conversion) => ({ value: conversion.id, label: `C${conversion.number} ${conversion.name}` }))}
							{...form.field("conversionId")}
						/>
						<TextField
							label="It was taken out earlier"
							type="datetime-local"
							optional
							{...form.field("at", { setValueAs: (text: string | undefined) => (text ? instantTyped(text) : undefined) })}
						/>
					</div>
				</details>
				<NotOut machine={machine} position={position} part={part} />
			</form>
			<ActionBar>
				<Button
					type="submit"
					form="take-out"
					kind="main"
					pending={form.pending}
					onClick={() => {
						wantsLabel.current = true;
					}}
				>
					Out, and print the label
				</Button>
				<Button
					type="submit"
					form="take-out"
					pending={form.pending}
					onClick={() => {
						wantsLabel.current = false;
					}}
				>
					Out, no label
				</Button>
				<Button
					onClick={() => {
						const notOut = document.getElementById("not-out");
						if (!(notOut instanceof HTMLDetailsElement)) return;
						notOut.open = true;
						notOut.scrollIntoView({ block: "center" });
						notOut.querySelector("input")?.focus();
					}}
				>
					It did not come out
				</Button>
			</ActionBar>
		</>
	);
}

const asOnRecord = (fixing: ShownFixing): FixingLine => ({
	key: fixing.id,
	fixingId: fixing.id,
	count: fixing.count,
	thread: fixing.thread,
	length: fixing.length,
	head: fixing.head,
	drive: fixing.drive,
	tightness: fixing.tightness,
	differs: fixing.differs,
	note: fixing.note,
	went: fixing.alsoHolds.length > 0 ? { kind: "stays" } : { kind: "with-part" },
	recorded: { count: fixing.count, alsoHolds: fixing.alsoHolds.map((other) => other.name) },
});

/** The label of what came out: of the bag that was made for it, and of the part. The deed makes a second tap the same print. */
function labelHref(taken: TakenOut, isNewBag: boolean): string {
	const tags = [isNewBag ? taken.bagTag : null, taken.partTag].filter((tag) => tag !== null);
	return `/labels?${new URLSearchParams({ tags: tags.join(","), now: clientId() })}`;
}

function rememberBag(machine: number, bagId: string): void {
	try {
		localStorage.setItem(`asfound-bag-${machine}`, bagId);
	} catch {
		// A browser that keeps nothing only forgets which bag was last.
	}
}

/** What a person means by a day and a time on this phone. */
function instantTyped(text: string): string {
	const date = new Date(text);
	return Number.isNaN(date.getTime()) ? text : date.toISOString();
}
