"use client";

import { useEffect, useState } from "react";
import { keepWords, keptWords } from "@/app/keptOnPhone";
import { Keeping } from "@/app/t/into";
import { Button } from "@/app/ui/button";
import { CheckField } from "@/app/ui/checkField";
import { clientId } from "@/app/ui/clientId";
import { ActionBar } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { type ScanAnswer, ScanField } from "@/app/ui/scanField";
import { SelectField } from "@/app/ui/selectField";
import { adviceFor } from "@/lib/keeping/advice";
import type { Scanned } from "@/lib/store/scanned";
import { moveThingsAction, scannedAction, scannedTagsAction } from "../actions";
import { notTaken } from "../scanAnswer";

type Goal = { readonly kind: "location" | "bag"; readonly id: string; readonly words: string };
type Said = { readonly means: "original" | "stop"; readonly words: string; readonly rest: Goal | null };
type Place = { readonly id: string; readonly path: string };

const IN_HAND = "in-hand";
const LAST = "last-place";

/** Things one after the other, then the place, which ends the list: everything in hand goes there. */
export function MoveRun({
	first,
	places,
	to,
}: {
	first: readonly Scanned[];
	places: readonly Place[];
	/** Where it goes, where the page was asked from that place. */
	to: Goal | null;
}) {
	const [things, setThings] = useInHand(first);
	const [goal, setGoal] = useState<Goal | null>(to);
	const [last, setLast] = useState<Goal | null>(null);
	const [chosen, setChosen] = useState("");
	const [placesToo, setPlacesToo] = useState(false);
	/** A place with nothing in hand, or a bag: it may be meant as the thing or as where things go. */
	const [asked, setAsked] = useState<Scanned | null>(null);
	const [said, setSaid] = useState<Said | null>(null);
	const [deed, setDeed] = useState(clientId);
	useEffect(() => {
		const kept = keptWords(LAST)?.[0];
		const place = places.find(({ id }) => id === kept);
		setLast(place ? { kind: "location", id: place.id, words: place.path } : null);
	}, [places]);

	const add = (thing: Scanned) => {
		setThings((now) => (now.some((one) => one.id === thing.id) ? now : [...now, thing]));
		setAsked((open) => (open?.id === thing.id ? null : open));
		setSaid(null);
	};
	/** A place follows: a bag that was asked about and not answered cannot have been the place, so it goes there, too. */
	const moveAll = async (where: Goal) => {
		const all = asked?.kind === "bag" ? [...things, asked] : things;
		setThings(() => all);
		setAsked(null);
		await move(where, all);
	};
	const move = async (where: Goal, all: readonly Scanned[], restGoes = false) => {
		const answer = await moveThingsAction({
			things: all.map(({ kind, id }) => ({ kind, id })),
			to: where.kind === "bag" ? { kind: "bag", bagId: where.id } : { kind: "location", locationId: where.id },
			restGoes,
			deed,
		}).catch(() => null);
		if (answer === null) {
			setSaid({ means: "stop", words: "The shop did not answer. Press again when it is back; it is moved once.", rest: null });
			return;
		}
		setDeed(clientId());
		setAsked(null);
		if (!answer.ok) {
			const rest = answer.error.code === "cannot-move" && answer.error.facts?.others !== 0;
			setSaid({ means: "stop", words: answer.error.say, rest: rest ? where : null });
			return;
		}
		const { moved, stayed, inside, words } = answer.value;
		const left = stayed.length > 0 ? ` Left where it was: ${stayed.join(" ")}` : "";
		const within = inside.length > 0 ? ` Still in its bag: ${inside.join(", ")}.` : "";
		setSaid({
			means: "original",
			words: `${moved === 1 ? "1 thing lies" : `${moved} things lie`} ${words} now.${within}${left}`,
			rest: null,
		});
		setThings(() => []);
		if (where.kind === "location") {
			setLast(where);
			keepWords(LAST, [where.id]);
		}
	};
	const scan = async (text: string): Promise<ScanAnswer> => {
		const found = await scannedAction(text);
		if (!found.ok) return notTaken(found.error);
		const thing = found.value;
		const called = `${thing.tag} ${thing.name}`;
		if (!thing.isLoose) return { ok: false, say: `${called} is ${thing.where}. Its page says what can be done with it.` };
		if (things.some((one) => one.id === thing.id)) return { ok: true, say: `${called} is in hand already.` };
		if (thing.kind === "place" && (things.length > 0 || asked?.kind === "bag") && !placesToo) {
			await moveAll(goalOf(thing));
			return { ok: true };
		}
		if (thing.kind === "part" || placesToo || (thing.kind === "bag" && things.length === 0)) {
			add(thing);
			return { ok: true, say: `${called}: in hand.` };
		}
		if (asked?.kind === "bag" && asked.id !== thing.id) {
			return { ok: false, say: `Say of ${asked.tag} ${asked.name} first whether it is the bag to lay things in. Then scan ${thing.tag}.` };
		}
		setAsked(thing);
		setSaid(null);
		return { ok: true, say: called };
	};
	const next = goal ?? last;

	return (
		<>
			{said ? (
				<Notice means={said.means}>
					<p>{said.words}</p>
					{said.rest ? (
						<Button onClick={() => (said.rest ? move(said.rest, things, true) : undefined)}>Move the others without it</Button>
					) : null}
				</Notice>
			) : null}
			{things.length > 0 ? (
				<section aria-labelledby="to-move">
					<h2 id="to-move">{things.length === 1 ? "1 thing in hand" : `${things.length} things in hand`}</h2>
					<ul className="af-bench-list">
						{things.map((thing) => (
							<li key={thing.id} className="af-in-hand">
								<span>
									<Link href={pageOf(thing)}>{thing.tag}</Link>{" "}
									{thing.kind === "place" ? `all that lies right on ${thing.name}` : thing.name}
									<span className="af-sub block">{thing.where}</span>
								</span>
								<Button
									kind="quiet"
									aria-label={`Leave out ${thing.tag}`}
									onClick={() => setThings((now) => now.filter((one) => one.id !== thing.id))}
								>
									Leave out
								</Button>
							</li>
						))}
					</ul>
				</section>
			) : null}
			{asked ? <Asked thing={asked} inHand={things} onThing={() => add(asked)} onGoal={askedGoal} /> : null}
			<ScanField label={things.length === 0 ? "What it is" : "The next thing, or where it goes"} hint="12-0147-K" onScan={scan} />
			{things.length > 0 ? (
				<details className="af-details">
					<summary>Choose the place from the list, or take a whole shelf</summary>
					<div className="pt-2">
						<SelectField
							label="Where it goes"
							none="Choose the place"
							options={places.map((place) => ({ value: place.id, label: place.path }))}
							value={chosen}
							onChange={(event) => setChosen(event.target.value)}
						/>
						<Button
							onClick={async () => {
								const place = places.find((one) => one.id === chosen);
								if (place) await moveAll({ kind: "location", id: place.id, words: place.path });
							}}
						>
							Lay it there
						</Button>
						<CheckField
							label="A place that I scan is moved, too"
							hint="all that lies right on it"
							name="places-too"
							checked={placesToo}
							onChange={(event) => setPlacesToo(event.target.checked)}
						/>
					</div>
				</details>
			) : null}
			{things.length > 0 && next ? (
				<ActionBar>
					<Button kind="main" onClick={() => moveAll(next)}>
						{goal ? `Lay it on ${goal.words}` : `Again to ${next.words}`}
					</Button>
				</ActionBar>
			) : null}
		</>
	);

	function askedGoal(thing: Scanned): Promise<void> | undefined {
		if (things.length > 0) return move(goalOf(thing), things);
		setGoal(goalOf(thing));
		setAsked(null);
		return undefined;
	}
}

const goalOf = (thing: Scanned): Goal =>
	thing.kind === "bag"
		? { kind: "bag", id: thing.id, words: `${thing.tag} ${thing.name}` }
		: { kind: "location", id: thing.id, words: thing.where };

const pageOf = (thing: Scanned): string => (thing.kind === "place" ? `/store/${thing.id}` : `/t/${thing.tag}`);

/** What was scanned may be the thing or the goal: one tap says which. */
function Asked({
	thing,
	inHand,
	onThing,
	onGoal,
}: {
	readonly thing: Scanned;
	readonly inHand: readonly Scanned[];
	readonly onThing: () => void;
	readonly onGoal: (thing: Scanned) => Promise<void> | undefined;
}) {
	const isBag = thing.kind === "bag";
	// A bag in hand keeps its own things apart from those of the bag around it.
	const loose = inHand.flatMap((one) => (one.kind === "part" ? one.kept : []));
	const hints = isBag ? loose.flatMap((part, at) => adviceFor(part, [...thing.kept, ...loose.slice(0, at)])) : [];
	return (
		<Notice title={isBag ? `${thing.tag} ${thing.name}` : thing.where}>
			<Keeping hints={[...new Map(hints.map((hint) => [hint.say, hint])).values()]} />
			<div className="af-buttons">
				<Button kind="main" onClick={() => onGoal(thing)}>
					{inHand.length === 0 ? "Things go here: scan them" : isBag ? "Lay it in this bag" : "Lay it here"}
				</Button>
				<Button onClick={onThing}>{isBag ? "This bag moves, too" : "Move what lies here"}</Button>
			</div>
		</Notice>
	);
}

/** What is in hand, kept by its tags: a reload, or a battery that dies on the way to the shelf, loses nothing. */
function useInHand(first: readonly Scanned[]) {
	const [things, setThings] = useState<readonly Scanned[]>(first);
	const [isRead, setIsRead] = useState(false);
	useEffect(() => {
		const tags = keptWords(IN_HAND) ?? [];
		setIsRead(true);
		if (tags.length === 0) return;
		void scannedTagsAction(tags).then((kept) =>
			setThings((now) => [...kept.filter((thing) => !now.some((one) => one.id === thing.id)), ...now]),
		);
	}, []);
	useEffect(() => {
		if (isRead)
			keepWords(
				IN_HAND,
				things.map((thing) => thing.tag),
			);
	}, [isRead, things]);
	return [things, setThings] as const;
}
