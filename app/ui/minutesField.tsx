import { type ComponentProps, useId } from "react";
import { FieldGroup, type FieldWords } from "./field";

type Point = Omit<ComponentProps<"input">, "type" | "id"> & { readonly error?: string | undefined };

/**
 * A time in three points, as a person types it ("2 h 35", "155"); the schema makes whole minutes of it.
 * `low`, `likely` and `high` are the props of the three inputs: `low={form.field("minutes.low")}`. Each may carry its own error.
 */
export function MinutesField({
	label,
	hint = "45 is minutes; 2 h 35 is hours and minutes",
	error,
	optional,
	hideLabel,
	low,
	likely,
	high,
}: FieldWords & { readonly low: Point; readonly likely: Point; readonly high: Point }) {
	const id = useId();
	const points = { low, likely, high };
	const wrong = error ?? low.error ?? likely.error ?? high.error;
	return (
		<FieldGroup {...{ label, hint, optional, hideLabel }} error={wrong}>
			{(wiring) => (
				<div className="af-three">
					{(["low", "likely", "high"] as const).map((point) => {
						const { error: own, ...input } = points[point];
						return (
							<div key={point}>
								<label htmlFor={`${id}-${point}`}>{point}</label>
								<input
									autoComplete="off"
									{...input}
									type="text"
									id={`${id}-${point}`}
									className="af-input"
									aria-invalid={own || error ? true : undefined}
									aria-describedby={own || error ? wiring["aria-describedby"] : undefined}
								/>
							</div>
						);
					})}
				</div>
			)}
		</FieldGroup>
	);
}
