import { type ComponentProps, useId } from "react";
import { Field, type FieldWords } from "./field";

/** One line of text. `suggest` offers earlier words under the field; `mono` is for tags and codes. */
export function TextField({
	label,
	hint,
	error,
	optional,
	hideLabel,
	id,
	suggest,
	mono,
	...input
}: FieldWords & ComponentProps<"input"> & { readonly suggest?: readonly string[]; readonly mono?: boolean }) {
	const list = useId();
	return (
		<Field {...{ label, hint, error, optional, hideLabel, id }}>
			{(wiring) => (
				<>
					<input
						type="text"
						autoComplete="off"
						list={suggest?.length ? list : undefined}
						data-mono={mono ? "" : undefined}
						{...input}
						{...wiring}
						className={`af-input ${input.className ?? ""}`}
					/>
					{suggest?.length ? (
						<datalist id={list}>
							{suggest.map((word) => (
								<option key={word} value={word} />
							))}
						</datalist>
					) : null}
				</>
			)}
		</Field>
	);
}
