"use client";

import { useState } from "react";
import { Button } from "@/app/ui/button";
import { DayField } from "@/app/ui/dayField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { SelectField } from "@/app/ui/selectField";
import { SureButton } from "@/app/ui/sureButton";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { comeBackSchema, leaveSchema, sellPartSchema, sendOutSchema } from "@/lib/parts/schema";
import type { PartyChoice } from "../../../machineFields";
import { comeBackAction, losePartAction, scrapPartAction, sellPartAction, sendOutAction, voidPartAction } from "../actions";

type PartSaid = {
	readonly id: string;
	readonly name: string;
	readonly tag: string;
	readonly original: boolean;
	/** What reversal loses when it goes for good; null when nothing. */
	readonly loses: string | null;
	/** What reversal misses while it is away; "" when nothing. */
	readonly misses: string;
};

/** Lends a loose part, or gives it to a specialist. */
export function SendOutForm({ part, parties }: { readonly part: PartSaid; readonly parties: readonly PartyChoice[] }) {
	const form = useActionForm({
		schema: sendOutSchema,
		defaults: { partId: part.id, partyId: "", partyName: "", dueDay: "", why: "" },
		action: sendOutAction,
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<FormRow>
				{parties.length > 0 ? (
					<SelectField
						label="Who answers for it"
						none="Somebody new"
						options={parties.map(({ id, name }) => ({ value: id, label: name }))}
						{...form.field("partyId")}
					/>
				) : null}
				<TextField
					label={parties.length > 0 ? "Their name, if new" : "Who answers for it"}
					optional={parties.length > 0}
					{...form.field("partyName")}
				/>
			</FormRow>
			<DayField label="Due back on" optional={!part.original} {...form.field("dueDay")} />
			<TextField label="What for" optional {...form.field("why")} />
			{part.misses ? <p className="af-sub mb-2">{part.misses}</p> : null}
			<Button type="submit" pending={form.pending}>
				Send it out
			</Button>
		</form>
	);
}

const WAYS = [
	{ value: "sold", label: "Sold by itself", yes: "Sell it" },
	{ value: "lost", label: "Lost", yes: "It is lost" },
	{ value: "scrapped", label: "Scrapped", yes: "Scrap it" },
	{ value: "void", label: "Entered in error", yes: "Strike it out" },
] as const;
type Way = (typeof WAYS)[number]["value"];

const DEEDS = { lost: losePartAction, scrapped: scrapPartAction, void: voidPartAction } as const;

/** A part goes for good. What reversal loses by it stands on the form before anything is pressed. */
export function GoneForm({ part, parties }: { readonly part: PartSaid; readonly parties: readonly PartyChoice[] }) {
	const [way, setWay] = useState<Way>("scrapped");
	return (
		<>
			<SelectField
				label="What becomes of it"
				options={WAYS.map(({ value, label }) => ({ value, label }))}
				value={way}
				onChange={(event) => setWay(WAYS.find(({ value }) => value === event.currentTarget.value)?.value ?? "scrapped")}
			/>
			{way === "lost" && part.misses ? <p className="af-error">{part.misses}</p> : null}
			{part.loses === null || way === "void" || way === "lost" ? null : <p className="af-error">Cannot be undone: {part.loses}</p>}
			{way === "sold" ? <SoldForm part={part} parties={parties} /> : <ForGoodForm key={way} part={part} way={way} />}
		</>
	);
}

function questionOf(part: PartSaid, way: Way): string {
	const what = `${part.original ? "the original " : ""}${part.name}, ${part.tag}`;
	if (way === "void") return `Strike out ${part.name}, ${part.tag}, as entered in error? It stays in the book, struck through.`;
	const deed = way === "sold" ? "Sell" : way === "lost" ? "Write off as lost" : "Scrap";
	return `${deed} ${what}?${part.loses === null ? "" : " No reversal can put it back."}`;
}

function ForGoodForm({ part, way }: { readonly part: PartSaid; readonly way: Exclude<Way, "sold"> }) {
	const form = useActionForm({ schema: leaveSchema, defaults: { partId: part.id, why: "" }, action: DEEDS[way] });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextArea label="Why" rows={2} {...form.field("why")} />
			<SureButton
				type="submit"
				pending={form.pending}
				question={questionOf(part, way)}
				yes={WAYS.find(({ value }) => value === way)?.yes ?? "Do it"}
			>
				{WAYS.find(({ value }) => value === way)?.yes}
			</SureButton>
		</form>
	);
}

function SoldForm({ part, parties }: { readonly part: PartSaid; readonly parties: readonly PartyChoice[] }) {
	const form = useActionForm({
		schema: sellPartSchema,
		defaults: { partId: part.id, partyId: "", partyName: "", why: "" },
		action: sellPartAction,
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<FormRow>
				{parties.length > 0 ? (
					<SelectField
						label="To whom"
						optional
						none="Somebody new, or not said"
						options={parties.map(({ id, name }) => ({ value: id, label: name }))}
						{...form.field("partyId")}
					/>
				) : null}
				<TextField label={parties.length > 0 ? "Their name, if new" : "To whom"} optional {...form.field("partyName")} />
			</FormRow>
			<TextArea label="Why" optional={part.loses === null} rows={2} {...form.field("why")} />
			<SureButton type="submit" pending={form.pending} question={questionOf(part, "sold")} yes="Sell it">
				Sell it
			</SureButton>
		</form>
	);
}

/** What was out, sold, lost or scrapped is in the shop again, on the bench. */
export function ComeBackForm({ part, wasOut }: { readonly part: PartSaid; readonly wasOut: boolean }) {
	const form = useActionForm({
		schema: comeBackSchema,
		defaults: { partId: part.id, locationId: "", bagId: "", why: "" },
		action: comeBackAction,
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="How it came back" optional={wasOut} {...form.field("why")} />
			<Button type="submit" pending={form.pending}>
				It is back, on the bench
			</Button>
		</form>
	);
}
