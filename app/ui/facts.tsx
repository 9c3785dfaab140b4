import type { ReactNode } from "react";

/** Short facts, a line each. A fact without a value is left out. */
export function Facts({ facts }: { readonly facts: readonly { readonly label: string; readonly value: ReactNode }[] }) {
	return (
		<dl className="af-facts">
			{facts
				.filter(({ value }) => value !== null && value !== undefined && value !== "")
				.map(({ label, value }) => (
					<div key={label}>
						<dt>{label}</dt>
						<dd>{value}</dd>
					</div>
				))}
		</dl>
	);
}
