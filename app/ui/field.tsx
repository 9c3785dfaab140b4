import { type ReactNode, useId } from "react";

/** What every field takes, whatever its control. `error` is a sentence that says what to do. */
export type FieldWords = {
	readonly label: string;
	readonly hint?: ReactNode;
	readonly error?: string | undefined;
	/** Adds "(may stay empty)" to the label. Fields are required unless they say so. */
	readonly optional?: boolean;
	/** Keeps the label for screen readers only, where the page already shows it. */
	readonly hideLabel?: boolean;
};

/** Spread these on the control: they tie it to its label, hint and error. */
export type FieldWiring = {
	readonly id: string;
	readonly "aria-describedby": string | undefined;
	readonly "aria-invalid": true | undefined;
};

/** One label, hint, control and error, joined. Nobody wires these by hand. */
export function Field({
	label,
	hint,
	error,
	optional,
	hideLabel,
	id: given,
	className = "",
	children,
}: FieldWords & { readonly id?: string | undefined; readonly className?: string; readonly children: (wiring: FieldWiring) => ReactNode }) {
	const own = useId();
	const id = given ?? own;
	return (
		<div className={`af-field ${className}`}>
			<label className={hideLabel ? "sr-only" : "af-label"} htmlFor={id}>
				{label}
				{optional ? <span className="af-optional"> (may stay empty)</span> : null}
			</label>
			<Hint id={`${id}-hint`}>{hint}</Hint>
			{children({ id, "aria-describedby": describedBy(id, hint, error), "aria-invalid": error ? true : undefined })}
			<p className="af-error" id={`${id}-error`}>
				{error}
			</p>
		</div>
	);
}

/** The same for several controls under one legend (a choice, three points of a time). */
export function FieldGroup({
	label,
	hint,
	error,
	optional,
	hideLabel,
	role,
	children,
}: FieldWords & { readonly role?: "radiogroup"; readonly children: (wiring: FieldWiring) => ReactNode }) {
	const id = useId();
	const wiring = { id, "aria-describedby": describedBy(id, hint, error), "aria-invalid": error ? (true as const) : undefined };
	return (
		<fieldset
			className="af-field"
			role={role}
			aria-describedby={wiring["aria-describedby"]}
			aria-invalid={role === "radiogroup" ? wiring["aria-invalid"] : undefined}
		>
			<legend className={hideLabel ? "sr-only" : "af-label"}>
				{label}
				{optional ? <span className="af-optional"> (may stay empty)</span> : null}
			</legend>
			<Hint id={`${id}-hint`}>{hint}</Hint>
			{children(wiring)}
			<p className="af-error" id={`${id}-error`}>
				{error}
			</p>
		</fieldset>
	);
}

function Hint({ id, children }: { id: string; children: ReactNode }) {
	return children ? (
		<div className="af-hint" id={id}>
			{children}
		</div>
	) : null;
}

function describedBy(id: string, hint: ReactNode, error: string | undefined): string | undefined {
	return [hint ? `${id}-hint` : "", error ? `${id}-error` : ""].filter(Boolean).join(" ") || undefined;
}
