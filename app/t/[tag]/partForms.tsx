"use client";

import { useState } from "react";
import {
	comeBackAction,
	describePartAction,
	losePartAction,
	sayEvidenceAction,
	scrapPartAction,
	sellPartAction,
	sendOutAction,
	voidPartAction,
	withdrawEvidenceAction,
} from "@/app/machines/[machine]/build/actions";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { DayField } from "@/app/ui/dayField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { Notice } from "@/app/ui/notice";
import type { Option } from "@/app/ui/option";
import { SelectField } from "@/app/ui/selectField";
import { StepperField } from "@/app/ui/stepperField";
import { SureButton } from "@/app/ui/sureButton";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { typesOf, useActionForm } from "@/app/ui/useActionForm";
import { ORIGINS } from "@/lib/parts/origins";
import type {
	comeBackSchema,
	describePartSchema,
	leaveSchema,
	sayEvidenceSchema,
	sellPartSchema,
	sendOutSchema,
	withdrawEvidenceSchema,
} from "@/lib/parts/schema";

/** Lent, or at a specialist: somebody outside answers for it. What reversal misses meanwhile stands at the button. */
export function SendOutForm({
	partId,
	parties,
	isOriginal,
	misses,
}: {
	partId: string;
	parties: readonly Option[];
	isOriginal: boolean;
	misses: string;
}) {
	const form = useActionForm({
		schema: typesOf<typeof sendOutSchema>(),
		defaults: { partId, partyId: "", partyName: "", dueDay: "", why: "" },
		action: sendOutAction,
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			{parties.length > 0 ? (
				<SelectField label="Who answers for it" none="Somebody new" options={parties} {...form.field("partyId")} />
			) : null}
			<TextField label="Somebody new" hint="Their name; kept out of what a dossier shows" optional {...form.field("partyName")} />
			<DayField
				label="Due back"
				hint={isOriginal ? "An original goes out only with a day." : undefined}
				optional={!isOriginal}
				{...form.field("dueDay")}
			/>
			<TextField label="What for" hint="nickel plating; as a pattern" optional {...form.field("why")} />
			{misses ? <p className="af-sub mb-2">{misses}</p> : null}
			<Button type="submit" kind="main" wide pending={form.pending}>
				Send it out
			</Button>
		</form>
	);
}

export function ComeBackForm({ partId, places, place }: { partId: string; places: readonly Option[]; place: string }) {
	const form = useActionForm({
		schema: typesOf<typeof comeBackSchema>(),
		defaults: { partId, locationId: "", bagId: "", why: "" },
		action: comeBackAction,
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<SelectField label="Where it lies now" none="On the bench" options={places} {...form.field("locationId")} />
			<TextField
				label={place === "out" ? "How it came back" : `It was ${place}: how it came back`}
				optional={place === "out"}
				{...form.field("why")}
			/>
			<Button type="submit" kind="main" wide pending={form.pending}>
				It is back
			</Button>
		</form>
	);
}

/** It is not where it should be. What is lost by it stands on the page before the button is pressed. */
export function LostForm({ partId, misses }: { partId: string; misses: string }) {
	const form = useActionForm({ schema: typesOf<typeof leaveSchema>(), defaults: { partId, why: "" }, action: losePartAction });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			{misses ? (
				<Notice means="stop" live="off">
					{misses}
				</Notice>
			) : null}
			<TextField label="What is known" hint="Where it was looked for, who had it last" {...form.field("why")} />
			<Button type="submit" wide pending={form.pending}>
				Mark it as lost
			</Button>
			<p className="af-sub">When it turns up, move it to where it lies.</p>
		</form>
	);
}

/** What leaves for good asks first, with what reversal loses by it. */
export function SellForm({ partId, parties, loses }: { partId: string; parties: readonly Option[]; loses: string }) {
	const form = useActionForm({
		schema: typesOf<typeof sellPartSchema>(),
		defaults: { partId, partyId: "", partyName: "", why: "" },
		action: sellPartAction,
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			{parties.length > 0 ? (
				<SelectField label="To whom" none="Not said, or somebody new" options={parties} {...form.field("partyId")} />
			) : null}
			<TextField label="Somebody new" optional {...form.field("partyName")} />
			<TextField label="Why" optional={loses === ""} {...form.field("why")} />
			<ForEver loses={loses} />
			<SureButton type="submit" question={`It is sold apart from its machine. ${loses}`} yes="Sell it" pending={form.pending}>
				Sell it
			</SureButton>
		</form>
	);
}

export function ScrapForm({ partId, loses }: { partId: string; loses: string }) {
	const form = useActionForm({ schema: typesOf<typeof leaveSchema>(), defaults: { partId, why: "" }, action: scrapPartAction });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="Why" hint="licensed disposal; broken beyond use" {...form.field("why")} />
			<ForEver loses={loses} />
			<SureButton type="submit" question={`Scrap it? ${loses || "It cannot be used again."}`} yes="Scrap it" pending={form.pending}>
				Scrap it
			</SureButton>
		</form>
	);
}

/** On the line of the button, before it is pressed. */
const ForEver = ({ loses }: { loses: string }) => (loses ? <p className="af-error">Cannot be undone: {loses}</p> : null);

export function VoidPartForm({ partId }: { partId: string }) {
	const form = useActionForm({ schema: typesOf<typeof leaveSchema>(), defaults: { partId, why: "" }, action: voidPartAction });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="What was wrong" hint="entered twice; never was a part" {...form.field("why")} />
			<SureButton
				type="submit"
				question="It is struck out, and its tag is never given out again."
				yes="Strike it out"
				pending={form.pending}
			>
				Strike it out
			</SureButton>
		</form>
	);
}

export type PartWords = {
	readonly name: string;
	readonly count: number;
	readonly maker: string;
	readonly type: string;
	readonly material: string;
	readonly made: string | null;
	readonly origin: (typeof ORIGINS)[number];
	readonly works: "works" | "faulty" | "unknown";
	readonly condition: string;
};

export function DescribePartForm({ partId, seen, part }: { partId: string; seen: number; part: PartWords }) {
	const [done, setDone] = useState("");
	const form = useActionForm({
		schema: typesOf<typeof describePartSchema>(),
		defaults: { partId, ...part, made: part.made ?? "" },
		seen,
		action: describePartAction,
		onDone: () => setDone("Kept. What was said before stays in the history."),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="Name" {...form.field("name")} />
			<StepperField label="How many" hint="More than one: a lot of identical things" min={1} {...form.field("count")} />
			<SelectField
				label="What it is to the machine"
				options={ORIGINS.map((origin) => ({ value: origin, label: origin }))}
				{...form.field("origin")}
			/>
			<ChoiceField
				label="Does it work"
				options={[
					{ value: "works", label: "Works" },
					{ value: "faulty", label: "Faulty" },
					{ value: "unknown", label: "Not known" },
				]}
				{...form.field("works")}
			/>
			<TextArea label="Its condition" optional {...form.field("condition")} />
			<FormRow>
				<TextField label="Maker" optional {...form.field("maker")} />
				<TextField label="Type" optional {...form.field("type")} />
			</FormRow>
			<FormRow>
				<TextField label="Material" optional {...form.field("material")} />
				<TextField label="Made" hint="1958, 195X, 1950/1955, 1958?" optional {...form.field("made")} />
			</FormRow>
			<Button type="submit" pending={form.pending}>
				Keep the words
			</Button>
			{done ? <Notice means="original">{done}</Notice> : null}
		</form>
	);
}

const HOWS = ["plate", "date code", "casting number", "paint shadow", "photo", "catalogue", "invoice", "untouched fixings"];

export function EvidenceForm({ partId }: { partId: string }) {
	const [done, setDone] = useState("");
	const form = useActionForm({
		schema: typesOf<typeof sayEvidenceSchema>(),
		defaults: { partId, positionId: "", faultId: "", kind: "seen", claim: "came", how: "", words: "", whoSaid: "", captureId: "" },
		action: sayEvidenceAction,
		onDone: (_, { reset }) => {
			reset();
			setDone("Kept.");
		},
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<ChoiceField
				label="How we know"
				options={[
					{ value: "seen", label: "Seen", hint: "we took it out" },
					{ value: "documented", label: "Documented", hint: "plate, code, paper" },
					{ value: "told", label: "Told" },
					{ value: "assumed", label: "Assumed" },
				]}
				{...form.field("kind")}
			/>
			<ChoiceField
				label="What it shows"
				options={[
					{ value: "came", label: "It was in it when it came" },
					{ value: "made", label: "It was in it when it was made" },
				]}
				{...form.field("claim")}
			/>
			<TextField label="By what" optional suggest={HOWS} {...form.field("how")} />
			<TextField label="In words" optional {...form.field("words")} />
			<TextField label="Who said so" hint="Only for what was told; kept out of what a dossier shows" optional {...form.field("whoSaid")} />
			<Button type="submit" pending={form.pending}>
				Add the evidence
			</Button>
			{done ? <Notice means="original">{done}</Notice> : null}
		</form>
	);
}

/** It turned out not to hold. It stays readable. */
export function WithdrawEvidence({ evidenceId }: { evidenceId: string }) {
	const form = useActionForm({
		schema: typesOf<typeof withdrawEvidenceSchema>(),
		defaults: { evidenceId, why: "" },
		action: withdrawEvidenceAction,
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<Button type="submit" kind="quiet" pending={form.pending}>
				Withdraw
			</Button>
		</form>
	);
}
