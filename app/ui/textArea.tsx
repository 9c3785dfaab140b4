import type { ComponentProps } from "react";
import { Field, type FieldWords } from "./field";

/** Several lines; grows with what is typed where the browser can. `mono` keeps indents readable. */
export function TextArea({
	label,
	hint,
	error,
	optional,
	hideLabel,
	id,
	mono,
	...area
}: FieldWords & ComponentProps<"textarea"> & { readonly mono?: boolean }) {
	return (
		<Field {...{ label, hint, error, optional, hideLabel, id }}>
			{(wiring) => (
				<textarea rows={3} data-mono={mono ? "" : undefined} {...area} {...wiring} className={`af-input ${area.className ?? ""}`} />
			)}
		</Field>
	);
}
