"use client";

import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { clientId } from "@/app/ui/clientId";
import { FormRow } from "@/app/ui/layouts";
import { TextField } from "@/app/ui/textField";
import { colourInWords } from "@/lib/colours/wireColour";
import { wireInWords } from "@/lib/fittings/wireWords";

export type WireLine = {
	readonly key: string;
	readonly connectionId: string | null;
	readonly from: string;
	readonly to: string;
	readonly colour: string;
	readonly base: string;
	readonly tracer: string;
	readonly tagFrom: string;
	readonly tagTo: string;
	readonly state: "connected" | "parked" | "removed";
};
export type ShownWire = Omit<WireLine, "key" | "connectionId"> & { readonly id: string };

const STATES = [
	{ value: "parked", label: "Parked", hint: "both ends kept" },
	{ value: "removed", label: "Removed" },
	{ value: "connected", label: "Still on it" },
];

/** The wires at the part: tag both ends before the first is undone. */
export function WireLines({ lines, onChange }: { lines: readonly WireLine[]; onChange: (lines: readonly WireLine[]) => void }) {
	const change = (key: string, patch: Partial<WireLine>) =>
		onChange(lines.map((line) => (line.key === key ? { ...line, ...patch } : line)));
	return (
		<section aria-labelledby="wires" className="flex flex-col gap-3">
			<h2 id="wires">Wires and hoses</h2>
			{lines.length === 0 ? <p className="af-sub">None on record for this part.</p> : null}
			<ul className="flex flex-col gap-4">
				{lines.map((line) => (
					<li key={line.key} className="flex flex-col gap-1">
						{line.connectionId === null ? (
							<>
								<FormRow>
									<TextField
										label="From"
										hint="motor 1"
										value={line.from}
										onChange={(event) => change(line.key, { from: event.target.value })}
									/>
									<TextField label="To" hint="block 7" value={line.to} onChange={(event) => change(line.key, { to: event.target.value })} />
								</FormRow>
								<FormRow>
									<TextField
										label="Colour"
										hint={colourHint(line.colour)}
										mono
										optional
										autoCapitalize="characters"
										value={line.colour}
										onChange={(event) => change(line.key, { colour: event.target.value })}
									/>
									<TextField
										label="Cloth: base and tracer"
										hint="black, red tracer"
										optional
										value={line.base}
										onChange={(event) => change(line.key, { base: event.target.value })}
									/>
								</FormRow>
							</>
						) : (
							<p>
								<strong>{wireInWords(line)}</strong> <span className="af-sub">{colourInWords(line.colour)}</span>
							</p>
						)}
						<ChoiceField
							label={`What became of it: ${wireInWords(line)}`}
							hideLabel
							name={`wire-${line.key}`}
							options={STATES}
							defaultValue={line.state}
							onChange={(event) => change(line.key, { state: stateOf(event.currentTarget.value) })}
						/>
						{line.state === "parked" ? (
							<FormRow>
								<TextField
									label="Tag on the part's end"
									mono
									optional
									value={line.tagFrom}
									onChange={(event) => change(line.key, { tagFrom: event.target.value })}
								/>
								<TextField
									label="Tag on the other end"
									mono
									optional
									value={line.tagTo}
									onChange={(event) => change(line.key, { tagTo: event.target.value })}
								/>
							</FormRow>
						) : null}
						{line.connectionId === null ? (
							<Button kind="quiet" onClick={() => onChange(lines.filter((other) => other.key !== line.key))}>
								Leave this wire out
							</Button>
						) : null}
					</li>
				))}
			</ul>
			<Button
				onClick={() =>
					onChange([
						...lines,
						{
							key: clientId(),
							connectionId: null,
							from: "",
							to: "",
							colour: "",
							base: "",
							tracer: "",
							tagFrom: "",
							tagTo: "",
							state: "parked",
						},
					])
				}
			>
				Add a wire
			</Button>
		</section>
	);
}

const colourHint = (typed: string): string => {
	const words = colourInWords(typed.trim().toUpperCase());
	return words === typed.trim().toUpperCase() ? "BK, RDBU, GNYE" : words;
};

const stateOf = (value: string): WireLine["state"] => (value === "connected" || value === "removed" ? value : "parked");
