import type { Metadata } from "next";
import { Button } from "@/app/ui/button";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Buttons, FormRow, Stack } from "@/app/ui/layouts";
import { Pager } from "@/app/ui/pager";
import { SelectField } from "@/app/ui/selectField";
import { TextField } from "@/app/ui/textField";
import { type Day, dayOf, formatDay, formatInstant, timeOf } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { type HistoryEntry, historyOf, machineHead, writersOf } from "@/lib/ledger/historyQueries";
import { requireShop } from "@/lib/shop/queries";
import { thisMachine } from "../../thisMachine";

export const metadata: Metadata = { title: "History" };

type Props = {
	readonly params: Promise<{ machine: string }>;
	readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
};

const A_PAGE = 50;
const LONGEST_WORD = 100;

export default async function HistoryPage({ params, searchParams }: Props) {
	const machine = await thisMachine((await params).machine);
	const asked = await searchParams;
	const one = (name: string) => [asked[name]].flat()[0]?.trim() ?? "";
	const word = one("word").slice(0, LONGEST_WORD);
	const person = one("by");
	const before = /^\d{1,9}$/.test(one("before")) ? Number(one("before")) : undefined;
	const { read } = await shopStore();
	const [{ timeZone }, writers, head, { entries, next }] = await Promise.all([
		requireShop(read),
		writersOf(read, machine.id),
		machineHead(read, machine.id),
		historyOf(read, machine.id, { word, person, take: A_PAGE, ...(before === undefined ? {} : { before }) }),
	]);
	const here = `/machines/${machine.number}/papers/history`;
	const address = (more: Record<string, string>) => {
		const query = new URLSearchParams({ ...(word ? { word } : {}), ...(person ? { by: person } : {}), ...more }).toString();
		return query ? `${here}?${query}` : here;
	};
	const filtered = word !== "" || person !== "";
	return (
		<Stack>
			<form action={here}>
				<FormRow>
					<TextField label="With the word" optional name="word" defaultValue={word} maxLength={LONGEST_WORD} />
					{writers.length > 1 ? (
						<SelectField
							label="Done by"
							optional
							name="by"
							defaultValue={person}
							none="anyone"
							options={writers.map(({ id, name }) => ({ value: id, label: name }))}
						/>
					) : null}
				</FormRow>
				<Buttons>
					<Button type="submit">Find</Button>
					{filtered ? <ButtonLink href={here}>Show all</ButtonLink> : null}
				</Buttons>
			</form>
			{entries.length === 0 ? (
				filtered ? (
					<Empty title="Nothing found" action={<ButtonLink href={here}>Show all</ButtonLink>}>
						No entry of this machine says that.
					</Empty>
				) : (
					<Empty title="Nothing done yet">Every change to this machine will stand here as a sentence, with who did it and when.</Empty>
				)
			) : (
				daysOf(entries, timeZone).map(({ day, its }) => (
					<Card key={day} title={formatDay(day)}>
						<ol className="flex flex-col gap-2">
							{its.map((entry) => (
								<Line key={entry.seq} entry={entry} timeZone={timeZone} />
							))}
						</ol>
					</Card>
				))
			)}
			{before !== undefined || next !== null ? (
				<Pager
					shown={entries.length === 0 ? "" : `Entries ${entries[0]?.machineSeq} to ${entries.at(-1)?.machineSeq}, newest first`}
					before={before === undefined ? undefined : address({})}
					after={next === null ? undefined : address({ before: String(next) })}
				/>
			) : null}
			{head ? (
				<details className="af-details">
					<summary>How this history can be checked</summary>
					<Stack>
						<p>
							Each line is an entry of the ledger. Its hash (SHA-256) covers what it says and the hash of the entry before it, in the shop
							and in this machine, so that no entry can be changed, left out or put in between without the rest showing it.
						</p>
						<p>
							To check it all, run <code>npx asfound verify</code> beside the data folder. It recomputes every hash, compares every row with
							the last entry that describes it, and names whatever does not agree; with <code>--files</code> it also reads every photo and
							paper again.
						</p>
						<p>
							What the machine was on a day:{" "}
							<code>
								npx asfound show --machine {machine.number} --as-of {dayOf(instant(head.at), timeZone)}
							</code>
						</p>
						<p>
							The last entry, number {head.machineSeq} of {formatInstant(instant(head.at), timeZone)}, has the hash{" "}
							<code className="break-all">{head.hash}</code>. Written down elsewhere, it shows later that nothing before it was rewritten.
						</p>
					</Stack>
				</details>
			) : null}
		</Stack>
	);
}

function Line({ entry: { at, say, by, machineSeq }, timeZone }: { readonly entry: HistoryEntry; readonly timeZone: string }) {
	return (
		<li className="grid grid-cols-[3.5rem_1fr] gap-x-3">
			<time className="tabular-nums" dateTime={at}>
				{timeOf(instant(at), timeZone)}
			</time>
			<div className="min-w-0 break-words">
				{say}
				<span className="af-sub">
					{by} · entry {machineSeq}
				</span>
			</div>
		</li>
	);
}

/** The entries by the shop's days, in their order. */
function daysOf(entries: readonly HistoryEntry[], timeZone: string): { day: Day; its: HistoryEntry[] }[] {
	const days: { day: Day; its: HistoryEntry[] }[] = [];
	for (const entry of entries) {
		const day = dayOf(instant(entry.at), timeZone);
		const last = days.at(-1);
		if (last?.day === day) last.its.push(entry);
		else days.push({ day, its: [entry] });
	}
	return days;
}
