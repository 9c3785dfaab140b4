import type { ReactNode } from "react";

/** Things under each other with the usual room between. */
export function Stack({ children }: { readonly children: ReactNode }) {
	return <div className="af-stack">{children}</div>;
}

/** Cards beside each other, as many as fit. */
export function Grid({ children }: { readonly children: ReactNode }) {
	return <div className="af-grid">{children}</div>;
}

/** A wide column and a narrow one on a desk, one under the other elsewhere. `even` makes them alike. */
export function Columns({ children, even }: { readonly children: ReactNode; readonly even?: boolean }) {
	return (
		<div className="af-columns" data-even={even ? "" : undefined}>
			{children}
		</div>
	);
}

/** A page for one dirty hand: one column, and the bar's entries make room for the thing. */
export function Bench({ children }: { readonly children: ReactNode }) {
	return <div className="af-bench">{children}</div>;
}

/** Buttons in the thumb's reach at the foot of a bench page: the main one first, over the whole width; then two a row. */
export function ActionBar({ children }: { readonly children: ReactNode }) {
	return <div className="af-actionbar">{children}</div>;
}

/** Buttons in a row. */
export function Buttons({ children }: { readonly children: ReactNode }) {
	return <div className="af-buttons">{children}</div>;
}

/** Fields beside each other where there is room. */
export function FormRow({ children }: { readonly children: ReactNode }) {
	return <div className="af-form-row">{children}</div>;
}
