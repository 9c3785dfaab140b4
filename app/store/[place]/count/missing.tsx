"use client";

import { useEffect, useId, useState } from "react";
import { ChoiceField } from "@/app/ui/choiceField";
import { Notice } from "@/app/ui/notice";
import { SelectField } from "@/app/ui/selectField";
import { TextField } from "@/app/ui/textField";
import type { Lying } from "@/lib/store/counting";
import { missedWithoutAction } from "../../actions";

/** What is said of a missing thing: nothing yet, where it lies, or that it is lost. */
export type MissingSaid = { readonly how: "open" | "elsewhere" | "lost"; readonly to: string; readonly why: string };
const OPEN: MissingSaid = { how: "open", to: "", why: "" };

const BENCH = "bench";

/** The answers about what is missing as the count takes them. */
export function missingAnswers(missing: readonly Lying[], said: Readonly<Record<string, MissingSaid>>) {
	return {
		elsewhere: missing.flatMap(({ kind, id }) => {
			const answer = said[id];
			if (answer?.how !== "elsewhere") return [];
			return [
				{ kind, id, to: answer.to === BENCH ? ({ kind: "bench" } as const) : ({ kind: "location", locationId: answer.to } as const) },
			];
		}),
		lost: missing.flatMap(({ id }) => {
			const answer = said[id];
			return answer?.how === "lost" ? [{ partId: id, why: answer.why }] : [];
		}),
	};
}

/** One missing thing: it may stay open, lie elsewhere, or, where it is a part, be lost. */
export function Missing({
	thing,
	places,
	answer = OPEN,
	problems,
	onSay,
}: {
	readonly thing: Lying;
	readonly places: readonly { readonly id: string; readonly path: string }[];
	readonly answer: MissingSaid | undefined;
	readonly problems: { readonly to: string | undefined; readonly why: string | undefined };
	readonly onSay: (answer: MissingSaid) => void;
}) {
	const name = useId();
	const [misses, setMisses] = useState("");
	const isLost = answer.how === "lost";
	useEffect(() => {
		// Said beforehand, as on its own page: what the machine misses without it.
		if (isLost) void missedWithoutAction(thing.id).then(setMisses);
	}, [isLost, thing.id]);
	return (
		<fieldset className="af-field">
			<legend className="af-label">
				{[thing.tag, thing.name].filter(Boolean).join(" ")}
				{thing.at ? <span className="af-sub block">{thing.at}</span> : null}
			</legend>
			<ChoiceField
				label="What is known of it"
				hideLabel
				name={name}
				defaultValue={answer.how}
				options={[
					{ value: "open", label: "Missing", hint: "left open" },
					{ value: "elsewhere", label: "It lies elsewhere" },
					...(thing.kind === "part" ? [{ value: "lost", label: "It is lost" }] : []),
				]}
				onChange={(event) =>
					onSay({ ...answer, how: event.target.value === "lost" ? "lost" : event.target.value === "open" ? "open" : "elsewhere" })
				}
			/>
			{answer.how === "elsewhere" ? (
				<SelectField
					label="Where it lies"
					error={problems.to}
					none="Choose the place"
					options={[{ value: BENCH, label: "On the bench" }, ...places.map(({ id, path }) => ({ value: id, label: path }))]}
					value={answer.to}
					onChange={(event) => onSay({ ...answer, to: event.target.value })}
				/>
			) : null}
			{isLost ? (
				<>
					{misses ? (
						<Notice means="stop" live="off">
							{misses}
						</Notice>
					) : null}
					<TextField
						label="What is known"
						hint="Where it was looked for, who had it last"
						error={problems.why}
						value={answer.why}
						onChange={(event) => onSay({ ...answer, why: event.target.value })}
					/>
				</>
			) : null}
		</fieldset>
	);
}
