"use client";

import { useSelectedLayoutSegment } from "next/navigation";
import type { ReactNode } from "react";

/** Shows the portrait and the line under the name on the machine's own page; the pages under it need the room. */
export function OnItsOwnPage({ children }: { readonly children: ReactNode }) {
	return useSelectedLayoutSegment() === null ? children : null;
}
