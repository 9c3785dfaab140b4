"use client";

import { useState } from "react";
import { bagLinesAction } from "../../actions";

/** What is in a bag, asked for when it is opened: a count takes bags as they are, and sometimes a hand looks inside. */
export function BagLook({ bagId, tag }: { readonly bagId: string; readonly tag: string | null }) {
	const [lines, setLines] = useState<readonly string[] | null>(null);
	return (
		<details
			className="af-details"
			onToggle={(event) => {
				if (!event.currentTarget.open || lines !== null) return;
				void bagLinesAction(bagId)
					.then(setLines)
					.catch(() => setLines(["The shop did not answer. Fold it and open it again."]));
			}}
		>
			<summary>
				What is in it<span className="sr-only"> ({tag ?? "no tag"})</span>
			</summary>
			<ul className="pt-2">
				{[...new Set(lines ?? ["Looking…"])].map((line) => (
					<li key={line}>{line}</li>
				))}
			</ul>
		</details>
	);
}
