"use client";

import { useEffect, useState } from "react";
import { Notice } from "@/app/ui/notice";
import type { Foreseen, Thought } from "@/lib/reversal/thought";
import { foreseeAction } from "./actions";

/** What reversal would lose by what is thought about, said while it can still be left alone. `thought` is null while too little is chosen. */
export function Beforehand({ machineId, thought }: { readonly machineId: string; readonly thought: Thought | null }) {
	const [foreseen, setForeseen] = useState<Foreseen | "not worked out" | null>(null);
	const asked = JSON.stringify(thought);
	useEffect(() => {
		let current = true;
		setForeseen(null);
		const asking: Thought | null = JSON.parse(asked);
		if (asking === null) return;
		foreseeAction({ machineId, thought: asking }).then(
			(answer) => current && setForeseen(answer),
			// Silence here means that nothing is lost, so it may not stand for an answer that did not come.
			() => current && setForeseen("not worked out"),
		);
		return () => {
			current = false;
		};
	}, [machineId, asked]);
	// The region is there before its words are, or a screen reader does not hear them come.
	return (
		<div role="status">
			{foreseen === null ? null : (
				<div className="mb-5">
					{foreseen === "not worked out" ? (
						<Notice means="wait" live="off" title="Beforehand">
							<p>The shop did not answer: what reversal would lose by it is not worked out.</p>
						</Notice>
					) : (
						<Notice means={foreseen.loses ? "stop" : "original"} live="off" title="Beforehand">
							<p>{foreseen.say}</p>
						</Notice>
					)}
				</div>
			)}
		</div>
	);
}
