"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { Notice } from "@/app/ui/notice";
import { TextField } from "@/app/ui/textField";
import { type ActionForm, useActionForm } from "@/app/ui/useActionForm";
import { correctStockSchema, nudgeSchema, type OwnStockForm, ownStockSchema, putAwayStockSchema, stockSoFar } from "@/lib/labels/ownStock";
import { addStockAction, correctStockAction, putAwayStockAction, sayNudgeAction } from "./actions";
import { StockPicture } from "./stockPicture";

const KINDS = [
	{ value: "sheet", label: "Sheet", hint: "many labels on a page" },
	{ value: "roll", label: "Roll", hint: "one label after the other" },
	{ value: "continuous", label: "Continuous roll", hint: "the printer cuts" },
];

/** An A4 sheet of 21, to be measured over. */
const START: Required<OwnStockForm> = {
	kind: "sheet",
	name: "",
	width: "63.5",
	height: "38.1",
	longest: "60",
	pageWidth: "210",
	pageHeight: "297",
	columns: "3",
	rows: "7",
	top: "15.15",
	left: "7.2",
	pitchX: "66",
	pitchY: "38.1",
};

type StockFields = Pick<ActionForm<Required<OwnStockForm>>, "field" | "form">;

/** What a kind of stock is measured by, and the picture of what the figures come to. */
function Measures({ field, form }: StockFields) {
	const said = form.watch();
	const stock = stockSoFar(said);
	const mm = { inputMode: "decimal" as const, mono: true };
	return (
		<>
			<TextField label="Name" hint="As it stands on the packet, or what you call it." {...field("name")} />
			<ChoiceField label="What it is" options={KINDS} {...field("kind")} />
			<FormRow>
				<TextField label="Label, wide" hint="mm" {...mm} {...field("width")} />
				<TextField label={said.kind === "continuous" ? "Shortest label" : "Label, high"} hint="mm" {...mm} {...field("height")} />
				{said.kind === "continuous" ? <TextField label="Longest label" hint="mm" {...mm} {...field("longest")} /> : null}
			</FormRow>
			{said.kind === "sheet" ? (
				<>
					<FormRow>
						<TextField label="Sheet, wide" hint="mm; A4 210, Letter 215.9" {...mm} {...field("pageWidth")} />
						<TextField label="Sheet, high" hint="mm; A4 297, Letter 279.4" {...mm} {...field("pageHeight")} />
					</FormRow>
					<FormRow>
						<TextField label="Labels side by side" inputMode="numeric" mono {...field("columns")} />
						<TextField label="Labels below each other" inputMode="numeric" mono {...field("rows")} />
					</FormRow>
					<FormRow>
						<TextField label="Left edge of the sheet to the first label" hint="mm" {...mm} {...field("left")} />
						<TextField label="Top edge of the sheet to the first label" hint="mm" {...mm} {...field("top")} />
					</FormRow>
					<FormRow>
						<TextField label="One left edge to the next" hint="mm" {...mm} {...field("pitchX")} />
						<TextField label="One top edge to the next" hint="mm" {...mm} {...field("pitchY")} />
					</FormRow>
				</>
			) : null}
			{stock ? <StockPicture stock={stock} /> : <p className="af-sub">The picture comes with the last figure.</p>}
		</>
	);
}

export function AddStockForm() {
	const router = useRouter();
	const form = useActionForm({
		schema: ownStockSchema,
		defaults: START,
		action: addStockAction,
		onDone: ({ stockId }) => router.push(`/labels/stock/${stockId}`),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<Measures field={form.field as StockFields["field"]} form={form.form as unknown as StockFields["form"]} />
			<Button type="submit" kind="main" pending={form.pending}>
				Add this stock
			</Button>
		</form>
	);
}

export function CorrectStockForm({
	stockId,
	defaults,
	seen,
}: {
	readonly stockId: string;
	readonly defaults: Required<OwnStockForm>;
	readonly seen: number;
}) {
	const [done, setDone] = useState(false);
	const form = useActionForm({
		schema: correctStockSchema,
		defaults: { stockId, ...defaults },
		seen,
		action: correctStockAction,
		onDone: () => setDone(true),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<Measures field={form.field as unknown as StockFields["field"]} form={form.form as unknown as StockFields["form"]} />
			<Button type="submit" kind="main" pending={form.pending}>
				Correct it
			</Button>
			{done ? <Notice means="original">It is corrected.</Notice> : null}
		</form>
	);
}

export function PutAwayStockForm({
	stockId,
	name,
	stands,
}: {
	readonly stockId: string;
	readonly name: string;
	readonly stands: "yes" | "no";
}) {
	const form = useActionForm({
		schema: putAwayStockSchema,
		defaults: { stockId, stands: stands === "yes" ? "no" : "yes" },
		action: putAwayStockAction,
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<Button type="submit" pending={form.pending}>
				{stands === "yes" ? `Put ${name} away` : `Use ${name} again`}
			</Button>
		</form>
	);
}

export function NudgeForm({ stock, right, down }: { readonly stock: string; readonly right: number; readonly down: number }) {
	const [done, setDone] = useState("");
	const form = useActionForm({
		schema: nudgeSchema,
		defaults: { stock, right: String(right / 10), down: String(down / 10) },
		action: sayNudgeAction,
		onDone: ({ words }) => setDone(`Prints on this stock go ${words} from now on. Print the grid as moved to see whether it is right.`),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<FormRow>
				<TextField label="To the right" hint="mm, to a tenth; to the left with a minus" inputMode="text" mono {...form.field("right")} />
				<TextField label="Down" hint="mm, to a tenth; up with a minus" inputMode="text" mono {...form.field("down")} />
			</FormRow>
			<Button type="submit" kind="main" pending={form.pending}>
				Move the prints
			</Button>
			{done ? <Notice means="original">{done}</Notice> : null}
		</form>
	);
}
