"use client";

import { type KeyboardEvent, useMemo, useRef, useState } from "react";
import { useWatch } from "react-hook-form";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { FormProblem } from "@/app/ui/formProblem";
import { Buttons } from "@/app/ui/layouts";
import { Notice } from "@/app/ui/notice";
import { SelectField } from "@/app/ui/selectField";
import { TextArea } from "@/app/ui/textArea";
import { useActionForm } from "@/app/ui/useActionForm";
import { counted } from "@/lib/machines/rules";
import { type ListedPosition, readIndentedList } from "@/lib/positions/indentedList";
import { addPositionsAsTextSchema, copyBuildSchema } from "@/lib/positions/schema";
import { ORIGIN_OPTIONS } from "../../originOptions";
import { addPositionsAsTextAction, copyBuildAction } from "./actions";

/** Lines of the preview; a longer list says how many more there are. */
const PREVIEWED = 60;

const EXAMPLE = `Sound box:
Speaker
  4 grille screws
  Chime bar, left
  Chime bar, right ?
Volume knob (missing)
Rear wall (place)`;

/** The build as a list, one position a line; what it comes to is shown before anything is written. */
export function AddPositionsForm({ machineId, stamped }: { readonly machineId: string; readonly stamped: boolean }) {
	const [added, setAdded] = useState<number | null>(null);
	const area = useRef<HTMLTextAreaElement | null>(null);
	const form = useActionForm({
		schema: addPositionsAsTextSchema,
		defaults: { machineId, text: "", origin: "unknown", wasThere: "" },
		action: addPositionsAsTextAction,
		onDone: (done, { setValue }) => {
			setAdded(done.positions.length);
			setValue("text", "");
			area.current?.focus();
		},
	});
	const { control } = form.form;
	const text = useWatch({ control, name: "text" });
	const list = useMemo(() => readIndentedList(text), [text]);
	const count = list.positions.length;
	const { ref, ...field } = form.field("text");

	/** Writes into the list as typing does, at once: a letter that comes right after it must not land at the end. */
	const put = (box: HTMLTextAreaElement, words: string, from: number, to: number, cursor: number) => {
		box.setRangeText(words, from, to);
		box.setSelectionRange(cursor, cursor);
		box.dispatchEvent(new Event("input", { bubbles: true }));
	};

	/** Shifts the line under the cursor by a step: on a phone two spaces are hard to type. */
	const shift = (way: "in" | "out") => {
		const box = area.current;
		if (!box) return;
		const at = box.selectionStart;
		const start = box.value.lastIndexOf("\n", at - 1) + 1;
		const step = way === "in" ? 0 : (/^(?: {1,2}|\t)/.exec(box.value.slice(start))?.[0].length ?? 0);
		const words = way === "in" ? "  " : "";
		put(box, words, start, start + step, Math.max(start, at + words.length - step));
		box.focus();
	};

	/** A new line begins as deep as the one before it. */
	const keepIndent = (event: KeyboardEvent<HTMLTextAreaElement>) => {
		const box = event.currentTarget;
		const at = box.selectionStart;
		if (event.key !== "Enter" || event.nativeEvent.isComposing || at !== box.selectionEnd) return;
		const line = box.value.slice(box.value.lastIndexOf("\n", at - 1) + 1, at);
		const indent = /^[ \t]*/.exec(line)?.[0] ?? "";
		if (indent === "") return;
		event.preventDefault();
		put(box, `\n${indent}`, at, at, at + 1 + indent.length);
	};

	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			{added === null || count > 0 ? null : <Notice means="original">Added {counted(added, "position")}.</Notice>}
			<TextArea
				label="Positions"
				hideLabel
				mono
				rows={8}
				spellCheck={false}
				autoCapitalize="off"
				placeholder={EXAMPLE}
				hint="One a line, two spaces deeper for what sits on it. A number in front makes a lot. At the end: ? for not seen yet, (missing), (wrong), (original), (place). An area ends with a colon."
				{...field}
				error={list.wrong[0]?.say ?? field.error}
				onKeyDown={keepIndent}
				ref={(box) => {
					ref(box);
					area.current = box;
				}}
			/>
			<div className="mb-4">
				<Buttons>
					<Button onClick={() => shift("in")}>Deeper</Button>
					<Button onClick={() => shift("out")}>Less deep</Button>
				</Buttons>
			</div>
			{count > 0 ? <Preview positions={list.positions} /> : null}
			{stamped ? (
				<ChoiceField
					label="As found is stamped. Were they there when it came?"
					options={[
						{ value: "", label: "No", hint: "places that the work makes, empty at first" },
						{ value: "yes", label: "Yes", hint: "later knowledge of what was there" },
					]}
					{...form.field("wasThere")}
				/>
			) : null}
			<SelectField label="Parts are, unless a line says otherwise" options={[...ORIGIN_OPTIONS]} {...form.field("origin")} />
			<Button type="submit" kind="main" pending={form.pending} disabled={list.wrong.length > 0}>
				{count === 0 ? "Add positions" : `Add ${counted(count, "position")}`}
			</Button>
		</form>
	);
}

function Preview({ positions }: { readonly positions: readonly ListedPosition[] }) {
	const unseen = positions.filter((position) => position.finding === "unseen").length;
	return (
		<details className="af-details" open={positions.length <= 12}>
			<summary>
				Reads as {counted(positions.length, "position")}
				{unseen > 0 ? `, ${unseen} not seen yet` : ""}
			</summary>
			<ul aria-label="How the list is read">
				{positions.slice(0, PREVIEWED).map((position) => (
					<li key={position.line} style={{ paddingInlineStart: `${Math.min(position.depth, 6) * 1.1}rem` }}>
						{position.name}
						<span className="af-sub">{saidOf(position)}</span>
					</li>
				))}
			</ul>
			{positions.length > PREVIEWED ? <p>and {positions.length - PREVIEWED} more</p> : null}
		</details>
	);
}

const FOUND_WORDS = { there: "", missing: "missing", wrong: "wrong part", unseen: "not seen yet" } as const;

const saidOf = (position: ListedPosition): string =>
	[
		position.count > 1 ? `a lot of ${position.count}` : "",
		position.kind === "place" ? "a place" : FOUND_WORDS[position.finding],
		position.origin ?? "",
		position.parent === null && position.area !== "" ? position.area : "",
	]
		.filter(Boolean)
		.join(", ");

/** Begins from another machine's positions, every one not seen yet. */
export function CopyBuildForm({
	machineId,
	machines,
}: {
	readonly machineId: string;
	readonly machines: readonly { readonly id: string; readonly label: string }[];
}) {
	const form = useActionForm({
		schema: copyBuildSchema,
		defaults: { machineId, fromMachineId: machines[0]?.id ?? "" },
		action: copyBuildAction,
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<SelectField
				label="Machine to begin from"
				hint="Its positions, times, sides and what is behind what come over. None of it counts as seen: you look at each."
				options={machines.map(({ id, label }) => ({ value: id, label }))}
				{...form.field("fromMachineId")}
			/>
			<Button type="submit" pending={form.pending}>
				Copy its positions as not seen yet
			</Button>
		</form>
	);
}
