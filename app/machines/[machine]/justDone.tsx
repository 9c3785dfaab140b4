"use client";

import { createContext, type ReactNode, useContext, useState } from "react";

const ShowDone = createContext<(done: ReactNode | null) => void>(() => undefined);

/**
 * Keeps what was just done on the page. The shop's answer renews the page beneath, and a position that was emptied has no
 * form any more: what the form said of its deed, and the way back, must outlast it.
 */
export function JustDone({ children }: { readonly children: ReactNode }) {
	const [done, setDone] = useState<ReactNode>(null);
	return <ShowDone value={setDone}>{done ?? children}</ShowDone>;
}

/** Shows what was done in place of the form that did it; null shows the page beneath again. */
export const useShowDone = () => useContext(ShowDone);

/** The button that was pressed is gone with what it stood in: a keyboard and a screen reader go on at what comes next. */
export function focusNext(): void {
	requestAnimationFrame(() => {
		const heading = document.querySelector<HTMLElement>("[data-next]");
		heading?.focus();
	});
}
