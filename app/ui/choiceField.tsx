import type { ComponentProps } from "react";
import { FieldGroup, type FieldWords } from "./field";
import type { Option } from "./option";

/** Two to six answers as big chips, one of them taken. The rest of the props go to each radio (`name`, `ref`, `onChange`). */
export function ChoiceField({
	label,
	hint,
	error,
	optional,
	hideLabel,
	options,
	defaultValue,
	...radio
}: FieldWords & Omit<ComponentProps<"input">, "type" | "id" | "value"> & { readonly options: readonly Option[] }) {
	return (
		<FieldGroup {...{ label, hint, error, optional, hideLabel }} role="radiogroup">
			{() => (
				<div className="af-choices">
					{options.map((option) => (
						<label key={option.value} className="af-choice">
							<input
								{...radio}
								type="radio"
								value={option.value}
								defaultChecked={defaultValue === undefined ? undefined : defaultValue === option.value}
							/>
							<span>
								{option.label}
								{option.hint ? <small>{option.hint}</small> : null}
							</span>
						</label>
					))}
				</div>
			)}
		</FieldGroup>
	);
}
