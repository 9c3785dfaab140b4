"use client";

import { useState } from "react";
import { Card } from "@/app/ui/card";
import { Stack } from "@/app/ui/layouts";
import type { Group, LaterDay } from "./kinds";
import "./later.css";
import { MachineForm } from "./machineForm";
import { OneCapture, wordsFieldId } from "./oneCapture";
import { Together } from "./together";

/** The captures without words by machine and day: words one after the other by keyboard, or the same for several at once. */
export function LaterList({
	days,
	groups,
	machines,
}: {
	readonly days: readonly LaterDay[];
	/** What each machine has to choose from, by its id. */
	readonly groups: Readonly<Record<string, readonly Group[]>>;
	readonly machines: readonly { readonly value: string; readonly label: string }[];
}) {
	const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
	const [said, setSaid] = useState("");
	const all = days.flatMap(({ rows, machine }) => rows.map((row) => ({ row, machine })));
	// What has its words by now is no longer among them.
	const together = all.filter(({ row }) => chosen.has(row.id));
	const choose = (id: string, on: boolean) => setChosen((now) => new Set(on ? [...now, id] : [...now].filter((each) => each !== id)));
	const goOn = (from: string, words: string) => {
		setSaid(words);
		const at = all.findIndex(({ row }) => row.id === from);
		const next = all.slice(at + 1).find(({ row }) => !chosen.has(row.id)) ?? all.find(({ row }) => row.id !== from);
		document.getElementById(next ? wordsFieldId(next.row.id) : "later-said")?.focus();
	};
	const done = (words: string) => {
		setChosen(new Set());
		setSaid(words);
		document.getElementById("later-said")?.focus();
	};
	return (
		<Stack>
			<p id="later-said" role="status" tabIndex={-1} className={said === "" ? "sr-only" : ""}>
				{said}
			</p>
			{days.map(({ key, title, machine, rows }) => (
				<Card key={key} title={title}>
					{machine === null ? (
						<div className="pb-4">
							<MachineForm captureIds={rows.map(({ id }) => id)} machines={machines} onDone={setSaid} />
						</div>
					) : null}
					<ul>
						{rows.map((row) => (
							<li key={row.id} className="af-later-row">
								<OneCapture
									row={row}
									machine={machine?.number ?? null}
									groups={machine ? (groups[machine.id] ?? []) : []}
									chosen={chosen.has(row.id)}
									onChoose={(on) => choose(row.id, on)}
									onDone={(words) => goOn(row.id, words)}
								/>
							</li>
						))}
					</ul>
				</Card>
			))}
			{together.length > 1 ? (
				<div className="af-later-together">
					<Card title={`${together.length} chosen`}>
						<Together
							key={together[0]?.machine?.id ?? "none"}
							captureIds={together.map(({ row }) => row.id)}
							offers={together[0]?.row.offers ?? []}
							groups={oneMachine(together.map(({ machine }) => machine?.id ?? "")) ? (groups[together[0]?.machine?.id ?? ""] ?? []) : null}
							onDone={done}
						/>
					</Card>
				</div>
			) : null}
		</Stack>
	);
}

const oneMachine = (ids: readonly string[]): boolean => ids[0] !== "" && ids.every((id) => id === ids[0]);
