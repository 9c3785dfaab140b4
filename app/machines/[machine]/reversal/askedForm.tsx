import { Button } from "@/app/ui/button";
import { CheckField } from "@/app/ui/checkField";
import { ChoiceField } from "@/app/ui/choiceField";
import { DayField } from "@/app/ui/dayField";
import { TextField } from "@/app/ui/textField";

/** The question lies in the address, so that a plan can be shared and printed again. A plain form does. */
export function AskedForm({
	toDay,
	undo,
	reason,
	conversions,
}: {
	toDay: string | null;
	undo: readonly string[];
	reason: string;
	conversions: readonly { readonly number: number; readonly name: string; readonly safety: boolean }[];
}) {
	return (
		<form method="get">
			<ChoiceField
				label="Go back to"
				name="to"
				defaultValue={toDay === null ? "as-found" : "day"}
				options={[
					{ value: "as-found", label: "as found", hint: "as it came to the shop" },
					{ value: "day", label: "a day", hint: "as it stood that evening" },
				]}
			/>
			<DayField label="Which day" optional name="day" defaultValue={toDay ?? ""} />
			{conversions.length > 0 ? (
				<fieldset className="af-field">
					<legend className="af-label">Undo only these conversions</legend>
					<p className="af-hint">None ticked: the whole machine, but what was done for safety stays.</p>
					{conversions.map((conversion) => (
						<CheckField
							key={conversion.number}
							name="undo"
							value={String(conversion.number)}
							defaultChecked={undo.includes(String(conversion.number))}
							label={`${conversion.number} ${conversion.name}${conversion.safety ? " (for safety)" : ""}`}
						/>
					))}
				</fieldset>
			) : null}
			{conversions.some(({ safety }) => safety) ? (
				<TextField
					label="Why a danger is put back"
					optional
					hint="What was done for safety is only undone when it is ticked and a reason stands here."
					name="reason"
					defaultValue={reason}
				/>
			) : null}
			<Button type="submit" kind="main">
				Show the way back
			</Button>
		</form>
	);
}
