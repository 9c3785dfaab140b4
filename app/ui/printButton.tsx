"use client";

import type { ButtonKind } from "./button";
import { Button } from "./button";

/** Prints the page as it stands: "Print the checklist". */
export function PrintButton({ children, kind = "plain" }: { readonly children: string; readonly kind?: ButtonKind }) {
	return (
		<Button kind={kind} onClick={() => window.print()}>
			{children}
		</Button>
	);
}
