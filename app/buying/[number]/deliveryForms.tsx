"use client";

import { Button } from "@/app/ui/button";
import { DayField } from "@/app/ui/dayField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { MinutesField } from "@/app/ui/minutesField";
import type { Option } from "@/app/ui/option";
import { SelectField } from "@/app/ui/selectField";
import { TakeBack } from "@/app/ui/takeBack";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { deliverSchema, voidDeliverySchema } from "@/lib/deliveries/schema";
import { changeLeadSchema } from "@/lib/purchases/schema";
import { changeLeadAction, deliverAction, voidDeliveryAction } from "../actions";
import { LEAD_HINT } from "../leadHint";

type Still = { readonly lineId: string; readonly what: string; readonly unit: string; readonly still: number; readonly count: number };

/** What came, line by line: as it stands, all that was still in the post. */
export function DeliverForm({
	purchaseId,
	today,
	lines,
	places,
}: {
	readonly purchaseId: string;
	readonly today: string;
	readonly lines: readonly Still[];
	readonly places: readonly Option[];
}) {
	const form = useActionForm({
		schema: deliverSchema,
		defaults: {
			purchaseId,
			day: today,
			locationId: "",
			words: "",
			lines: lines.map(({ lineId, still }) => ({ lineId, count: String(still) })),
		},
		action: deliverAction,
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			{lines.map((line, index) => (
				<TextField
					key={line.lineId}
					label={line.what}
					hint={`${line.still} of ${line.count}${line.unit === "piece" ? "" : ` ${line.unit}`} still in the post. Empty: none came.`}
					inputMode="numeric"
					className="af-short"
					{...form.field(`lines.${index}.count`)}
				/>
			))}
			<FormRow>
				<DayField label="Came on" {...form.field("day")} />
				{places.length === 0 ? null : <SelectField label="Put at" none="not put away yet" options={places} {...form.field("locationId")} />}
			</FormRow>
			<TextField label="Note" hint="Damaged, another maker's, a note of the carrier" optional {...form.field("words")} />
			<Button type="submit" kind="main" pending={form.pending}>
				It is here
			</Button>
		</form>
	);
}

export function VoidDeliveryForm({ deliveryId, what }: { readonly deliveryId: string; readonly what: string }) {
	const form = useActionForm({ schema: voidDeliverySchema, defaults: { deliveryId, why: "" }, action: voidDeliveryAction });
	return (
		<TakeBack
			says={`Take back the delivery of ${what}`}
			formProps={form.formProps}
			problem={form.problem}
			pending={form.pending}
			why={form.field("why")}
		/>
	);
}

export function LeadForm({
	purchaseId,
	entry,
	lead,
}: {
	readonly purchaseId: string;
	readonly entry: number;
	readonly lead: { readonly low: string; readonly likely: string; readonly high: string };
}) {
	const form = useActionForm({ schema: changeLeadSchema, seen: entry, defaults: { purchaseId, lead }, action: changeLeadAction });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<MinutesField
				label="Days until it is here"
				hint={LEAD_HINT}
				optional
				low={form.field("lead.low")}
				likely={form.field("lead.likely")}
				high={form.field("lead.high")}
			/>
			<Button type="submit" pending={form.pending}>
				Keep the days
			</Button>
		</form>
	);
}
