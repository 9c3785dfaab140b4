"use client";

import { useEffect, useMemo, useRef, useState } from "react";
import { useOutbox } from "@/app/outbox/outbox";
import { Button } from "@/app/ui/button";
import { Notice } from "@/app/ui/notice";
import { type Choice, choiceOf, reachOf, SHOWN } from "@/lib/fittings/benchList";
import type { BenchSeat } from "@/lib/fittings/benchSheet";
import { textIn, type Waiting } from "@/lib/outbox/queue";
import type { OutcomeOut } from "../take-out/[mark]/takeOutForm";
import { Choose } from "./choose";
import { JustOut } from "./justOut";
import { OneOut } from "./oneOut";
import { useSheet } from "./useSheet";

export type BenchOf = {
	readonly machine: { readonly id: string; readonly number: number; readonly name: string };
	readonly person: string | null;
};

/** What came out in this run: the part, and what became of it. */
export type RunOut = { readonly out: OutcomeOut; readonly part: { readonly id: string; readonly name: string }; readonly mark: string };

/** Choose, take out, the next one: one screen after the other, all of it on this page. */
export function BenchRun({ machine, person, first }: BenchOf & { first: Choice }) {
	const outbox = useOutbox();
	const { sheet, since, failed, readAgain } = useSheet(machine.number);
	const [positionId, setPositionId] = useState<string | null>(null);
	const [run, setRun] = useState<readonly RunOut[]>([]);
	/** What became of the last one, where it is not out any more. */
	const [said, setSaid] = useState("");
	useAfterSending(outbox.waiting.length, readAgain);
	const reach = useMemo(() => sheet && reachOf(sheet.reach), [sheet]);

	const choose = (id: string) => {
		setPositionId(id);
		window.scrollTo({ top: 0 });
	};

	// Out by the record, out by what this phone has queued, and out in this run.
	const queued = partsQueuedOut(outbox.waiting, sheet?.seats ?? []);
	const out = [...new Set([...run.map(({ part }) => part.id), ...queued, ...(sheet?.lastOut ?? [])])];

	const seat = sheet?.seats.find((one) => one.position.id === positionId);
	if (sheet && reach && seat) {
		return (
			<OneOut
				key={seat.position.id}
				machine={machine}
				person={person}
				sheet={sheet}
				seat={seat}
				reach={reach}
				out={out}
				run={run}
				onBack={() => setPositionId(null)}
				onOut={(done) => {
					setRun([{ out: done, part: { id: seat.part.id, name: seat.part.name }, mark: seat.position.mark }, ...run]);
					setPositionId(null);
					setSaid("");
					window.scrollTo({ top: 0 });
				}}
			/>
		);
	}
	if (positionId !== null) {
		const back = <Button onClick={() => setPositionId(null)}>Back to the list</Button>;
		return failed || since !== null ? (
			<Notice means="wait" title="The shop does not answer">
				<p>This phone has not seen this part yet. Try again when the network is back.</p>
				<div className="af-buttons">
					<Button onClick={readAgain}>Try again</Button>
					{back}
				</div>
			</Notice>
		) : (
			<div role="status" className="af-stack">
				<p>Fetching what is known of it…</p>
				{back}
			</div>
		);
	}
	return (
		<Choose
			machine={machine}
			person={person}
			choice={sheet && reach ? choiceOf(reach, sheet.seats, out, new Map(sheet.names)) : first}
			isLong={first.counts.opened + first.counts.free + first.counts.behind > SHOWN}
			isWhole={sheet !== null}
			since={since}
			onChoose={choose}
			onAdded={(id) => {
				choose(id);
				readAgain();
			}}
		>
			{said === "" ? null : <Notice means="original">{said}</Notice>}
			{run[0] ? (
				<JustOut
					key={run[0].out.deed}
					run={run[0]}
					machine={machine}
					person={person}
					onBack={(words) => {
						setRun(run.slice(1));
						setSaid(words);
					}}
				/>
			) : null}
		</Choose>
	);
}

/** The machine has changed in the book when what waited on the phone has gone there. */
function useAfterSending(count: number, readAgain: () => void): void {
	const before = useRef(count);
	useEffect(() => {
		if (count < before.current) readAgain();
		before.current = count;
	}, [count, readAgain]);
}

/** Parts that are out by what waits on this phone: taken out, and not put back behind it. */
function partsQueuedOut(waiting: readonly Waiting[], seats: readonly BenchSeat[]): string[] {
	const out = new Set<string>();
	for (const item of waiting) {
		if (item.refused) continue;
		if (item.kind === "take-out") {
			const seat = seats.find(({ position }) => position.id === textIn(item.input, "positionId"));
			if (seat) out.add(seat.part.id);
		}
		if (item.kind === "put-back") out.delete(textIn(item.input, "partId") ?? "");
	}
	return [...out];
}
