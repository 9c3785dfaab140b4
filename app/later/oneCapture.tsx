"use client";

import { type ChangeEvent, useState } from "react";
import { Button } from "@/app/ui/button";
import { ButtonLink } from "@/app/ui/buttonLink";
import { CheckField } from "@/app/ui/checkField";
import { FormProblem } from "@/app/ui/formProblem";
import { Link } from "@/app/ui/link";
import { Picture } from "@/app/ui/photoGrid";
import { TagChip } from "@/app/ui/tagChip";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { sayLaterAction } from "./actions";
import type { Group, LaterRow } from "./kinds";
import { NothingForm } from "./nothingForm";
import { ShowsField } from "./showsField";

/** The words field of a capture, to go on to it. */
export const wordsFieldId = (id: string): string => `words-${id}`;

const KIND = { photo: "Photo", drawing: "Drawing", paper: "Paper", tag: "Scanned tag" } as const;

/** One capture with its picture and what is known of it. Enter in the words keeps them and goes on to the next. */
export function OneCapture({
	row,
	machine,
	groups,
	chosen,
	onChoose,
	onDone,
}: {
	readonly row: LaterRow;
	readonly machine: number | null;
	readonly groups: readonly Group[];
	readonly chosen: boolean;
	readonly onChoose: (on: boolean) => void;
	readonly onDone: (words: string) => void;
}) {
	const [nothing, setNothing] = useState(false);
	const form = useActionForm({
		defaults: { words: "", shows: "" },
		action: (raw) => sayLaterAction({ ...raw, captureIds: [row.id] }),
		onDone: (_, { getValues }) => onDone(`Kept: ${getValues("words")}`),
	});
	const shows = form.form.watch("shows");
	const out = row.comesOut ?? markOf(groups, shows);
	return (
		<>
			<div className="af-later-picture">
				{row.src === null ? (
					row.tag === null ? (
						row.fileName
					) : (
						<TagChip tag={row.tag} size="large" href={`/t/${row.tag}`} says={row.tagOf ?? undefined} />
					)
				) : row.href === null ? (
					<Picture src={row.src} alt={`${KIND[row.kind]} without words yet, taken ${row.taken}`} />
				) : (
					<Link href={row.href}>
						<Picture src={row.src} alt={`${KIND[row.kind]} without words yet, taken ${row.taken}`} />
					</Link>
				)}
			</div>
			<div className="af-later-words">
				<div className="af-later-facts">
					<b>{KIND[row.kind]}</b>
					<span>taken {row.taken}</span>
					{row.tagOf === null ? null : <span>{row.tagOf}</span>}
					{row.known === "" ? null : <span>known to show {row.known}</span>}
				</div>
				<form {...form.formProps} className="af-later-form">
					<FormProblem problem={form.problem} />
					<TextField label="Words" maxLength={4000} {...form.field("words")} id={wordsFieldId(row.id)} />
					{machine === null ? <span /> : <ShowsField offers={row.offers} groups={groups} known={row.known} {...form.field("shows")} />}
					<Button type="submit" pending={form.pending}>
						Keep
					</Button>
				</form>
				<div className="af-later-deeds">
					<CheckField
						label="Choose with others"
						checked={chosen}
						onChange={(event: ChangeEvent<HTMLInputElement>) => onChoose(event.target.checked)}
					/>
					{machine !== null && row.kind === "photo" && out !== null ? (
						<ButtonLink href={`/machines/${machine}/take-out/${encodeURIComponent(out)}?capture=${row.id}`}>This came out then</ButtonLink>
					) : null}
					<Button kind="quiet" aria-expanded={nothing} onClick={() => setNothing(!nothing)}>
						It is nothing
					</Button>
				</div>
				{nothing ? <NothingForm captureIds={[row.id]} onDone={onDone} /> : null}
			</div>
		</>
	);
}

/** The mark of the position that is chosen, if it is one. */
const markOf = (groups: readonly Group[], shows: string): string | null =>
	groups.flatMap(({ options }) => options).find(({ value }) => value === shows)?.mark ?? null;
