"use client";

import { useState } from "react";
import { Button } from "@/app/ui/button";
import { clientId } from "@/app/ui/clientId";
import { Notice } from "@/app/ui/notice";
import { TextField } from "@/app/ui/textField";
import { stuckAction } from "../actions";

/** It did not come out: what was learnt is kept, and the part stays where it is. */
export function NotOut({
	machine,
	position,
	part,
}: {
	machine: { readonly id: string; readonly number: number };
	position: { readonly id: string; readonly mark: string };
	part: { readonly id: string };
}) {
	const [words, setWords] = useState("");
	const [said, setSaid] = useState<{ ok: boolean; words: string } | null>(null);
	const [deed, setDeed] = useState("");
	const record = async () => {
		const id = deed || clientId();
		setDeed(id);
		const done = await stuckAction({
			machineId: machine.id,
			positionId: position.id,
			partId: part.id,
			kind: "seen",
			words: words.trim() === "" ? "does not come out" : `does not come out: ${words.trim()}`,
			how: "tried at the bench",
			deed: id,
		}).catch(() => null);
		if (done?.ok) {
			setDeed("");
			setWords("");
		}
		setSaid(
			done?.ok
				? { ok: true, words: "Kept as a fault of this position. The part stays where it is." }
				: { ok: false, words: done?.error.say ?? "The shop did not answer. Press again when it is back; it is recorded once." },
		);
	};
	return (
		<details className="af-details af-asked" id="not-out">
			<summary>It did not come out</summary>
			<div className="flex flex-col gap-2 pt-2">
				<TextField
					label="What holds it"
					hint="seized, sheared, glued, hidden screw"
					optional
					value={words}
					onChange={(event) => setWords(event.target.value)}
				/>
				<div className="af-buttons">
					<Button onClick={record}>Keep what was found</Button>
				</div>
				{said ? <Notice means={said.ok ? "plain" : "stop"}>{said.words}</Notice> : null}
				<p className="af-sub">
					Is another part in the way?{" "}
					<a href={`/machines/${machine.number}/build/${encodeURIComponent(position.mark)}`}>Say so at the position</a>.
				</p>
			</div>
		</details>
	);
}
