"use client";

import { useState } from "react";
import { labelsSeenTo, leaveOutUnsent, outcomeOf, queue, useOutbox } from "@/app/outbox/outbox";
import { shopTime } from "@/app/outbox/shopTime";
import { Button } from "@/app/ui/button";
import { clientId } from "@/app/ui/clientId";
import { Notice } from "@/app/ui/notice";
import { TagChip } from "@/app/ui/tagChip";
import { textIn } from "@/lib/outbox/queue";
import type { BenchOf, RunOut } from "./benchRun";

/** What came out last, whether the shop has it, and the way back. */
export function JustOut({ run, machine, person, onBack }: BenchOf & { run: RunOut; onBack: (words: string) => void }) {
	const outbox = useOutbox();
	const [deed] = useState(clientId);
	const [say, setSay] = useState("");
	const done = outbox.done.get(run.out.deed);
	const refused = outbox.waiting.find((item) => item.deed === run.out.deed)?.refused;
	const bag = textIn(done?.value, "bagTag");
	const putBack = async () => {
		// Never sent, it never was. Once it was sent the shop may have done it and the answer be lost: then it goes back behind it.
		if (await leaveOutUnsent(run.out.deed)) {
			onBack(`The ${run.part.name} stays in ${run.mark}: nothing was recorded.`);
			return;
		}
		await queue({
			deed,
			kind: "put-back",
			at: shopTime(),
			words: `${run.part.name} (${run.mark}) back in`,
			machine,
			person,
			input: { partId: run.part.id },
		});
		const outcome = await outcomeOf(deed, 8000);
		if (outcome.kind === "refused") setSay(outcome.refused.say);
		else if (outcome.kind === "waits") onBack(`The ${run.part.name} is back in ${run.mark} as soon as the shop can be reached.`);
		else onBack(`The ${run.part.name} is back in ${run.mark}.`);
	};
	return (
		<Notice
			means={refused ? "stop" : done ? "original" : "wait"}
			title={done ? "Out" : refused ? "Not recorded" : "Out, and kept on this phone"}
		>
			<p>
				{refused
					? refused.say
					: `The ${run.part.name} is out of ${run.mark}${done ? ` and lies ${textIn(done.value, "words") ?? ""}` : "; it goes to the shop's book as soon as it can be reached"}.`}
			</p>
			{bag ? <TagChip tag={bag} href={`/t/${bag}`} size="large" says="the bag" /> : null}
			{say ? <p>{say}</p> : null}
			<div className="af-buttons pt-2">
				{done && done.labels.length > 0 ? (
					<a
						className="af-button"
						data-kind="main"
						href={`/labels?${new URLSearchParams({ tags: done.labels.join(","), now: done.print })}`}
						target="_blank"
						rel="noopener"
						onClick={() => void labelsSeenTo([run.out.deed])}
					>
						{done.labels.length === 1 ? "Print the label" : `Print ${done.labels.length} labels`}
					</a>
				) : null}
				{refused ? null : <Button onClick={putBack}>Put it back</Button>}
			</div>
		</Notice>
	);
}
