import { type ComponentProps, useId } from "react";
import type { FieldWords } from "./field";

/** One yes or no. The whole line is the target. */
export function CheckField({
	label,
	hint,
	error,
	id: given,
	optional: _always,
	hideLabel: _never,
	...input
}: FieldWords & Omit<ComponentProps<"input">, "type">) {
	const own = useId();
	const id = given ?? own;
	const describedBy = [hint ? `${id}-hint` : "", error ? `${id}-error` : ""].filter(Boolean).join(" ") || undefined;
	return (
		<div className="af-field">
			<label className="af-check">
				<input {...input} type="checkbox" id={id} aria-describedby={describedBy} aria-invalid={error ? true : undefined} />
				<span>
					{label}
					{hint ? (
						<span className="af-sub" id={`${id}-hint`}>
							{hint}
						</span>
					) : null}
				</span>
			</label>
			<p className="af-error" id={`${id}-error`}>
				{error}
			</p>
		</div>
	);
}
