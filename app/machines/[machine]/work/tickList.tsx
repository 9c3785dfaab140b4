"use client";

import { CheckField } from "@/app/ui/checkField";
import { FieldGroup } from "@/app/ui/field";
import type { Option } from "@/app/ui/option";

/** Any number of a list, each a line to tick. A long list scrolls in its own room. */
export function TickList({
	label,
	hint,
	error,
	optional,
	name,
	options,
	chosen,
	onChoose,
}: {
	readonly label: string;
	readonly hint?: string;
	readonly error?: string | undefined;
	readonly optional?: boolean;
	readonly name: string;
	readonly options: readonly Option[];
	readonly chosen: readonly string[];
	readonly onChoose: (chosen: string[]) => void;
}) {
	return (
		<FieldGroup
			label={chosen.length === 0 ? label : `${label}: ${chosen.length}`}
			{...(hint === undefined ? {} : { hint })}
			{...(optional === undefined ? {} : { optional })}
			error={error}
		>
			{() => (
				<div className={options.length > 8 ? "max-h-80 overflow-y-auto rounded-plain border border-line bg-well px-3" : ""}>
					{options.map((option) => (
						<div key={option.value} className="[&_.af-error]:hidden">
							<CheckField
								name={name}
								value={option.value}
								label={option.label}
								hint={option.hint}
								checked={chosen.includes(option.value)}
								onChange={(event) =>
									onChoose(event.currentTarget.checked ? [...chosen, option.value] : chosen.filter((value) => value !== option.value))
								}
							/>
						</div>
					))}
				</div>
			)}
		</FieldGroup>
	);
}
