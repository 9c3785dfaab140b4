import type { Metadata } from "next";
import type { CSSProperties, ReactNode } from "react";
import { Button } from "@/app/ui/button";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { DayField } from "@/app/ui/dayField";
import { Empty } from "@/app/ui/empty";
import { Buttons, Columns, FormRow, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { OriginalityMark } from "@/app/ui/originalityMark";
import { Pager } from "@/app/ui/pager";
import { Segments } from "@/app/ui/segments";
import { SelectField } from "@/app/ui/selectField";
import { type Column, Table } from "@/app/ui/table";
import { TagChip } from "@/app/ui/tagChip";
import { TextField } from "@/app/ui/textField";
import { systemClock } from "@/lib/core/clock";
import { addDays, type Day, dayOf, formatDay, formatInstant, isDay, startOfDay } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { formatFixings } from "@/lib/fixings/fixingWords";
import { machineChoices } from "@/lib/machines/queries";
import { counted } from "@/lib/machines/rules";
import { type BuildPart, type BuildRow, buildRows, type Which } from "@/lib/positions/build";
import { buildFacts } from "@/lib/positions/buildQueries";
import {
	type BuildView,
	isWholeTree,
	rowsShown,
	SHOWS,
	SHOWS_WORDS,
	SORTS,
	SORTS_WORDS,
	type Sort,
	viewAsked,
} from "@/lib/positions/buildView";
import { requireShop } from "@/lib/shop/queries";
import { thisMachine } from "../thisMachine";
import { AddPositionsForm, CopyBuildForm } from "./addPositions";
import { HoldsCell, Whereabouts } from "./partCell";
import { StampButton } from "./stampButton";

export const metadata: Metadata = { title: "Build" };

type Search = Record<string, string | string[] | undefined>;
type Props = { readonly params: Promise<{ machine: string }>; readonly searchParams: Promise<Search> };

/** Rows on one page; only the very largest machines have a second. */
const ROWS_A_PAGE = 500;

export default async function BuildPage({ params, searchParams }: Props) {
	const machine = await thisMachine((await params).machine);
	const asked = await searchParams;
	const { read } = await shopStore();
	const { timeZone } = await requireShop(read);
	const [facts, machines] = await Promise.all([buildFacts(read, machine.id), machineChoices(read)]);
	const base = `/machines/${machine.number}/build`;
	const today = dayOf(systemClock(), timeZone);
	const state = [asked.state].flat()[0];
	const dayAsked = [asked.day].flat()[0] ?? "";
	const wantedDay = isDay(dayAsked) ? dayAsked : today;
	// Before it came nobody of the shop saw it, and what is to come nobody knows.
	const isKnownDay = wantedDay >= machine.receivedDay && wantedDay <= today;
	const onDay = state === "day" ? (isKnownDay ? wantedDay : today) : null;
	const which: Which =
		onDay !== null
			? { state: "at", before: startOfDay(addDays(onDay, 1), timeZone) }
			: state === "as-found"
				? { state: "as-found" }
				: { state: "now" };
	const view = viewAsked(asked);
	const all = buildRows(facts, which);
	const rows = rowsShown(all, view);
	const page = Math.max(1, Math.floor(Number([asked.page].flat()[0])) || 1);
	const shown = withLooseHeads(rows.slice((page - 1) * ROWS_A_PAGE, page * ROWS_A_PAGE), view);
	const unseen = all.filter((row) => row.state === "unseen").length;
	const stateQuery: Record<string, string> =
		onDay !== null ? { state: "day", day: onDay } : state === "as-found" ? { state: "as-found" } : {};
	const viewQuery: Record<string, string> = {
		...(view.shows === "all" ? {} : { show: view.shows }),
		...(view.word === "" ? {} : { word: view.word }),
		...(view.area === "" ? {} : { area: view.area }),
	};
	const address = (more: Record<string, string>) => withQuery(base, { ...stateQuery, ...viewQuery, ...more });
	const areas = [...new Set(all.map((row) => row.area).filter(Boolean))];
	const others = machines.filter((other) => other.id !== machine.id && other._count.positions > 0);
	const stamped = machine.asFoundAt !== null;
	const table = (
		<Stack>
			{all.length > 0 ? <Filter base={base} view={view} stateQuery={stateQuery} areas={areas} /> : null}
			<Card flush>
				<Table
					className="af-tree"
					caption={`The build ${onDay !== null ? `on ${formatDay(onDay)}` : state === "as-found" ? "as found" : "now"}`}
					rows={shown}
					rowKey={(row) => row.key}
					rowStyle={(row) => ({ "--depth": Math.min(row.depth, 6) }) as CSSProperties}
					empty={
						all.length === 0 ? (
							<Empty title={onDay === null ? "No positions yet" : `Nothing was fitted by ${formatDay(onDay)}`}>
								{onDay === null
									? "A position is a named place that can hold a part. Write them down as you see them, before anything is touched."
									: "Choose a later day."}
							</Empty>
						) : (
							<Empty title="None of that kind" action={<ButtonLink href={withQuery(base, stateQuery)}>Show every position</ButtonLink>}>
								No position is {SHOWS_WORDS[view.shows]}
								{view.word === "" ? "" : ` with “${view.word}” in it`}.
							</Empty>
						)
					}
					columns={columnsOf(base, view, address, timeZone)}
				/>
			</Card>
			{rows.length > ROWS_A_PAGE ? (
				<Pager
					shown={`${(page - 1) * ROWS_A_PAGE + 1} to ${Math.min(rows.length, page * ROWS_A_PAGE)} of ${rows.length}`}
					before={page > 1 ? address({ page: String(page - 1) }) : undefined}
					after={page * ROWS_A_PAGE < rows.length ? address({ page: String(page + 1) }) : undefined}
				/>
			) : null}
		</Stack>
	);
	const adding = <AddPositionsForm machineId={machine.id} stamped={stamped} />;
	return (
		<Stack>
			<div className="af-pagehead-above justify-between">
				<Segments
					label="Which state of the machine"
					current={onDay !== null ? withQuery(base, { state: "day", day: onDay }) : withQuery(base, stateQuery)}
					options={[
						{ href: base, label: "Now" },
						{ href: withQuery(base, { state: "as-found" }), label: "As found" },
						{ href: withQuery(base, { state: "day", day: onDay ?? today }), label: onDay === null ? "A day" : formatDay(onDay) },
					]}
				/>
				{stamped && onDay === null && which.state === "now" ? (
					<Buttons>
						<ButtonLink href={`/machines/${machine.number}/take-out`}>Take out</ButtonLink>
						<ButtonLink href={`/machines/${machine.number}/put-in`}>Put in</ButtonLink>
					</Buttons>
				) : null}
				<span>
					{counted(all.length, "position")}
					{unseen > 0 ? (
						<>
							{" · "}
							<Link href={withQuery(base, { ...stateQuery, show: "unseen" })}>{unseen} not seen yet</Link>
						</>
					) : null}
				</span>
			</div>
			{onDay !== null && !isKnownDay ? (
				<Notice means="wait">
					The record knows the machine from {formatDay(machine.receivedDay as Day)}, when it came in, until today. This is today.
				</Notice>
			) : null}
			{onDay === null ? null : (
				<form action={base}>
					<FormRow>
						<DayField label="As it was at the end of" name="day" defaultValue={onDay} min={machine.receivedDay} max={today} />
						<span>
							<input type="hidden" name="state" value="day" />
							<Button type="submit">Show that day</Button>
						</span>
					</FormRow>
				</form>
			)}
			{which.state === "as-found" ? (
				<p className="af-lead">
					{machine.asFoundAt === null
						? "The as found record is still open."
						: `Stamped on ${formatInstant(instant(machine.asFoundAt), timeZone)}. What was learnt since is in it, and told apart on each position's page.`}
				</p>
			) : null}
			{stamped ? (
				<>
					{table}
					<Card id="add">
						<details className="af-details">
							<summary>Add positions</summary>
							{adding}
						</details>
					</Card>
				</>
			) : (
				<Columns>
					{table}
					<Stack>
						<Card title="Add positions" id="add">
							{adding}
							{others.length > 0 && all.length === 0 ? (
								<details className="af-details">
									<summary>From another machine</summary>
									<CopyBuildForm
										machineId={machine.id}
										machines={others.map((other) => ({
											id: other.id,
											label: `${other.number} ${other.name}, ${counted(other._count.positions, "position")}`,
										}))}
									/>
								</details>
							) : null}
						</Card>
						{all.length === 0 ? null : (
							<Card title="As found">
								<p className="mb-3">
									Stamp it when everything that can be seen without a tool is written down. Work begins after it.
									{unseen > 0 ? ` ${counted(unseen, "position is", "positions are")} not seen yet; that may stay so.` : ""}
								</p>
								<StampButton machineId={machine.id} positions={all.length} unseen={unseen} />
							</Card>
						)}
					</Stack>
				</Columns>
			)}
		</Stack>
	);
}

const withQuery = (path: string, query: Record<string, string>): string => {
	const text = new URLSearchParams(query).toString();
	return text === "" ? path : `${path}?${text}`;
};

type Shown = { readonly key: string; readonly depth: number } & (
	| { readonly kind: "position"; readonly row: BuildRow }
	| { readonly kind: "loose"; readonly part: BuildPart }
);

/** The rows, and over those of each loose assembly a row that names it. */
function withLooseHeads(rows: readonly BuildRow[], view: BuildView): Shown[] {
	const shown: Shown[] = [];
	let assembly: string | null = null;
	for (const row of rows) {
		if (isWholeTree(view) && row.looseOn !== null && row.looseOn.id !== assembly) {
			shown.push({ key: `loose-${row.looseOn.id}`, depth: 0, kind: "loose", part: row.looseOn });
		}
		assembly = row.looseOn?.id ?? null;
		shown.push({ key: row.id, depth: row.depth, kind: "position", row });
	}
	return shown;
}

function columnsOf(base: string, view: BuildView, address: (more: Record<string, string>) => string, timeZone: string): Column<Shown>[] {
	/** A head leads to up, then down, then back to the order of building. */
	const sort = (by: Sort) => {
		const now = view.sort !== by ? undefined : view.down ? ("down" as const) : ("up" as const);
		const more: Record<string, string> = now === undefined ? { sort: by } : now === "up" ? { sort: by, down: "1" } : {};
		return { href: address(more), now };
	};
	const ofPosition = (cell: (row: BuildRow) => ReactNode) => (shown: Shown) => (shown.kind === "position" ? cell(shown.row) : null);
	return [
		{
			key: "position",
			head: "Position",
			main: true,
			sort: sort("name"),
			cell: (shown) =>
				shown.kind === "loose" ? (
					<span className="af-treecell" data-host="">
						<span>{shown.part.name}, not in the machine</span>
					</span>
				) : (
					<span className="af-treecell" data-host={shown.row.hosts ? "" : undefined}>
						{shown.row.state === null ? null : <OriginalityMark state={shown.row.state} says={shown.row.says} />}
						<span>
							{shown.depth > 0 ? <span className="sr-only">level {shown.depth + 1}: </span> : null}
							<Link href={`${base}/${encodeURIComponent(shown.row.mark)}`}>{shown.row.name}</Link>{" "}
							<code className="text-(--ink-2) text-sm">{shown.row.mark}</code>
						</span>
					</span>
				),
		},
		{
			key: "holds",
			head: "Holds",
			sort: sort("holds"),
			cell: (shown) =>
				shown.kind === "position" ? (
					<HoldsCell row={shown.row} timeZone={timeZone} />
				) : (
					<>
						{shown.part.tag ? <TagChip size="small" tag={shown.part.tag} href={`/t/${shown.part.tag}`} /> : null}{" "}
						<Whereabouts part={shown.part} timeZone={timeZone} />
					</>
				),
		},
		{ key: "held-by", head: "Held by", cell: ofPosition((row) => formatFixings(row.fixings)) },
		{
			key: "behind",
			head: "Behind",
			sort: sort("behind"),
			cell: ofPosition((row) =>
				row.behind.map(({ side, parts }) => `${side === "" ? "" : `${side}: `}${parts.map((part) => part.name).join(", ")}`).join("; "),
			),
		},
	];
}

function Filter({
	base,
	view,
	stateQuery,
	areas,
}: {
	readonly base: string;
	readonly view: BuildView;
	readonly stateQuery: Record<string, string>;
	readonly areas: readonly string[];
}) {
	return (
		<details className="af-details" open={!isWholeTree(view)}>
			<summary>Show some of them</summary>
			<form action={base}>
				{Object.entries(stateQuery).map(([name, value]) => (
					<input key={name} type="hidden" name={name} value={value} />
				))}
				<FormRow>
					<SelectField
						label="Which"
						name="show"
						defaultValue={view.shows}
						options={SHOWS.map((shows) => ({ value: shows, label: SHOWS_WORDS[shows] }))}
					/>
					{areas.length > 1 ? (
						<SelectField
							label="Area"
							name="area"
							defaultValue={view.area}
							none="the whole machine"
							options={areas.map((area) => ({ value: area, label: area }))}
						/>
					) : null}
					<TextField label="With the word" optional name="word" defaultValue={view.word} />
					<SelectField
						label="In the order"
						name="sort"
						defaultValue={view.sort}
						options={SORTS.map((sort) => ({ value: sort, label: SORTS_WORDS[sort] }))}
					/>
				</FormRow>
				<Button type="submit">Show</Button>
			</form>
		</details>
	);
}
