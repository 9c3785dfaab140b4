"use client";

import { useState } from "react";
import { Button } from "@/app/ui/button";
import { ButtonLink } from "@/app/ui/buttonLink";
import { clientId } from "@/app/ui/clientId";
import { ActionBar } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { TagChip } from "@/app/ui/tagChip";
import type { TakenOut } from "@/lib/fittings/changes";
import { focusNext, useShowDone } from "../../justDone";
import { putBackAction } from "../actions";

/** What was done, the way back, and what can be reached now. */
export function Out({
	done,
	machine,
	part,
	position,
	labelHref,
	goOn,
}: {
	done: TakenOut;
	machine: { readonly number: number };
	part: { readonly id: string; readonly name: string };
	position: { readonly name: string; readonly mark: string };
	labelHref: string;
	/** What follows on this very page; left out, the machine's list of take-outs does. */
	goOn?: string | undefined;
}) {
	const showDone = useShowDone();
	const next = goOn ? (
		<Button
			kind="main"
			onClick={() => {
				showDone(null);
				window.scrollTo({ top: 0 });
				focusNext();
			}}
		>
			{goOn}
		</Button>
	) : null;
	const [deed] = useState(clientId);
	const [back, setBack] = useState<{ ok: boolean; words: string } | null>(null);
	const putBack = async () => {
		const answer = await putBackAction({ partId: part.id, deed }).catch(() => null);
		setBack(
			answer?.ok
				? { ok: true, words: `The ${part.name} is back in ${position.mark}, with its fixings, wires and settings.` }
				: { ok: false, words: answer?.error.say ?? "The shop did not answer. Press again when it is back; it is done once." },
		);
	};
	if (back?.ok) {
		return (
			<>
				<Notice means="original" title="Put back">
					<p>{back.words}</p>
					{done.bagTag ? (
						<p>
							The bag <Link href={`/t/${done.bagTag}`}>{done.bagTag}</Link> is there for the next part.
						</p>
					) : null}
				</Notice>
				<ActionBar>
					{next ?? (
						<ButtonLink kind="main" href={`/machines/${machine.number}/take-out`}>
							Take out something else
						</ButtonLink>
					)}
				</ActionBar>
			</>
		);
	}
	return (
		<>
			<Notice means="original" title="Out">
				<p>
					The {part.name} is out of {position.mark} and lies {done.words}.
				</p>
			</Notice>
			<div className="flex flex-wrap items-center gap-3">
				{done.bagTag ? <TagChip tag={done.bagTag} href={`/t/${done.bagTag}`} size="large" says="the bag" /> : null}
				{done.partTag ? <TagChip tag={done.partTag} href={`/t/${done.partTag}`} says={part.name} /> : null}
			</div>
			{goOn ? null : <Opens done={done} machine={machine} />}
			{back ? <Notice means="stop">{back.words}</Notice> : null}
			<ActionBar>
				{next}
				<a className="af-button" data-kind={next ? "plain" : "main"} href={labelHref} target="_blank" rel="noopener">
					Print the label
				</a>
				<Button onClick={putBack}>Put it back</Button>
				{next ? null : <ButtonLink href={`/machines/${machine.number}/take-out`}>The next one</ButtonLink>}
			</ActionBar>
		</>
	);
}

/** What can be reached now and could not be before. */
function Opens({ done, machine }: { done: TakenOut; machine: { readonly number: number } }) {
	return (
		<section aria-labelledby="opens">
			<h2 id="opens">Can be reached now</h2>
			{done.opens.length === 0 ? <p className="af-sub">Nothing that could not be reached before.</p> : null}
			<ul className="flex flex-wrap gap-3 pt-2">
				{done.opens.map(({ mark, name }) => (
					<li key={mark}>
						<ButtonLink href={`/machines/${machine.number}/take-out/${encodeURIComponent(mark)}`}>Take out: {name}</ButtonLink>
					</li>
				))}
			</ul>
		</section>
	);
}
