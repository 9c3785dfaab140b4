import type { ComponentProps } from "react";
import { Field, type FieldWords } from "./field";
import type { Option } from "./option";

/** A long list to choose one of. `none` is the word for no answer, sent as "". For up to six answers use ChoiceField. */
export function SelectField({
	label,
	hint,
	error,
	optional,
	hideLabel,
	id,
	options,
	groups,
	none,
	...select
}: FieldWords &
	ComponentProps<"select"> & {
		readonly options?: readonly Option[];
		readonly groups?: readonly { readonly label: string; readonly options: readonly Option[] }[];
		readonly none?: string;
	}) {
	return (
		<Field {...{ label, hint, error, optional, hideLabel, id }}>
			{(wiring) => (
				<select {...select} {...wiring} className={`af-input ${select.className ?? ""}`}>
					{none === undefined ? null : <option value="">{none}</option>}
					{options?.map(toOption)}
					{groups?.map((group) => (
						<optgroup key={group.label} label={group.label}>
							{group.options.map(toOption)}
						</optgroup>
					))}
				</select>
			)}
		</Field>
	);
}

const toOption = (option: Option) => (
	<option key={option.value} value={option.value}>
		{option.label}
	</option>
);
