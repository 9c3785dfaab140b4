import type { ComponentProps } from "react";
import { Field, type FieldWords } from "./field";

/** A day in the shop's time zone, sent as `2026-03-02` whatever way the phone shows it. */
export function DayField({ label, hint, error, optional, hideLabel, id, ...input }: FieldWords & Omit<ComponentProps<"input">, "type">) {
	return (
		<Field {...{ label, hint, error, optional, hideLabel, id }}>
			{(wiring) => <input {...input} {...wiring} type="date" className="af-input af-short" />}
		</Field>
	);
}
