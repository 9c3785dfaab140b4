"use client";

import { useState } from "react";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { DayField } from "@/app/ui/dayField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { Notice } from "@/app/ui/notice";
import type { Option } from "@/app/ui/option";
import { SelectField } from "@/app/ui/selectField";
import { TakeBack } from "@/app/ui/takeBack";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { drawFromLineSchema, partFromLineSchema, returnLineSchema, voidUseSchema } from "@/lib/purchases/schema";
import { drawFromLineAction, partFromLineAction, returnLineAction, voidUseAction } from "../actions";

type LineOption = Option & { readonly what: string };
type Way = "part" | "used" | "returned";

/** One of three: a part with a tag comes of it, it is simply used up on a machine, or it goes back to the supplier. */
export function DrawForm({ lines, machines, today }: { lines: readonly LineOption[]; machines: readonly Option[]; today: string }) {
	const [way, setWay] = useState<Way>("part");
	const shared = { lines, machines, today };
	return (
		<>
			<ChoiceField
				label="What becomes of it"
				hideLabel
				name="way"
				defaultValue={way}
				onChange={(event) => setWay(event.currentTarget.value as Way)}
				options={[
					{ value: "part", label: "A part of a machine", hint: "gets a tag" },
					{ value: "used", label: "Used up", hint: "screws, wire, filler" },
					{ value: "returned", label: "Sent back" },
				]}
			/>
			{way === "part" ? <PartForm {...shared} /> : way === "used" ? <UsedForm {...shared} /> : <ReturnedForm {...shared} />}
		</>
	);
}

type DrawProps = { readonly lines: readonly LineOption[]; readonly machines: readonly Option[]; readonly today: string };

function PartForm({ lines, machines, today }: DrawProps) {
	const [done, setDone] = useState("");
	const form = useActionForm({
		schema: partFromLineSchema,
		defaults: {
			lineId: lines[0]?.value ?? "",
			machineId: machines[0]?.value ?? "",
			count: "1",
			day: today,
			words: "",
			details: { name: "", count: "1", origin: "modern", works: "works", maker: "", type: "", material: "", condition: "", made: "" },
		},
		action: partFromLineAction,
		onDone: ({ tag }) => setDone(tag),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<SelectField label="Line" options={lines} {...form.field("lineId")} />
			<SelectField label="Machine" options={machines} {...form.field("machineId")} />
			<TextField label="How many of the line" inputMode="numeric" {...form.field("count")} />
			<TextField label="Name of the part" hint="Empty: as on the line" optional {...form.field("details.name")} />
			<SelectField
				label="What it is to the machine"
				options={[
					{ value: "modern", label: "modern substitute" },
					{ value: "reproduction", label: "reproduction" },
					{ value: "period", label: "period: same maker and type, from elsewhere" },
				]}
				{...form.field("details.origin")}
			/>
			<Button type="submit" kind="main" pending={form.pending}>
				Make it a part
			</Button>
			{done ? (
				<Notice means="original">
					It is {done} now and lies on the bench. <a href={`/t/${done}`}>Open it</a> to put it in.
				</Notice>
			) : null}
		</form>
	);
}

function UsedForm({ lines, machines, today }: DrawProps) {
	const [done, setDone] = useState(false);
	const form = useActionForm({
		schema: drawFromLineSchema,
		defaults: { lineId: lines[0]?.value ?? "", machineId: machines[0]?.value ?? "", count: "1", day: today, words: "", partId: "" },
		action: drawFromLineAction,
		onDone: () => setDone(true),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<SelectField label="Line" options={lines} {...form.field("lineId")} />
			<SelectField label="Machine" options={machines} {...form.field("machineId")} />
			<FormRow>
				<TextField label="How many" inputMode="numeric" {...form.field("count")} />
				<DayField label="Day" {...form.field("day")} />
			</FormRow>
			<TextField label="What for" optional {...form.field("words")} />
			<Button type="submit" kind="main" pending={form.pending}>
				Use it
			</Button>
			{done ? <Notice means="original">Used, at its share of the cost. The rest stays in stock.</Notice> : null}
		</form>
	);
}

function ReturnedForm({ lines, machines, today }: DrawProps) {
	const [done, setDone] = useState(false);
	const form = useActionForm({
		schema: returnLineSchema,
		defaults: { lineId: lines[0]?.value ?? "", machineId: machines[0]?.value ?? "", count: "1", day: today, words: "" },
		action: returnLineAction,
		onDone: () => setDone(true),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<SelectField label="Line" options={lines} {...form.field("lineId")} />
			<SelectField
				label="Bought for"
				hint="Also when it goes back from stock. What it cost stays with this machine until the seller credits it."
				options={machines}
				{...form.field("machineId")}
			/>
			<FormRow>
				<TextField label="How many" inputMode="numeric" {...form.field("count")} />
				<DayField label="Day" {...form.field("day")} />
			</FormRow>
			<TextField label="Why it goes back" {...form.field("words")} />
			<Button type="submit" kind="main" pending={form.pending}>
				Send it back
			</Button>
			{done ? <Notice means="wait">Sent back. Its credit is awaited: enter it below when the seller answers.</Notice> : null}
		</form>
	);
}

export function VoidUseForm({ useId, what, kind }: { useId: string; what: string; kind: "used" | "returned" }) {
	const form = useActionForm({ schema: voidUseSchema, defaults: { useId, why: "" }, action: voidUseAction });
	return (
		<TakeBack
			says={`Take back the ${kind === "returned" ? "return" : "use"} of ${what}`}
			formProps={form.formProps}
			problem={form.problem}
			pending={form.pending}
			why={form.field("why")}
		/>
	);
}
