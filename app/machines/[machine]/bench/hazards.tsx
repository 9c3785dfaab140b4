"use client";

import { useEffect, useState } from "react";
import { keepWords, keptWords } from "@/app/keptOnPhone";

/** What may hurt at this machine: open until it was read and folded on this phone, and open again when it says something else. */
export function Hazards({ machine, words }: { machine: number; words: string }) {
	const name = `hazards-${machine}`;
	const [isOpen, setIsOpen] = useState(true);
	useEffect(() => setIsOpen(keptWords(name)?.[0] !== words), [name, words]);
	return (
		<details
			className="af-notice"
			data-means="stop"
			open={isOpen}
			onToggle={(event) => {
				setIsOpen(event.currentTarget.open);
				keepWords(name, event.currentTarget.open ? [] : [words]);
			}}
		>
			<summary className="af-notice-title">Hazards of this machine</summary>
			<p className="whitespace-pre-line">{words}</p>
		</details>
	);
}
