"use client";

import { Button } from "@/app/ui/button";
import { clientId } from "@/app/ui/clientId";
import { FormRow } from "@/app/ui/layouts";
import { TextField } from "@/app/ui/textField";

export type SettingLine = { readonly key: string; readonly kind: string; readonly value: string };

/** The information that is no part, and is lost when a thing is moved. */
export const SETTING_KINDS = [
	"cam at rest",
	"spring turns",
	"shims",
	"cord length",
	"cord wraps",
	"contact gap",
	"pin driven from",
	"left-hand thread",
	"timing mark",
	"how far on the shaft",
];

export function SettingLines({
	lines,
	onChange,
	onRecord,
}: {
	lines: readonly SettingLine[];
	onChange: (lines: readonly SettingLine[]) => void;
	onRecord: readonly { readonly kind: string; readonly value: string }[];
}) {
	const change = (key: string, patch: Partial<SettingLine>) =>
		onChange(lines.map((line) => (line.key === key ? { ...line, ...patch } : line)));
	return (
		<section aria-labelledby="settings" className="flex flex-col gap-3">
			<h2 id="settings">How it was set</h2>
			{onRecord.length > 0 ? (
				<ul>
					{onRecord.map((setting) => (
						<li key={`${setting.kind} ${setting.value}`}>
							{setting.kind}: <strong>{setting.value}</strong>
						</li>
					))}
				</ul>
			) : null}
			{lines.map((line) => (
				<div key={line.key}>
					<FormRow>
						<TextField
							label="What is set"
							suggest={SETTING_KINDS}
							value={line.kind}
							onChange={(event) => change(line.key, { kind: event.target.value })}
						/>
						<TextField
							label="How"
							hint="3 turns; 0.4 mm; 2 left, 3 right"
							value={line.value}
							onChange={(event) => change(line.key, { value: event.target.value })}
						/>
					</FormRow>
					<Button kind="quiet" onClick={() => onChange(lines.filter((other) => other.key !== line.key))}>
						Leave this out
					</Button>
				</div>
			))}
			<Button onClick={() => onChange([...lines, { key: clientId(), kind: "", value: "" }])}>Add turns, gaps, marks</Button>
		</section>
	);
}
