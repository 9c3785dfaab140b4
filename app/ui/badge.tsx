import type { ReactNode } from "react";
import type { Means } from "./means";

/** A word with a meaning behind it: "original", "leaves a trace", "filler sets until 15:40". */
export function Badge({ means = "plain", children }: { readonly means?: Means; readonly children: ReactNode }) {
	return (
		<span className="af-badge" data-means={means}>
			{children}
		</span>
	);
}
