"use client";

import { useRouter } from "next/navigation";
import { useRef, useState } from "react";
import { keepWords } from "@/app/keptOnPhone";
import { labelsLeft, labelsSeenTo, outcomeOf, queue, useOutbox } from "@/app/outbox/outbox";
import { shopTime } from "@/app/outbox/shopTime";
import { useDraft } from "@/app/outbox/useDraft";
import { type BagChoice, Into, type IntoChoice, intoOf, lastBag, unsaidIn, type WaitingBag } from "@/app/t/into";
import { Button } from "@/app/ui/button";
import { CheckField } from "@/app/ui/checkField";
import { ChoiceField } from "@/app/ui/choiceField";
import { clientId } from "@/app/ui/clientId";
import { FormProblem } from "@/app/ui/formProblem";
import { HeroPhoto } from "@/app/ui/heroPhoto";
import { ActionBar } from "@/app/ui/layouts";
import { Notice } from "@/app/ui/notice";
import { SelectField } from "@/app/ui/selectField";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { err, ok, refuse } from "@/lib/core/result";
import type { TakenOut } from "@/lib/fittings/changes";
import type { FixingOffer } from "@/lib/fittings/fixingOffers";
import type { TakeOut } from "@/lib/fittings/schema";
import { useShowDone } from "../../justDone";
import { TakeOutCautions } from "../cautions";
import { ShotStrip, useShots } from "../shots";
import { type FixingLine, FixingLines, linesTyped, type ShownFixing } from "./fixingLines";
import { KeptHere } from "./keptHere";
import { NotOut } from "./notOut";
import { Out } from "./out";
import { type SettingLine, SettingLines } from "./settingLines";
import { type ShownWire, type WireLine, WireLines } from "./wireLines";

export type TakeOutFormProps = {
	readonly machine: { readonly id: string; readonly number: number; readonly name: string };
	/** Who uses this browser; null while nobody was chosen. */
	readonly person: string | null;
	readonly position: { readonly id: string; readonly mark: string; readonly name: string };
	readonly part: {
		readonly id: string;
		readonly name: string;
		readonly tag: string | null;
		readonly origin: string;
		readonly works: "works" | "faulty" | "unknown";
		readonly condition: string;
		readonly material: string;
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
	/** A photo that was taken of it before: it comes along, with its time. */
	readonly capture?: { readonly id: string; readonly sha: string | null; readonly takenAt: string } | undefined;
	/** A bag that is being made by a take-out which still waits on this phone. */
	readonly waitingBag?: WaitingBag | null;
	/** Fixings that this shop has used before, and those of its other side. */
	readonly offers?: readonly FixingOffer[];
	/** What follows here, in place of the word that it is out. */
	readonly onOut?: (out: OutcomeOut) => void;
};

/** It is out and in the book, or out and kept on the phone until the shop is back. */
export type OutcomeOut =
	| { readonly kind: "out"; readonly deed: string; readonly taken: TakenOut; readonly labels: readonly string[] }
	| { readonly kind: "waits"; readonly deed: string; readonly say: string; readonly makesBag: boolean };

const WORKS = [
	{ value: "works", label: "Works" },
	{ value: "faulty", label: "Faulty" },
	{ value: "unknown", label: "Not known" },
];
/** So long the shop may take before the hand goes on; the deed stays on the phone until it has an answer. */
const PATIENCE_MS = 8000;

/** What is said with the photo: only what differs from the record needs a tap. */
export function TakeOutForm(props: TakeOutFormProps) {
	const { machine, position, part, came, onOut } = props;
	const router = useRouter();
	const outbox = useOutbox();
	const photos = useShots({ machine, person: props.person, positionId: position.id, words: `${part.name} (${position.mark})` });
	const [fixings, setFixings] = useState<readonly FixingLine[]>(() => props.fixings.map(asOnRecord));
	const [another, setAnother] = useState("");
	const [wires, setWires] = useState<readonly WireLine[]>(() => props.wires.map(asUndone));
	const [settings, setSettings] = useState<readonly SettingLine[]>([]);
	const [into, setInto] = useState<IntoChoice>({ ...NEW_BAG, kind: props.first ?? "new-bag" });
	const [first, setFirst] = useState<readonly string[]>([]);
	const showDone = useShowDone();
	const wantsLabel = useRef(true);
	const hasWires = props.wires.length > 0;
	const hasSettings = props.settings.length > 0;
	const draftKey = `take-out ${position.id} ${part.id}`;

	const form = useActionForm<TakeOut & Record<string, unknown>, unknown, OutcomeOut>({
		defaults: {
			machineId: machine.id,
			positionId: position.id,
			wayRound: props.wayRound,
			works: part.works,
			condition: part.condition,
			stepId: props.stepId ?? props.steps.find((step) => step.state === "doing")?.id ?? "",
			conversionId: "",
			at: props.capture?.takenAt,
			anyway: props.behind ? { reason: "", covers: "note" } : null,
		},
		action: async ({ deed, at, ...typed }) => {
			if (!(await photos.kept()))
				return refuse("photo-lost", "A photo could not be kept on this phone. Take it again, or press once more to go on without it.");
			const unsaid = unsaidIn(into, props.waitingBag ?? null);
			if (unsaid !== null) return refuse("say-where", unsaid);
			const input: Omit<TakeOut, "at"> = {
				...typed,
				machineId: machine.id,
				positionId: position.id,
				fixings: [...fixings, ...linesTyped(another)].map(({ key: _, recorded: _was, ...line }) => line),
				connections: wires.map(({ key: _, ...line }) => line),
				settings: settings.map(({ kind, value }) => ({ kind, value })),
				into: intoOf(into),
				cameBefore: first.map((partId) => ({ partId, side: "" })),
				captureIds: props.capture ? [props.capture.id] : [],
			};
			await queue({
				deed,
				kind: "take-out",
				at: at || shopTime(),
				words: `${part.name} (${position.mark}) out`,
				machine,
				person: props.person,
				input,
				photos: photos.deeds,
				bagOf: into.kind === "waiting-bag" ? (props.waitingBag?.deed ?? null) : null,
				wantsLabel: wantsLabel.current,
				mendAt: `/machines/${machine.number}/take-out/${encodeURIComponent(position.mark)}`,
				draft: draftKey,
			});
			const outcome = await outcomeOf(deed, PATIENCE_MS);
			switch (outcome.kind) {
				case "refused":
					return err(outcome.refused);
				case "waits":
					return ok({ kind: "waits", deed, say: outcome.say, makesBag: into.kind === "new-bag" });
				case "done":
					return ok({ kind: "out", deed, taken: outcome.done.value as TakenOut, labels: await labelsLeft(deed) });
			}
		},
		onDone: (out) => {
			if (out.kind === "out" && out.taken.bagId) keepWords(lastBag(machine.number), [out.taken.bagId]);
			if (onOut) return onOut(out);
			window.scrollTo({ top: 0 });
			if (out.kind === "waits") return showDone(<KeptHere say={out.say} part={part} machine={machine} />);
			const labels = labelHref(out.taken, into.kind === "new-bag");
			showDone(<Out done={out.taken} machine={machine} part={part} position={position} labelHref={labels} goOn={props.goOn} />);
			router.refresh();
			// A label is a page of its own, so that the phone's own print dialogue can be used; the link stays if it is blocked.
			if (out.labels.length > 0) {
				void labelsSeenTo([out.deed]);
				window.open(labels, "_blank", "noopener");
			}
		},
	});

	const values = form.form.watch();
	const draft = useDraft(draftKey, { values, fixings, another, wires, settings, into, first, photos: photos.deeds }, (typed) => {
		form.form.reset(typed.values);
		setFixings(typed.fixings);
		setAnother(typed.another);
		setWires(typed.wires);
		setSettings(typed.settings);
		setInto(typed.into);
		setFirst(typed.first);
		photos.takeUp(typed.photos);
	});
	const waits = outbox.waiting.find(
		(item) =>
			item.kind === "take-out" && item.refused === null && item.input.positionId === position.id && item.input.machineId === machine.id,
	);
	if (waits && !form.pending) return <KeptHere say={outbox.held ?? ""} part={part} machine={machine} />;

	return (
		<>
			<form {...form.formProps} className="flex flex-col gap-4" id="take-out">
				<TakeOutCautions words={`${part.name} ${position.name}`} hasWires={hasWires} />
				<FormProblem problem={form.problem} />
				{draft.at === null ? null : (
					<Notice means="wait" live="off">
						<p>Typed on this phone before and not recorded yet; it is as you left it.</p>
						<Button
							kind="quiet"
							onClick={() => {
								draft.forget();
								form.form.reset();
								setFixings(props.fixings.map(asOnRecord));
								setAnother("");
								setWires(props.wires.map(asUndone));
								setSettings([]);
								setInto({ ...NEW_BAG, kind: props.first ?? "new-bag" });
								setFirst([]);
							}}
						>
							Begin anew
						</Button>
					</Notice>
				)}
				{props.capture?.sha ? (
					<HeroPhoto src={`/files/${props.capture.sha}/small`} alt="The photo that was taken then" caption="Comes along, with its time" />
				) : null}
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
				<FixingLines
					lines={fixings}
					onChange={setFixings}
					typed={another}
					onTyped={setAnother}
					bags={props.bags}
					offers={props.offers ?? []}
				/>
				{hasWires ? <WireLines lines={wires} onChange={setWires} /> : null}
				{hasSettings ? <SettingLines lines={settings} onChange={setSettings} onRecord={props.settings} /> : null}
				<Into
					choice={into}
					onChange={setInto}
					bags={props.bags}
					places={props.places}
					machineNumber={machine.number}
					partName={part.name}
					waitingBag={props.waitingBag ?? null}
					material={part.material}
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
					Out, with its label
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

const NEW_BAG: IntoChoice = { kind: "new-bag", role: "holding", bagId: "", locationId: "", words: "", caution: "", tag: "" };

const asUndone = (wire: ShownWire): WireLine => ({
	...wire,
	key: wire.id,
	connectionId: wire.id,
	state: wire.state === "connected" ? "parked" : wire.state,
});

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

/** What a person means by a day and a time on this phone. */
function instantTyped(text: string): string {
	const date = new Date(text);
	return Number.isNaN(date.getTime()) ? text : date.toISOString();
}
