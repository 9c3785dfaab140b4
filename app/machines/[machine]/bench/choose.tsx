"use client";

import { type ReactNode, useState } from "react";
import { Button } from "@/app/ui/button";
import { Notice } from "@/app/ui/notice";
import { TextField } from "@/app/ui/textField";
import { type Choice, type Line, linesNamed, SHOWN } from "@/lib/fittings/benchList";
import type { BenchOf } from "./benchRun";
import { NotListed } from "./notListed";
import { Quick } from "./quick";

/** What comes out next: offered by what came out last, else by name. */
export function Choose({
	machine,
	person,
	choice: { lines, counts },
	isLong,
	isWhole,
	since,
	onChoose,
	onAdded,
	children,
}: BenchOf & {
	choice: Choice;
	/** So long that a name is sooner typed than looked for. */
	isLong: boolean;
	/** False while only the first lines are here. */
	isWhole: boolean;
	/** The list is an older one: since when. */
	since: string | null;
	onChoose: (positionId: string) => void;
	/** Something new on the list, chosen already. */
	onAdded: (positionId: string) => void;
	children: ReactNode;
}) {
	const [typed, setTyped] = useState("");
	const [shown, setShown] = useState(SHOWN);
	const found = typed.trim() === "" ? null : linesNamed([...lines.opened, ...lines.free, ...lines.behind], typed);
	const list = (some: readonly Line[]) => (
		<ul className="af-bench-list">
			{some.map((line) => (
				<li key={line.positionId}>
					{/* A link, so that it leads somewhere before the page's script has come; then it stays on this page. */}
					<a
						className="af-bench-pick"
						href={`/machines/${machine.number}/take-out/${encodeURIComponent(line.mark)}`}
						onClick={(event) => {
							event.preventDefault();
							onChoose(line.positionId);
						}}
					>
						<strong>{line.part}</strong>
						<small>{saidOf(line)}</small>
					</a>
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
			{found === null && counts.opened > 0 ? (
				<section aria-labelledby="opened">
					<h2 id="opened">Open now, since the last one came out</h2>
					{list(lines.opened.slice(0, shown))}
				</section>
			) : null}
			{isLong ? (
				<TextField label="Find it" hint="name, mark or tag" optional value={typed} onChange={(event) => setTyped(event.target.value)} />
			) : null}
			{found ? (
				<section aria-labelledby="found">
					<h2 id="found">{isWhole ? foundWords(found.length) : "Fetching the rest of the machine"}</h2>
					{list(found.slice(0, shown))}
				</section>
			) : (
				<>
					<section aria-labelledby="free">
						<h2 id="free">{counts.opened > 0 ? "Can be reached too" : "Can be reached"}</h2>
						{counts.free === 0 ? (
							<p className="af-sub">
								{counts.opened + counts.behind > 0
									? "Nothing else."
									: "Nothing is listed as fitted in this machine. Name what you take out below."}
							</p>
						) : (
							list(lines.free.slice(0, shown))
						)}
					</section>
					{counts.behind > 0 ? (
						<details className="af-details">
							<summary>Behind something ({counts.behind})</summary>
							{list(lines.behind.slice(0, shown))}
						</details>
					) : null}
				</>
			)}
			{Math.max(found?.length ?? 0, counts.free, counts.opened, counts.behind) > shown ? (
				<Button onClick={() => setShown(shown + 60)}>Show more</Button>
			) : null}
			<NotListed machineId={machine.id} onAdded={onAdded} />
			<Quick machine={machine} person={person} />
		</>
	);
}

const foundWords = (count: number): string => (count === 0 ? "Nothing of that name is fitted" : count === 1 ? "1 found" : `${count} found`);

const saidOf = ({ mark, position, part, behind, hasPhoto }: Line): string =>
	[mark, position === part ? null : position, behind.length > 0 ? `behind ${behind.join(", ")}` : null, hasPhoto ? null : "no photo yet"]
		.filter((said) => said !== null)
		.join(" · ");
