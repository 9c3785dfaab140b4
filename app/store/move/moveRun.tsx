"use client";

import { useEffect, useState } from "react";
import { Button } from "@/app/ui/button";
import { clientId } from "@/app/ui/clientId";
import { ActionBar } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { type ScanAnswer, ScanField } from "@/app/ui/scanField";
import { SelectField } from "@/app/ui/selectField";
import type { Result } from "@/lib/core/result";
import type { Scanned } from "@/lib/store/scanned";
import { moveThingsAction, scannedAction } from "../actions";
import { notTaken } from "../scanAnswer";

type Goal = { readonly kind: "location" | "bag"; readonly id: string; readonly words: string };
type Said = { readonly means: "original" | "stop"; readonly words: string; readonly rest: Goal | null };

/** A place ends the list: scanned last, everything goes there. A whole shelf is taken as a thing by its own button. */
export function MoveRun({
	first,
	places,
	to,
}: {
	first: readonly Scanned[];
	places: readonly { readonly id: string; readonly path: string }[];
	/** Where it goes, where the page was asked from that place. */
	to: Goal | null;
}) {
	const [things, setThings] = useState<readonly Scanned[]>(first);
	const [last, setLast] = useState<Goal | null>(to);
	const [chosen, setChosen] = useState("");
	const [asked, setAsked] = useState<Scanned | null>(null);
	const [said, setSaid] = useState<Said | null>(null);
	const [deed, setDeed] = useState(clientId);
	const [busy, setBusy] = useState(false);
	useEffect(() => {
		if (to === null) setLast(remembered(places));
	}, [to, places]);

	const add = (thing: Scanned) => {
		setThings((now) => (now.some((one) => one.id === thing.id) ? now : [...now, thing]));
		setSaid(null);
	};
	const move = async (goal: Goal, restGoes = false) => {
		if (busy || things.length === 0) return;
		setBusy(true);
		const place = goal.kind === "bag" ? { kind: "bag", bagId: goal.id } : { kind: "location", locationId: goal.id };
		const answer: Result<{ moved: number; stayed: string[]; words: string }> | null = await moveThingsAction({
			things: things.map(({ kind, id }) => ({ kind, id })),
			to: place,
			restGoes,
			deed,
		}).catch(() => null);
		setBusy(false);
		if (answer === null) {
			setSaid({ means: "stop", words: "The shop did not answer. Press again when it is back; it is moved once.", rest: null });
			return;
		}
		setDeed(clientId());
		if (!answer.ok) {
			const others = answer.error.facts?.others;
			setSaid({ means: "stop", words: answer.error.say, rest: answer.error.code === "cannot-move" && others !== 0 ? goal : null });
			return;
		}
		const { moved, stayed, words } = answer.value;
		setSaid({
			means: "original",
			words: `${moved === 1 ? "1 thing lies" : `${moved} things lie`} ${words} now.${stayed.length > 0 ? ` Left where it was: ${stayed.join(" ")}` : ""}`,
			rest: null,
		});
		setThings([]);
		setAsked(null);
		if (goal.kind === "location") {
			setLast(goal);
			remember(goal);
		}
	};
	const scan = async (text: string): Promise<ScanAnswer> => {
		const found = await scannedAction(text);
		if (!found.ok) return notTaken(found.error);
		const thing = found.value;
		if (thing.kind === "part" && !thing.isLoose)
			return { ok: false, say: `${thing.tag} ${thing.name} is ${thing.where}: take it out first, or look at its page.` };
		// A place or a bag may be a thing or the goal: with nothing in the list it is a thing.
		if (thing.kind !== "part" && things.length > 0 && !things.some((one) => one.id === thing.id)) setAsked(thing);
		else add(thing);
		return { ok: true };
	};
	const goalOf = (thing: Scanned): Goal => ({
		kind: thing.kind === "bag" ? "bag" : "location",
		id: thing.id,
		words: thing.kind === "bag" ? `${thing.tag} ${thing.name}` : thing.where,
	});

	return (
		<>
			{said ? (
				<Notice means={said.means}>
					<p>{said.words}</p>
					{said.rest ? <Button onClick={() => void (said.rest && move(said.rest, true))}>Move the others without it</Button> : null}
				</Notice>
			) : null}
			{things.length > 0 ? (
				<section aria-labelledby="to-move">
					<h2 id="to-move">{things.length === 1 ? "1 thing in hand" : `${things.length} things in hand`}</h2>
					<ul className="af-bench-list">
						{things.map((thing) => (
							<li key={thing.id} className="af-bench-line">
								<span>
									<Link href={`/t/${thing.tag}`}>{thing.tag}</Link> {thing.kind === "place" ? `all that lies on ${thing.name}` : thing.name}
									<span className="af-sub block">{thing.where}</span>
								</span>
								<Button
									kind="quiet"
									aria-label={`Leave out ${thing.tag}`}
									onClick={() => setThings(things.filter((one) => one.id !== thing.id))}
								>
									Leave out
								</Button>
							</li>
						))}
					</ul>
				</section>
			) : null}
			{asked ? (
				<Notice title={asked.kind === "bag" ? `${asked.tag} ${asked.name}` : asked.where}>
					<div className="af-buttons">
						<Button kind="main" pending={busy} onClick={() => void move(goalOf(asked))}>
							{asked.kind === "bag" ? "Lay it in this bag" : "Lay it here"}
						</Button>
						<Button
							onClick={() => {
								add(asked);
								setAsked(null);
							}}
						>
							{asked.kind === "bag" ? "This bag moves too" : "Move what lies here, too"}
						</Button>
					</div>
				</Notice>
			) : null}
			<ScanField label={things.length === 0 ? "What it is" : "The next thing, or where it goes"} hint="12-0147-K" onScan={scan} />
			{things.length > 0 && places.length > 0 ? (
				<details className="af-details">
					<summary>Choose the place from the list</summary>
					<div className="pt-2">
						<SelectField
							label="Where it goes"
							none="Not chosen"
							options={places.map((place) => ({ value: place.id, label: place.path }))}
							value={chosen}
							onChange={(event) => setChosen(event.target.value)}
						/>
						<Button
							pending={busy}
							onClick={() => {
								const place = places.find((one) => one.id === chosen);
								if (place) void move({ kind: "location", id: place.id, words: place.path });
							}}
						>
							Lay it there
						</Button>
					</div>
				</details>
			) : null}
			{things.length > 0 && last ? (
				<ActionBar>
					<Button kind="main" pending={busy} onClick={() => void move(last)}>
						{to ? `Lay it on ${last.words}` : `Again to ${last.words}`}
					</Button>
				</ActionBar>
			) : null}
		</>
	);
}

const LAST = "asfound-last-place";
function remembered(places: readonly { readonly id: string; readonly path: string }[]): Goal | null {
	try {
		const found = places.find((place) => place.id === localStorage.getItem(LAST));
		return found ? { kind: "location", id: found.id, words: found.path } : null;
	} catch {
		return null; // a browser that keeps nothing
	}
}
function remember(goal: Goal): void {
	try {
		localStorage.setItem(LAST, goal.id);
	} catch {
		// A browser that keeps nothing only forgets which place was last.
	}
}
