import type { ComponentProps } from "react";
import { Field, type FieldWords } from "./field";

/** An amount as a person types it ("12.50"); the schema makes minor units of it. `currency` is the ISO 4217 code shown after it. */
export function MoneyField({
	label,
	hint,
	error,
	optional,
	hideLabel,
	id,
	currency,
	...input
}: FieldWords & ComponentProps<"input"> & { readonly currency: string }) {
	return (
		<Field {...{ label, hint, error, optional, hideLabel, id }}>
			{(wiring) => (
				<span className="af-with-unit af-short">
					<input inputMode="decimal" autoComplete="off" {...input} {...wiring} type="text" className="af-input" />
					<span className="af-unit">{currency}</span>
				</span>
			)}
		</Field>
	);
}
