"use client";

import type { ComponentProps, MouseEvent } from "react";
import { Field, type FieldWords } from "./field";

/** A small whole number with a big − and +. Takes `min` (0), `max`, `step`; the keypad works, too. */
export function StepperField({
	label,
	hint,
	error,
	optional,
	hideLabel,
	id,
	...input
}: FieldWords & Omit<ComponentProps<"input">, "type">) {
	return (
		<Field {...{ label, hint, error, optional, hideLabel, id }}>
			{(wiring) => (
				<div className="af-stepper">
					<button type="button" aria-label={`One less: ${label}`} onClick={(event) => move(event, "down")}>
						−
					</button>
					<input min={0} step={1} inputMode="numeric" autoComplete="off" {...input} {...wiring} type="number" />
					<button type="button" aria-label={`One more: ${label}`} onClick={(event) => move(event, "up")}>
						+
					</button>
				</div>
			)}
		</Field>
	);
}

function move(event: MouseEvent<HTMLButtonElement>, way: "up" | "down") {
	const input = event.currentTarget.parentElement?.querySelector("input");
	if (!input) return;
	const before = input.value;
	if (way === "up") input.stepUp();
	else input.stepDown();
	// The form hears of it as of a typed figure.
	if (input.value !== before) input.dispatchEvent(new Event("input", { bubbles: true }));
}
