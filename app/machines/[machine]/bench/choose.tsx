"use client";

import { type ReactNode, useState } from "react";
import { Button } from "@/app/ui/button";
import { Notice } from "@/app/ui/notice";
import { TextField } from "@/app/ui/textField";
import { type Offered, seatsNamed } from "@/lib/fittings/benchList";
import type { BenchSeat, BenchSheet } from "@/lib/fittings/benchSheet";
import type { BenchOf } from "./benchRun";
import { Quick } from "./quick";

/** Shown at once; the rest is one tap or a word away. */
const SHOWN = 12;

/** What comes out next: offered by what came out last, else by name. */
export function Choose({
	machine,
	person,
	sheet,
	offered,
	since,
	onChoose,
	children,
}: BenchOf & {
	sheet: BenchSheet;
	offered: Offered;
	/** The sheet is an older one: since when. */
	since: string | null;
	onChoose: (positionId: string) => void;
	children: ReactNode;
}) {
	const [typed, setTyped] = useState("");
	const [shown, setShown] = useState(SHOWN);
	const byId = new Map(sheet.seats.map((seat) => [seat.position.id, seat]));
	const named = new Map(sheet.names);
	const of = (ids: readonly string[]) => ids.flatMap((id) => byId.get(id) ?? []);
	const behind = new Map(
		offered.behind.map(({ positionId, parts }) => [positionId, parts.map((partId) => named.get(partId) ?? "a part").join(", ")]),
	);
	const all = [...of(offered.opened), ...of(offered.free), ...of(offered.behind.map(({ positionId }) => positionId))];
	const found = typed.trim() === "" ? null : seatsNamed(all, typed);
	const list = (seats: readonly BenchSeat[]) => (
		<ul className="af-bench-list">
			{seats.map(({ position, part, photo }) => (
				<li key={position.id}>
					<button type="button" className="af-bench-pick" onClick={() => onChoose(position.id)}>
						<span>
							<strong>{part.name}</strong>
							<small>
								{position.mark}
								{position.name === part.name ? "" : ` · ${position.name}`}
								{behind.has(position.id) ? ` · behind ${behind.get(position.id)}` : ""}
								{photo ? "" : " · no photo yet"}
							</small>
						</span>
					</button>
				</li>
			))}
		</ul>
	);
	return (
		<>
			<header>
				<p className="af-sub">
					{machine.number} {machine.name}
				</p>
				<h1 tabIndex={-1} data-next="">
					What comes out?
				</h1>
			</header>
			{since === null ? null : (
				<Notice means="wait" live="off">
					The shop does not answer: this is the machine as this phone saw it last.
				</Notice>
			)}
			{children}
			{found === null && offered.opened.length > 0 ? (
				<section aria-labelledby="opened">
					<h2 id="opened">Open now, since the last one came out</h2>
					{list(of(offered.opened).slice(0, shown))}
				</section>
			) : null}
			{sheet.seats.length > SHOWN ? (
				<TextField label="Find it" hint="name, mark or tag" optional value={typed} onChange={(event) => setTyped(event.target.value)} />
			) : null}
			{found ? (
				<section aria-labelledby="found">
					<h2 id="found">
						{found.length === 0 ? "Nothing of that name is fitted" : found.length === 1 ? "1 found" : `${found.length} found`}
					</h2>
					{list(found.slice(0, shown))}
				</section>
			) : (
				<>
					<section aria-labelledby="free">
						<h2 id="free">{offered.opened.length > 0 ? "Can be reached too" : "Can be reached"}</h2>
						{offered.free.length === 0 ? <p className="af-sub">Nothing else.</p> : list(of(offered.free).slice(0, shown))}
					</section>
					{offered.behind.length > 0 ? (
						<details className="af-details">
							<summary>Behind something ({offered.behind.length})</summary>
							{list(of(offered.behind.map(({ positionId }) => positionId)).slice(0, shown))}
						</details>
					) : null}
				</>
			)}
			{Math.max(found?.length ?? 0, offered.free.length, offered.opened.length, offered.behind.length) > shown ? (
				<Button onClick={() => setShown(shown + 60)}>Show more</Button>
			) : null}
			<Quick machine={machine} person={person} />
		</>
	);
}
