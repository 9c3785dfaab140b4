"use client";

import type { BagChoice } from "@/app/t/into";
import { Button } from "@/app/ui/button";
import { clientId } from "@/app/ui/clientId";
import { FormRow } from "@/app/ui/layouts";
import { SelectField } from "@/app/ui/selectField";
import { StepperField } from "@/app/ui/stepperField";
import { TextField } from "@/app/ui/textField";
import type { FixingOffer } from "@/lib/fittings/fixingOffers";
import type { TakeOut } from "@/lib/fittings/schema";
import { fixingSize, readFixings } from "@/lib/fixings/fixingWords";

type Went = NonNullable<NonNullable<TakeOut["fixings"]>[number]["went"]>;
export type FixingLine = {
	readonly key: string;
	readonly fixingId: string | null;
	readonly count: number;
	readonly thread: string;
	readonly length: string;
	readonly head: string;
	readonly drive: string;
	readonly tightness: string;
	readonly differs: string;
	readonly note: string;
	readonly went: Went;
	readonly recorded: { readonly count: number; readonly alsoHolds: readonly string[] } | null;
};
export type ShownFixing = Omit<FixingLine, "key" | "fixingId" | "went" | "recorded"> & {
	readonly id: string;
	readonly alsoHolds: readonly { readonly name: string }[];
};

/** Typed words as lines: "4 x 4BA x 1/2 cheese, slotted". */
export const linesTyped = (typed: string): FixingLine[] =>
	readFixings(typed).map((fixing) => ({
		...fixing,
		key: clientId(),
		fixingId: null,
		tightness: "",
		differs: "",
		went: { kind: "with-part" as const },
		recorded: null,
	}));

/** What holds the part, from the record: count what is in the hand, and say only what differs. */
export function FixingLines({
	lines,
	onChange,
	typed,
	onTyped,
	bags,
	offers = [],
}: {
	lines: readonly FixingLine[];
	onChange: (lines: readonly FixingLine[]) => void;
	/** What stands in the box for another one: the form sends that, too. */
	typed: string;
	onTyped: (typed: string) => void;
	bags: readonly BagChoice[];
	offers?: readonly FixingOffer[];
}) {
	const change = (key: string, patch: Partial<FixingLine>) =>
		onChange(lines.map((line) => (line.key === key ? { ...line, ...patch } : line)));
	const addTyped = () => {
		const read = linesTyped(typed);
		if (read.length === 0) return;
		onChange([...lines, ...read]);
		onTyped("");
	};
	return (
		<section aria-labelledby="held-by" className="flex flex-col gap-3">
			<h2 id="held-by">Held by</h2>
			{lines.length === 0 ? <p className="af-sub">No fixings on record for this position.</p> : null}
			<ul className="flex flex-col gap-4">
				{lines.map((line) => (
					<li key={line.key} className="flex flex-col gap-0.5">
						<p>
							<strong>{fixingSize(line)}</strong>
							{hintOf(line) ? <span className="af-sub">{hintOf(line)}</span> : null}
						</p>
						<div className="af-count-line">
							<StepperField
								label={`How many: ${fixingSize(line)}`}
								hideLabel
								name={`count-${line.key}`}
								min={1}
								max={9999}
								defaultValue={line.count}
								onChange={(event) => change(line.key, { count: Number(event.currentTarget.value) })}
							/>
							<SelectField
								label={`Where they went: ${fixingSize(line)}`}
								hideLabel
								name={`went-${line.key}`}
								value={wentValue(line.went)}
								onChange={(event) => change(line.key, { went: wentOf(event.currentTarget.value) })}
								groups={[
									{
										label: "Where they went",
										options: [
											{ value: "with-part", label: "With it" },
											{ value: "bench", label: "On the bench" },
											{ value: "left", label: "Left in place" },
											{ value: "lost", label: "Lost" },
											{ value: "scrapped", label: "Scrapped (sheared, bent)" },
											{ value: "stays", label: "Still holds another part" },
										],
									},
									{ label: "In another bag", options: bags.map((bag) => ({ value: `bag:${bag.id}`, label: `${bag.tag} ${bag.words}` })) },
								]}
							/>
						</div>
						<details className="af-details">
							<summary>Say more of them</summary>
							<div className="pt-2">
								<FormRow>
									<TextField
										label="Thread or size"
										value={line.thread}
										onChange={(event) => change(line.key, { thread: event.target.value })}
									/>
									<TextField
										label="Length under the head"
										value={line.length}
										onChange={(event) => change(line.key, { length: event.target.value })}
									/>
								</FormRow>
								<FormRow>
									<TextField label="Head" value={line.head} onChange={(event) => change(line.key, { head: event.target.value })} />
									<TextField label="Drive" value={line.drive} onChange={(event) => change(line.key, { drive: event.target.value })} />
								</FormRow>
								<TextField
									label="How tight it was"
									optional
									value={line.tightness}
									onChange={(event) => change(line.key, { tightness: event.target.value })}
								/>
								<TextField
									label="How they differ by place"
									hint="2 left, 3 right"
									optional
									value={line.differs}
									onChange={(event) => change(line.key, { differs: event.target.value })}
								/>
								<TextField label="Note" optional value={line.note} onChange={(event) => change(line.key, { note: event.target.value })} />
								<div className="af-buttons">
									{line.count > 1 ? (
										<Button
											kind="quiet"
											onClick={() =>
												onChange(
													lines.flatMap((other) =>
														other.key === line.key
															? [
																	{ ...line, key: clientId(), count: line.count - 1 },
																	{ ...line, key: clientId(), count: 1, recorded: null },
																]
															: [other],
													),
												)
											}
										>
											One went elsewhere
										</Button>
									) : null}
									{line.recorded === null ? (
										<Button kind="quiet" onClick={() => onChange(lines.filter((other) => other.key !== line.key))}>
											Leave this line out
										</Button>
									) : null}
								</div>
							</div>
						</details>
					</li>
				))}
			</ul>
			{lines.length === 0 && offers.length > 0 ? (
				<div className="af-offers">
					{offers.map((offer) => (
						<Button
							key={`${offer.from}${offer.count}${fixingSize(offer)}`}
							onClick={() => {
								const { from: _, ...fixing } = offer;
								onChange([...lines, { ...FRESH, ...fixing, key: clientId() }]);
							}}
						>
							{offer.count} x {fixingSize(offer)}
							{offer.from ? <small>{offer.from}</small> : null}
						</Button>
					))}
				</div>
			) : null}
			<div className="af-count-line">
				<TextField
					label="Another fixing"
					hint="4 x 4BA x 1/2 cheese, slotted"
					optional
					value={typed}
					onChange={(event) => onTyped(event.target.value)}
					onKeyDown={(event) => {
						if (event.key !== "Enter") return;
						event.preventDefault();
						addTyped();
					}}
				/>
				<Button onClick={addTyped}>Add it</Button>
			</div>
		</section>
	);
}

const FRESH = { fixingId: null, tightness: "", differs: "", note: "", went: { kind: "with-part" as const }, recorded: null };

function hintOf(line: FixingLine): string | undefined {
	const words = [
		line.recorded ? `${line.recorded.count} on record` : null,
		line.recorded && line.recorded.alsoHolds.length > 0 ? `also holds ${line.recorded.alsoHolds.join(", ")}` : null,
		line.differs || null,
		line.note || null,
	].filter((part) => part !== null);
	return words.length === 0 ? undefined : words.join(" · ");
}

const wentValue = (went: Went): string => (went.kind === "bag" ? `bag:${went.bagId}` : went.kind);
function wentOf(value: string): Went {
	if (value.startsWith("bag:")) return { kind: "bag", bagId: value.slice(4) };
	switch (value) {
		case "bench":
		case "left":
		case "lost":
		case "scrapped":
		case "stays":
			return { kind: value };
		default:
			return { kind: "with-part" };
	}
}
