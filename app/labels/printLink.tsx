"use client";

import { type ReactNode, useEffect, useState } from "react";
import { clientId } from "@/app/ui/clientId";

/** Opens the labels to print. Each showing of the page is one print in the book, however often the link is pressed. */
export function PrintLink({ href, deed, isAble, children }: { href: string; deed: string | null; isAble: boolean; children: ReactNode }) {
	const [id, setId] = useState(deed ?? "");
	useEffect(() => {
		if (deed === null) setId(clientId());
	}, [deed]);
	if (!isAble) return null;
	return (
		<a className="af-button" data-kind="main" href={id === "" ? href : `${href}&deed=${id}`} target="_blank" rel="noopener">
			{children}
		</a>
	);
}
