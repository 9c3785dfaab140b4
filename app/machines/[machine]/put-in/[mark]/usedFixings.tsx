"use client";

import { Button } from "@/app/ui/button";
import { clientId } from "@/app/ui/clientId";
import { StepperField } from "@/app/ui/stepperField";
import { TextField } from "@/app/ui/textField";
import { fixingSize, readFixings } from "@/lib/fixings/fixingWords";

export type ShownLot = {
	readonly id: string;
	/** The part that it held. */
	readonly heldPart: string;
	/** It held that part the last time that it was here. */
	readonly heldLast: boolean;
	readonly count: number;
	readonly thread: string;
	readonly length: string;
	readonly head: string;
	readonly drive: string;
	readonly tightness: string;
	readonly differs: string;
	readonly note: string;
	readonly place: string;
	/** "in 12-0201-3" */
	readonly where: string;
};
export type UsedLot = Omit<ShownLot, "id" | "heldPart" | "heldLast" | "place"> & {
	readonly key: string;
	readonly fixingId: string | null;
	/** How many there are. */
	readonly most: number;
	readonly used: number;
};

/** Typed words as new lots: "4 x M5 x 12 socket cap". */
export const lotsTyped = (typed: string): UsedLot[] =>
	readFixings(typed).map((fixing) => ({
		...fixing,
		key: clientId(),
		fixingId: null,
		most: 9999,
		used: fixing.count,
		tightness: "",
		differs: "",
		where: "new",
	}));

/** What holds the part now: the lots that held what was here before, each with where it lies, and new ones. */
export function UsedFixings({
	lots,
	onChange,
	typed,
	onTyped,
}: {
	lots: readonly UsedLot[];
	onChange: (lots: readonly UsedLot[]) => void;
	/** What stands in the box for another one: the form sends that, too. */
	typed: string;
	onTyped: (typed: string) => void;
}) {
	const addTyped = () => {
		const added = lotsTyped(typed);
		if (added.length === 0) return;
		onChange([...lots, ...added]);
		onTyped("");
	};
	return (
		<section aria-labelledby="held-by" className="flex flex-col gap-2">
			<h2 id="held-by">Held by</h2>
			<ul className="flex flex-col gap-1">
				{lots.map((lot) => (
					<li key={lot.key} className="af-count-line">
						<StepperField
							label={`How many: ${fixingSize(lot)}`}
							hideLabel
							name={`used-${lot.key}`}
							min={0}
							max={lot.most}
							defaultValue={lot.used}
							onChange={(event) => {
								const used = Number(event.currentTarget.value);
								onChange(lots.map((other) => (other.key === lot.key ? { ...lot, used } : other)));
							}}
						/>
						<p>
							{fixingSize(lot)}
							<span className="af-sub">
								{[lot.fixingId === null ? "new" : `${lot.most}, ${lot.where}`, lot.differs, lot.note].filter(Boolean).join(" · ")}
							</span>
						</p>
					</li>
				))}
			</ul>
			<div className="af-count-line">
				<TextField
					label="Another fixing"
					hint="4 x M5 x 12 socket cap"
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
