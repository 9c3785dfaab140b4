"use client";

import { type ComponentProps, useState } from "react";
import { SelectField } from "@/app/ui/selectField";
import type { Offer } from "@/lib/captures/nearInTime";
import type { Group } from "./kinds";

/** What it shows: what went on when it was taken stands first. The machine's whole list comes when the field is gone into. */
export function ShowsField({
	offers,
	groups,
	known,
	...field
}: {
	readonly offers: readonly Offer[];
	readonly groups: readonly Group[];
	/** What it is known to show already. */
	readonly known: string;
	readonly error: string | undefined;
} & ComponentProps<"select">) {
	const [all, setAll] = useState(false);
	return (
		<SelectField
			{...field}
			label="It shows"
			optional
			none={known === "" ? "the machine as a whole" : known}
			groups={[...(offers.length > 0 ? [{ label: "What went on then", options: offers }] : []), ...(all ? groups : [])]}
			onFocus={() => setAll(true)}
			onPointerDown={() => setAll(true)}
		/>
	);
}
