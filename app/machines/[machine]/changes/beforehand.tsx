"use client";

import { useEffect, useState } from "react";
import { Notice } from "@/app/ui/notice";
import type { Foreseen, Thought } from "@/lib/reversal/thought";
import { foreseeAction } from "./actions";

/** What reversal would lose by what is thought about, said while it can still be left alone. `thought` is null while too little is chosen. */
export function Beforehand({ machineId, thought }: { readonly machineId: string; readonly thought: Thought | null }) {
	const [foreseen, setForeseen] = useState<Foreseen | null>(null);
	const asked = JSON.stringify(thought);
	useEffect(() => {
		let current = true;
		setForeseen(null);
		const asking: Thought | null = JSON.parse(asked);
		if (asking === null) return;
		foreseeAction({ machineId, thought: asking }).then(
			(answer) => current && setForeseen(answer),
			// The shop cannot be reached: the form itself says so when it is sent.
			() => undefined,
		);
		return () => {
			current = false;
		};
	}, [machineId, asked]);
	if (foreseen === null) return null;
	return (
		<div className="mb-5">
			<Notice means={foreseen.loses ? "stop" : "original"} live="status" title="Beforehand">
				<p>{foreseen.say}</p>
			</Notice>
		</div>
	);
}
