"use client";

import { useState } from "react";
import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { Stack } from "@/app/ui/layouts";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import type { Offer } from "@/lib/captures/nearInTime";
import { sayLaterAction } from "./actions";
import type { Group } from "./kinds";
import { NothingForm } from "./nothingForm";
import { ShowsField } from "./showsField";

/** The same words and the same thing for several captures, in one deed. */
export function Together({
	captureIds,
	offers,
	groups,
	onDone,
}: {
	readonly captureIds: readonly string[];
	readonly offers: readonly Offer[];
	/** Null where they are not all of one machine: then they share only words. */
	readonly groups: readonly Group[] | null;
	readonly onDone: (words: string) => void;
}) {
	const [nothing, setNothing] = useState(false);
	const form = useActionForm({
		defaults: { words: "", shows: "" },
		action: (raw) => sayLaterAction({ ...raw, captureIds: [...captureIds] }),
		onDone: ({ count }) => onDone(`${count} have their words.`),
	});
	return (
		<Stack>
			<form {...form.formProps} className="af-later-form">
				<FormProblem problem={form.problem} />
				<TextField label="Words for all of them" maxLength={4000} {...form.field("words")} />
				{groups === null ? (
					<span />
				) : (
					<ShowsField offers={offers} groups={groups} known="what each is known to show" {...form.field("shows")} />
				)}
				<Button type="submit" kind="main" pending={form.pending}>
					Keep for {captureIds.length}
				</Button>
			</form>
			<div>
				<Button kind="quiet" aria-expanded={nothing} onClick={() => setNothing(!nothing)}>
					They are nothing
				</Button>
			</div>
			{nothing ? <NothingForm captureIds={captureIds} onDone={onDone} /> : null}
		</Stack>
	);
}
