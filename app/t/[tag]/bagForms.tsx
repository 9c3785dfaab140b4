"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { type BagChoice, Into, type IntoChoice, unsaidIn } from "@/app/t/into";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { FormProblem } from "@/app/ui/formProblem";
import { Notice } from "@/app/ui/notice";
import { SelectField } from "@/app/ui/selectField";
import { StepperField } from "@/app/ui/stepperField";
import { SureButton } from "@/app/ui/sureButton";
import { TextField } from "@/app/ui/textField";
import { typesOf, useActionForm } from "@/app/ui/useActionForm";
import { NOT_FOUND } from "@/lib/bags/rules";
import type { describeBagSchema, makeBagSchema, moveBagSchema, movePartSchema, voidBagSchema } from "@/lib/bags/schema";
import { refuse } from "@/lib/core/result";
import type { moveFixingSchema } from "@/lib/fittings/schema";
import { describeBagAction, makeBagAction, moveBagAction, moveFixingAction, movePartAction, voidBagAction } from "./actions";

const KINDS = ["bag", "tote", "envelope", "tube", "tray", "tub", "sleeve", "box"].map((kind) => ({ value: kind, label: kind }));
const ROLES = [
	{ value: "holding", label: "Emptied again", hint: "when the machine goes back together" },
	{ value: "keeping", label: "Kept", hint: "stays with the machine for ever" },
];
const CAUTIONS = ["this side up", "mercury: do not break", "loaded spring", "sharp edge", "open bag: perished rubber"];

/** A bag made for a tag that hangs on nothing yet, or for the next free number. */
export function MakeBagForm({ tag, machineId }: { tag: string | null; machineId: string | null }) {
	const router = useRouter();
	const form = useActionForm({
		schema: typesOf<typeof makeBagSchema>(),
		defaults: { machineId: machineId ?? "", kind: "bag", role: "holding", words: "", caution: "", tag },
		action: makeBagAction,
		onDone: (bag) => {
			router.push(`/t/${bag.tag}`);
			router.refresh();
		},
	});
	return (
		<form {...form.formProps} className="flex flex-col gap-2">
			<FormProblem problem={form.problem} />
			<TextField label="In big words: what is in it" {...form.field("words")} />
			<ChoiceField label="Is it emptied again?" options={ROLES} {...form.field("role")} />
			<SelectField label="What it is" options={KINDS} {...form.field("kind")} />
			<TextField label="What a hand must know" optional suggest={CAUTIONS} {...form.field("caution")} />
			<Button type="submit" kind="main" wide pending={form.pending}>
				{tag ? `Make a bag with ${tag}` : "Make the bag"}
			</Button>
		</form>
	);
}

/** Moves a bag with all that is in it. */
export function MoveBagForm({
	bagId,
	machineNumber,
	words,
	bags,
	places,
}: {
	bagId: string;
	machineNumber: number;
	words: string;
	bags: readonly BagChoice[];
	places: readonly { readonly id: string; readonly path: string }[];
}) {
	const [into, setInto] = useState<IntoChoice>({
		kind: places.length > 0 ? "location" : "bench",
		role: "holding",
		bagId: bags[0]?.id ?? "",
		locationId: "",
		words: "",
		caution: "",
		tag: "",
	});
	const [done, setDone] = useState("");
	const form = useActionForm({
		schema: typesOf<typeof moveBagSchema>(),
		defaults: { bagId, to: { kind: "bench" } },
		action: async (typed) => {
			const unsaid = unsaidIn(into, null);
			return unsaid === null ? moveBagAction({ ...typed, to: placeOf(into) }) : refuse("say-where", unsaid);
		},
		onDone: (moved) => setDone(`It lies ${moved.words} now.`),
	});
	return (
		<form {...form.formProps} className="flex flex-col gap-2">
			<FormProblem problem={form.problem} />
			<Into
				choice={into}
				onChange={setInto}
				bags={bags}
				places={places}
				machineNumber={machineNumber}
				partName={words}
				isOriginal={false}
				noNewBag
			/>
			<Button type="submit" kind="main" wide pending={form.pending}>
				Lay it there
			</Button>
			{done ? <Notice means="original">{done}</Notice> : null}
		</form>
	);
}

const placeOf = (into: IntoChoice) =>
	into.kind === "location"
		? ({ kind: "location", locationId: into.locationId } as const)
		: into.kind === "bag" || into.kind === "last-bag"
			? ({ kind: "bag", bagId: into.bagId } as const)
			: ({ kind: "bench" } as const);

/** The bag is not where it should be: it stays on record as missing, or as out of the shop, until it is laid somewhere again. */
export function BagNotHereForm({ bagId, misses }: { bagId: string; misses: string }) {
	const form = useActionForm({
		schema: typesOf<typeof moveBagSchema>(),
		defaults: { bagId, to: { kind: "out", why: NOT_FOUND } },
		action: moveBagAction,
	});
	return (
		<form {...form.formProps} className="flex flex-col gap-2">
			<FormProblem problem={form.problem} />
			<TextField
				label="What is known"
				hint="Missing: begin with “not found”, and say where it was looked for. Else who has it"
				{...form.field("to.why")}
			/>
			{misses ? (
				<Notice means="stop" live="off">
					{misses}
				</Notice>
			) : null}
			<Button type="submit" wide pending={form.pending}>
				Mark it as not here
			</Button>
		</form>
	);
}

/** Lays a loose part into this bag. */
export function FillBagForm({ bagId, loose }: { bagId: string; loose: readonly { readonly id: string; readonly label: string }[] }) {
	const [done, setDone] = useState("");
	const form = useActionForm({
		schema: typesOf<typeof movePartSchema>(),
		defaults: { partId: loose[0]?.id ?? "", to: { kind: "bag", bagId } },
		action: movePartAction,
		onDone: () => setDone("It is in the bag."),
	});
	return (
		<form {...form.formProps} className="flex flex-col gap-2">
			<FormProblem problem={form.problem} />
			<SelectField label="Which part" options={loose.map((part) => ({ value: part.id, label: part.label }))} {...form.field("partId")} />
			<Button type="submit" wide pending={form.pending}>
				Put it into this bag
			</Button>
			{done ? <Notice means="original">{done}</Notice> : null}
		</form>
	);
}

const ELSEWHERE = [
	{ value: "bench", label: "On the bench" },
	{ value: "left", label: "In their hole, or on the part" },
	{ value: "lost", label: "Lost" },
	{ value: "scrapped", label: "Scrapped" },
];

/** Fixings that lie elsewhere, some or all of a lot. */
export function MoveFixingForm({
	fixing,
	bags,
}: {
	fixing: { readonly id: string; readonly count: number; readonly words: string };
	bags: readonly BagChoice[];
}) {
	const form = useActionForm({
		schema: typesOf<typeof moveFixingSchema>(),
		defaults: { fixingId: fixing.id, count: fixing.count, to: { kind: "bench" }, note: "" },
		action: moveFixingAction,
	});
	return (
		<form {...form.formProps} className="flex flex-col gap-2">
			<FormProblem problem={form.problem} />
			<StepperField label={`How many of ${fixing.words}`} min={1} max={fixing.count} {...form.field("count", { valueAsNumber: true })} />
			<SelectField
				label="Where they are"
				name="to"
				defaultValue="bench"
				onChange={(event) => {
					const { value } = event.currentTarget;
					form.form.setValue("to", value.startsWith("bag:") ? { kind: "bag", bagId: value.slice(4) } : { kind: elsewhere(value) });
				}}
				groups={[
					{ label: "Where they are", options: ELSEWHERE },
					{ label: "In another bag", options: bags.map((bag) => ({ value: `bag:${bag.id}`, label: `${bag.tag} ${bag.words}` })) },
				]}
			/>
			<TextField label="Note" optional {...form.field("note")} />
			<Button type="submit" pending={form.pending}>
				Say so
			</Button>
		</form>
	);
}

const elsewhere = (value: string) => (value === "left" || value === "lost" || value === "scrapped" ? value : "bench");

export function DescribeBagForm({
	bag,
}: {
	bag: {
		readonly id: string;
		readonly kind: "bag" | "tote" | "envelope" | "tube" | "tray" | "tub" | "sleeve" | "box";
		readonly role: "holding" | "keeping";
		readonly words: string;
		readonly caution: string;
	};
}) {
	const [done, setDone] = useState("");
	const form = useActionForm({
		schema: typesOf<typeof describeBagSchema>(),
		defaults: { bagId: bag.id, kind: bag.kind, role: bag.role, words: bag.words, caution: bag.caution },
		action: describeBagAction,
		onDone: () => setDone("Kept. What was said before stays in the history."),
	});
	return (
		<form {...form.formProps} className="flex flex-col gap-2">
			<FormProblem problem={form.problem} />
			<TextField label="In big words: what is in it" {...form.field("words")} />
			<ChoiceField label="Is it emptied again?" options={ROLES} {...form.field("role")} />
			<SelectField label="What it is" options={KINDS} {...form.field("kind")} />
			<TextField label="What a hand must know" optional suggest={CAUTIONS} {...form.field("caution")} />
			<Button type="submit" pending={form.pending}>
				Keep the words
			</Button>
			{done ? <Notice means="original">{done}</Notice> : null}
		</form>
	);
}

/** Only an empty bag can be taken out of use. */
export function VoidBagForm({ bagId }: { bagId: string }) {
	const form = useActionForm({ schema: typesOf<typeof voidBagSchema>(), defaults: { bagId, why: "" }, action: voidBagAction });
	return (
		<form {...form.formProps} className="flex flex-col gap-2">
			<FormProblem problem={form.problem} />
			<TextField label="Why" hint="torn; empty since re-assembly" {...form.field("why")} />
			<SureButton type="submit" question="Its tag is never given out again." yes="Take it out of use" pending={form.pending}>
				Take the bag out of use
			</SureButton>
		</form>
	);
}
