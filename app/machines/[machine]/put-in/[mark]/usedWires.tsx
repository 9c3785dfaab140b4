"use client";

import { Button } from "@/app/ui/button";
import { CheckField } from "@/app/ui/checkField";
import { clientId } from "@/app/ui/clientId";
import { FormRow } from "@/app/ui/layouts";
import { TextField } from "@/app/ui/textField";
import { wireInWords } from "@/lib/fittings/wireWords";

export type UsedWire = {
	readonly key: string;
	readonly connectionId: string | null;
	readonly from: string;
	readonly to: string;
	readonly colour: string;
	readonly base: string;
	readonly tracer: string;
	readonly tagFrom: string;
	readonly tagTo: string;
	readonly connect: boolean;
};
export type ShownWire = Omit<UsedWire, "key" | "connectionId" | "connect"> & {
	readonly id: string;
	readonly partId: string;
	readonly state: string;
};

/** The wires that were undone here, and new ones: a part can be fitted and not connected. */
export function UsedWires({ wires, onChange }: { wires: readonly UsedWire[]; onChange: (wires: readonly UsedWire[]) => void }) {
	const change = (key: string, patch: Partial<UsedWire>) =>
		onChange(wires.map((wire) => (wire.key === key ? { ...wire, ...patch } : wire)));
	return (
		<section aria-labelledby="wires" className="flex flex-col gap-2">
			<h2 id="wires">Wires and hoses</h2>
			{wires.map((wire) =>
				wire.connectionId === null ? (
					<div key={wire.key}>
						<FormRow>
							<TextField
								label="From"
								hint="motor 1"
								value={wire.from}
								onChange={(event) => change(wire.key, { from: event.target.value })}
							/>
							<TextField label="To" hint="block 7" value={wire.to} onChange={(event) => change(wire.key, { to: event.target.value })} />
							<TextField
								label="Colour"
								hint="BK, RDBU, GNYE"
								mono
								optional
								value={wire.colour}
								onChange={(event) => change(wire.key, { colour: event.target.value })}
							/>
						</FormRow>
						<Button kind="quiet" onClick={() => onChange(wires.filter((other) => other.key !== wire.key))}>
							Leave this wire out
						</Button>
					</div>
				) : (
					<CheckField
						key={wire.key}
						label={wireInWords(wire)}
						hint={
							[wire.tagFrom, wire.tagTo].filter(Boolean).join(" and ")
								? `tagged ${[wire.tagFrom, wire.tagTo].filter(Boolean).join(" and ")}`
								: "no tags"
						}
						name={`wire-${wire.key}`}
						checked={wire.connect}
						onChange={(event) => change(wire.key, { connect: event.target.checked })}
					/>
				),
			)}
			<Button
				onClick={() =>
					onChange([
						...wires,
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
							connect: true,
						},
					])
				}
			>
				Add a wire
			</Button>
		</section>
	);
}
