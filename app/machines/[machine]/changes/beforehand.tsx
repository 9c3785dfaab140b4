"use client";

import { useEffect, useState } from "react";
import { Notice } from "@/app/ui/notice";
import { lossOfAlteringAction } from "./actions";

type Thought = {
	readonly machineId: string;
	readonly positionId: string | null;
	readonly partId: string | null;
	readonly undo: "clean" | "trace" | "never";
};

/** What reversal would lose by the change, said while it can still be left alone. */
export function Beforehand({ machineId, positionId, partId, undo }: Thought) {
	const [loss, setLoss] = useState<Awaited<ReturnType<typeof lossOfAlteringAction>>>(null);
	useEffect(() => {
		let asked = true;
		setLoss(null);
		if (positionId === null && partId === null) return;
		lossOfAlteringAction({ machineId, positionId, partId, what: "", undo }).then(
			(answer) => asked && setLoss(answer),
			// The shop cannot be reached: the form itself says so when it is sent.
			() => undefined,
		);
		return () => {
			asked = false;
		};
	}, [machineId, positionId, partId, undo]);
	if (loss === null) return null;
	return (
		<Notice means={loss.loses ? "stop" : "original"} live="status" title="Beforehand">
			<p>{loss.say}</p>
		</Notice>
	);
}
