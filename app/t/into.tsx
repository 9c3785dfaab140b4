"use client";

import { useEffect, useId, useState } from "react";
import { keptWords } from "@/app/keptOnPhone";
import { SelectField } from "@/app/ui/selectField";
import { TextField } from "@/app/ui/textField";
import type { Destination } from "@/lib/bags/schema";
import { adviceFor, type Hint, type Kept } from "@/lib/keeping/advice";

export type BagChoice = {
	readonly id: string;
	readonly tag: string;
	readonly words: string;
	readonly role: "holding" | "keeping" /** What is in it, for the advice. */;
	readonly holds?: readonly Kept[];
};
export type IntoChoice = {
	readonly kind: "new-bag" | "last-bag" | "waiting-bag" | "bag" | "location" | "bench";
	readonly role: "holding" | "keeping";
	readonly bagId: string;
	readonly locationId: string;
	readonly words: string;
	readonly caution: string;
	readonly tag: string;
};

/** A bag that a deed makes which still waits on this phone: it has no tag yet. */
export type WaitingBag = { readonly deed: string; readonly words: string };

/** Under which name a browser keeps the last bag of a machine. */
export const lastBag = (machineNumber: number): string => `bag-${machineNumber}`;

/** The choice as the deed takes it; a bag that is still to be made is filled in when it is there, and until then it is the bench. */
export function intoOf(choice: IntoChoice): Destination {
	switch (choice.kind) {
		case "new-bag":
			return { kind: "new-bag", bag: { role: choice.role, words: choice.words, caution: choice.caution, tag: choice.tag || null } };
		case "last-bag":
		case "bag":
			return { kind: "bag", bagId: choice.bagId };
		case "location":
			return { kind: "location", locationId: choice.locationId };
		case "waiting-bag":
		case "bench":
			return { kind: "bench" };
	}
}

/** What is still to be said of where it goes, or null. Nothing is laid anywhere by default. */
export function unsaidIn(choice: IntoChoice, waitingBag: WaitingBag | null): string | null {
	if (choice.kind === "bag" && choice.bagId === "") return "Say into which bag it goes.";
	if (choice.kind === "location" && choice.locationId === "") return "Say on which shelf it goes.";
	if (choice.kind === "waiting-bag" && !waitingBag) return "The bag that it was to go into is not at hand any more. Say where it goes.";
	return null;
}

/** Where it goes: a new bag with one tap, the bag that was used last, another bag, a shelf, or the bench. */
export function Into({
	choice,
	onChange,
	bags,
	places,
	machineNumber,
	partName,
	isOriginal,
	noNewBag = false,
	waitingBag = null,
	material = null,
}: {
	choice: IntoChoice;
	onChange: (choice: IntoChoice) => void;
	bags: readonly BagChoice[];
	places: readonly { readonly id: string; readonly path: string }[];
	machineNumber: number;
	partName: string;
	isOriginal: boolean;
	/** For a bag, which goes into a bag that is there. */
	noNewBag?: boolean;
	waitingBag?: WaitingBag | null;
	/** What it is made of, where it is a part that is bagged here. */
	material?: string | null;
}) {
	const name = useId();
	const [last, setLast] = useState<BagChoice | null>(null);
	useEffect(() => {
		const [remembered] = keptWords(lastBag(machineNumber)) ?? [];
		setLast(bags.find((bag) => bag.id === remembered) ?? null);
	}, [bags, machineNumber]);

	const option = (value: string, label: string, hint: string, isChosen: boolean, next: IntoChoice) => (
		<label key={value} className="af-choice">
			<input type="radio" name={name} value={value} checked={isChosen} onChange={() => onChange(next)} />
			<span>
				{label}
				<small>{hint}</small>
			</span>
		</label>
	);
	return (
		<fieldset className="af-field">
			<legend className="af-label">Where it goes</legend>
			<div className="af-choices">
				{noNewBag
					? null
					: option("holding", "New bag", "emptied again at re-assembly", choice.kind === "new-bag" && choice.role === "holding", {
							...choice,
							kind: "new-bag",
							role: "holding",
						})}
				{noNewBag
					? null
					: option(
							"keeping",
							"New bag, kept",
							isOriginal ? "an original that stays out" : "stays with the machine for ever",
							choice.kind === "new-bag" && choice.role === "keeping",
							{ ...choice, kind: "new-bag", role: "keeping" },
						)}
				{waitingBag
					? option("waiting", `With the ${waitingBag.words}`, "its bag gets its tag when the shop is back", choice.kind === "waiting-bag", {
							...choice,
							kind: "waiting-bag",
						})
					: null}
				{last
					? option("last", last.tag, `the last bag: ${last.words}`, choice.kind === "last-bag", {
							...choice,
							kind: "last-bag",
							bagId: last.id,
						})
					: null}
				{bags.length > 0
					? option("bag", "Another bag", "from the list", choice.kind === "bag", {
							...choice,
							kind: "bag",
							bagId: choice.kind === "bag" ? choice.bagId : "",
						})
					: null}
				{places.length > 0
					? option("location", "A shelf", "without a bag", choice.kind === "location", {
							...choice,
							kind: "location",
						})
					: null}
				{option("bench", "On the bench", "put away later", choice.kind === "bench", { ...choice, kind: "bench" })}
			</div>
			{material === null || choice.kind === "bench" || choice.kind === "location" ? null : (
				<Keeping hints={adviceFor({ name: partName, material }, inChosen(choice, bags))} />
			)}
			{choice.kind === "bag" ? (
				<SelectField
					label="Which bag"
					none="Choose the bag"
					options={bags.map((bag) => ({ value: bag.id, label: `${bag.tag} ${bag.words} (${bag.role})` }))}
					value={choice.bagId}
					onChange={(event) => onChange({ ...choice, bagId: event.target.value })}
				/>
			) : null}
			{choice.kind === "location" ? (
				<SelectField
					label="Which place"
					none="Choose the place"
					options={places.map((place) => ({ value: place.id, label: place.path }))}
					value={choice.locationId}
					onChange={(event) => onChange({ ...choice, locationId: event.target.value })}
				/>
			) : null}
			{choice.kind === "new-bag" ? (
				<details className="af-details">
					<summary>Words, caution, a tag that is on it already</summary>
					<div className="pt-2">
						<TextField
							label="In big words"
							hint={`Left empty: ${partName}`}
							optional
							value={choice.words}
							onChange={(event) => onChange({ ...choice, words: event.target.value })}
						/>
						<TextField
							label="What a hand must know"
							optional
							suggest={["this side up", "mercury: do not break", "loaded spring", "sharp edge", "open bag: perished rubber"]}
							value={choice.caution}
							onChange={(event) => onChange({ ...choice, caution: event.target.value })}
						/>
						<TextField
							label="Tag on the bag"
							hint={`Left empty: the next free number of machine ${machineNumber}`}
							optional
							mono
							autoCapitalize="characters"
							value={choice.tag}
							onChange={(event) => onChange({ ...choice, tag: event.target.value })}
						/>
					</div>
				</details>
			) : null}
		</fieldset>
	);
}

const inChosen = (choice: IntoChoice, bags: readonly BagChoice[]): readonly Kept[] =>
	choice.kind === "bag" || choice.kind === "last-bag" ? (bags.find((bag) => bag.id === choice.bagId)?.holds ?? []) : [];

/** What must not share the bag, and what must stay dry: hints, each with where it stands. */
export function Keeping({ hints }: { hints: readonly Hint[] }) {
	if (hints.length === 0) return null;
	return (
		<ul className="af-keeping" aria-label="Keeping">
			{hints.map((hint) => (
				<li key={hint.say}>
					{hint.say} <small>({hint.source})</small>
				</li>
			))}
		</ul>
	);
}
