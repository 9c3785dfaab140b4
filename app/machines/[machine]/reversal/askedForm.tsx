import { Button } from "@/app/ui/button";
import { CheckField } from "@/app/ui/checkField";
import { ChoiceField } from "@/app/ui/choiceField";
import { DayField } from "@/app/ui/dayField";
import { FormRow } from "@/app/ui/layouts";
import { TextField } from "@/app/ui/textField";
import type { AskedHere } from "./askedOfAddress";

/** The question lies in the address, so that a plan can be shared and printed again. A plain form does. */
export function AskedForm({
	asked,
	conversions,
	areas,
	errors,
}: {
	readonly asked: AskedHere;
	readonly conversions: readonly { readonly number: number; readonly name: string; readonly safety: boolean }[];
	/** The machine's positions, as it is built. */
	readonly areas: readonly { readonly name: string; readonly positions: readonly { readonly mark: string; readonly name: string }[] }[];
	readonly errors: Readonly<Record<string, string>>;
}) {
	return (
		<form method="get">
			<ChoiceField
				label="Go back to"
				name="to"
				defaultValue={asked.to}
				options={[
					{ value: "as-found", label: "as found", hint: "as it came to the shop" },
					{ value: "as-made", label: "as made", hint: "the best that can be attained" },
					{ value: "day", label: "a day", hint: "as it stood then" },
				]}
			/>
			<FormRow>
				<DayField label="Which day" optional name="day" defaultValue={asked.day ?? ""} error={errors.day} />
				<TextField
					label="At what time"
					hint="Left empty: that evening"
					optional
					type="time"
					name="time"
					defaultValue={asked.time}
					error={errors.time}
					className="af-short"
				/>
			</FormRow>
			{conversions.length > 0 ? (
				<fieldset className="af-field">
					<legend className="af-label">Undo only these conversions</legend>
					<p className="af-hint">None ticked: the whole machine, but what was done for safety stays.</p>
					{conversions.map((conversion) => (
						<CheckField
							key={conversion.number}
							name="undo"
							value={String(conversion.number)}
							defaultChecked={asked.undo.includes(String(conversion.number))}
							label={`${conversion.number} ${conversion.name}${conversion.safety ? " (for safety)" : ""}`}
						/>
					))}
				</fieldset>
			) : null}
			<details className="af-details" open={asked.positions.length > 0}>
				<summary>Only some positions{asked.positions.length > 0 ? ` (${asked.positions.length} chosen)` : ""}</summary>
				<div className="af-choose-positions">
					{areas.map((area) => (
						<fieldset key={area.name} className="af-field">
							<legend className="af-label">{area.name}</legend>
							{area.positions.map(({ mark, name }) => (
								<CheckField key={mark} name="pos" value={mark} defaultChecked={asked.positions.includes(mark)} label={`${mark} ${name}`} />
							))}
						</fieldset>
					))}
				</div>
			</details>
			{conversions.some(({ safety }) => safety) ? (
				<TextField
					label="Why a danger is put back"
					optional
					hint="What was done for safety is only undone when it is chosen and a reason stands here."
					name="reason"
					defaultValue={asked.reason}
					error={errors.reason}
				/>
			) : null}
			<Button type="submit" kind="main">
				Show the way back
			</Button>
		</form>
	);
}
