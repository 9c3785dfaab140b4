import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { Badge } from "@/app/ui/badge";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Facts } from "@/app/ui/facts";
import { Columns, Grid, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { SmallStrip } from "@/app/ui/originalityStrip";
import { PageHead } from "@/app/ui/pageHead";
import { Pager } from "@/app/ui/pager";
import { Picture } from "@/app/ui/photoGrid";
import { Segments } from "@/app/ui/segments";
import { Table } from "@/app/ui/table";
import { TagChip } from "@/app/ui/tagChip";
import { shouldBeEmpty } from "@/lib/bags/queries";
import { systemClock } from "@/lib/core/clock";
import { addDays, type Day, dayOf, daysBetween, formatDayShort, timeOf } from "@/lib/core/days";
import { edtfInWords } from "@/lib/core/edtf";
import { type Instant, instant } from "@/lib/core/instants";
import { formatMinutes } from "@/lib/core/minutes";
import { shopStore } from "@/lib/db/shopStore";
import type { Reader } from "@/lib/db/store";
import { cameOf } from "@/lib/deliveries/rules";
import { dueWords, hinderedWords, stateWords } from "@/lib/machines/bench";
import { costWords } from "@/lib/machines/costWords";
import {
	atTheBench,
	type Bench,
	benches,
	capturesWithoutWords,
	inThePost,
	MACHINES_A_PAGE,
	machinesInShop,
	originalsDue,
} from "@/lib/machines/queries";
import { counted } from "@/lib/machines/rules";
import { originFacts } from "@/lib/originality/queries";
import { stripOf } from "@/lib/originality/strip";
import { leadOf, postWords } from "@/lib/purchases/lead";
import { theShop } from "@/lib/shop/queries";

export const metadata: Metadata = { title: "In the shop" };

/** Originals outside are mentioned so many days before they are due. */
const DUE_SOON_DAYS = 7;

export default async function ShopPage({ searchParams }: { searchParams: Promise<Record<string, string | string[] | undefined>> }) {
	const { read } = await shopStore();
	const shop = await theShop(read);
	if (!shop) redirect("/welcome");
	const asked = await searchParams;
	const left = asked.show === "left";
	const page = Math.max(1, Math.floor(Number(asked.page)) || 1);
	const now = systemClock();
	const today = dayOf(now, shop.timeZone);
	const { machines, total } = await machinesInShop(read, page, left);
	const ids = machines.map((machine) => machine.id);
	const [facts, bench, money, leftCount] = await Promise.all([
		originFacts(read, ids),
		benches(read, ids, now),
		costWords(read, ids, today),
		machinesInShop(read, 1, !left).then((other) => other.total),
	]);
	const address = (to: number) => `/?${new URLSearchParams({ ...(left ? { show: "left" } : {}), page: String(to) })}`;
	return (
		<Stack>
			<PageHead
				title={left ? "Left the shop" : "In the shop"}
				actions={
					<ButtonLink href="/machines/new" kind={total === 0 && !left ? "main" : "plain"}>
						Take in a machine
					</ButtonLink>
				}
			/>
			{left || leftCount > 0 ? (
				<Segments
					label="Which machines"
					current={left ? "/?show=left" : "/"}
					options={[
						{ href: "/", label: "In the shop" },
						{ href: "/?show=left", label: "Left" },
					]}
				/>
			) : null}
			{machines.length === 0 ? (
				<Card>
					<Empty
						title={left ? "No machine has left yet" : "No machine in the shop yet"}
						action={
							left ? undefined : (
								<ButtonLink href="/machines/new" kind="main">
									Take in the first machine
								</ButtonLink>
							)
						}
					>
						{left
							? "Machines that were handed over stand here, with their whole record."
							: "Take a machine in before anything is touched: what it is, how it came, and every position as it was found."}
					</Empty>
				</Card>
			) : (
				<Grid>
					{machines.map((machine) => (
						<MachineCard
							key={machine.id}
							machine={machine}
							marks={stripOf(facts.get(machine.id) ?? { positions: [], parts: [] }, "now").flatMap((area) => area.positions)}
							bench={bench.get(machine.id) ?? { next: [], waits: [], planned: 0, begun: false }}
							cost={money.get(machine.id) ?? null}
							now={now}
							timeZone={shop.timeZone}
						/>
					))}
				</Grid>
			)}
			{total > MACHINES_A_PAGE ? (
				<Pager
					shown={`${(page - 1) * MACHINES_A_PAGE + 1} to ${Math.min(total, page * MACHINES_A_PAGE)} of ${total}`}
					before={page > 1 ? address(page - 1) : undefined}
					after={page * MACHINES_A_PAGE < total ? address(page + 1) : undefined}
				/>
			) : null}
			{left || total === 0 ? null : (
				<Columns even>
					<AtTheBench read={read} timeZone={shop.timeZone} />
					<MindThese read={read} today={today} />
				</Columns>
			)}
		</Stack>
	);
}

type Machine = Awaited<ReturnType<typeof machinesInShop>>["machines"][number];

function MachineCard({
	machine,
	marks,
	bench,
	cost,
	now,
	timeZone,
}: {
	machine: Machine;
	marks: readonly { readonly id: string; readonly state: Parameters<typeof SmallStrip>[0]["marks"][number]["state"] }[];
	bench: Bench;
	cost: string | null;
	now: Instant;
	timeZone: string;
}) {
	const next = bench.next[0];
	const state = stateWords(
		machine,
		{
			clockRuns: next?.clockRuns ?? false,
			anyReady: bench.next.some((step) => step.hindered.length === 0),
			firstWait: bench.waits[0] ?? null,
			begun: bench.begun,
		},
		now,
		timeZone,
	);
	const unseen = marks.filter((mark) => mark.state === "unseen").length;
	const href = `/machines/${machine.number}`;
	return (
		<Card photo={machine.portraitSha === null ? undefined : <Picture src={`/files/${machine.portraitSha}/small`} alt="" />}>
			<div className="af-pagehead-above justify-between">
				<TagChip tag={String(machine.number)} says="the machine's number" />
				<Badge means={state.means}>{state.words}</Badge>
			</div>
			<h2>
				<Link href={href}>{machine.name}</Link>
			</h2>
			<p className="af-sub">{[machine.kind, machine.made === null ? "" : edtfInWords(machine.made)].filter(Boolean).join(" · ")}</p>
			<div className="my-3">
				<SmallStrip label="Originality now" marks={marks} />
			</div>
			<Facts
				facts={[
					{
						label: "Next",
						value: next ? (
							<>
								<Link href={`${href}/work/${next.number}`}>
									<b>{next.title}</b>
								</Link>
								, {formatMinutes(next.likelyMinutes)}
								{next.hindered.length > 0 ? <span className="af-sub">waits: {hinderedWords(next.hindered, now, timeZone)}</span> : null}
							</>
						) : machine.state === "intake" ? (
							<Link href={`${href}/build`}>
								{marks.length === 0
									? "Record what was found"
									: unseen > 0
										? `Look at ${counted(unseen, "position")} not seen yet`
										: "Stamp as found"}
							</Link>
						) : (
							"nothing planned"
						),
					},
					{ label: "Cost", value: cost },
				]}
			/>
		</Card>
	);
}

async function AtTheBench({ read, timeZone }: { read: Reader; timeZone: string }) {
	const running = await atTheBench(read);
	return (
		<Card title="At the bench now">
			<Table
				caption="Whose clock is running, and on what"
				rows={running}
				rowKey={(work) => work.id}
				empty={<p className="af-lead">Nobody's clock is running. Start one on a step, and it shows here.</p>}
				columns={[
					{ key: "who", head: "Who", main: true, cell: (work) => work.person.name },
					{
						key: "what",
						head: "Now",
						cell: (work) => (
							<>
								<TagChip size="small" tag={String(work.machine.number)} href={`/machines/${work.machine.number}`} />{" "}
								<Link href={`/machines/${work.machine.number}/work/${work.step.number}`}>{work.step.title}</Link>
							</>
						),
					},
					{ key: "since", head: "Since", align: "right", cell: (work) => timeOf(instant(work.startedAt), timeZone) },
				]}
			/>
		</Card>
	);
}

type Mind = {
	readonly id: string;
	readonly word: string;
	readonly means: "stop" | "wait" | "plain";
	readonly what: React.ReactNode;
	readonly says: React.ReactNode;
};

async function MindThese({ read, today }: { read: Reader; today: Day }) {
	const [due, bags, captures, post] = await Promise.all([
		originalsDue(read, addDays(today, DUE_SOON_DAYS)),
		shouldBeEmpty(read),
		capturesWithoutWords(read),
		inThePost(read),
	]);
	const rows: Mind[] = [
		...due.map((part): Mind => {
			const when = part.dueDay as Day;
			const words = dueWords(when, today, daysBetween(when, today));
			return {
				id: part.id,
				word: words.late ? `outside, ${words.words}` : "outside",
				means: words.late ? "stop" : "wait",
				what: part.tag ? <TagChip size="small" tag={part.tag.id} href={`/t/${part.tag.id}`} /> : null,
				says: `${part.name}${part.party ? ` with ${part.party.name}` : ""}, due ${formatDayShort(when)}`,
			};
		}),
		...bags.map(
			(bag): Mind => ({
				id: bag.bagId,
				word: "should be empty",
				means: "wait",
				what: <TagChip size="small" tag={bag.tag} href={`/t/${bag.tag}`} />,
				says: `${bag.words === "" ? "Bag" : bag.words} still holds ${bag.things[0]}${bag.things.length > 1 ? ` and ${bag.things.length - 1} more` : ""}`,
			}),
		),
		...post.map((order): Mind => {
			const still = order.lines.filter((line) => cameOf(line, null, line.deliveries) < line.count);
			const { words, late } = postWords(order.orderedDay as Day, leadOf(order), today);
			return {
				id: `order-${order.number}`,
				word: late ? "in the post, late" : "in the post",
				means: late ? "stop" : "wait",
				what: <Link href={`/buying/${order.number}`}>order {order.number}</Link>,
				says: `${still
					.slice(0, 3)
					.map((line) => line.what)
					.join(", ")}${still.length > 3 ? ` and ${still.length - 3} more` : ""}, ${words}`,
			};
		}),
		...captures.map(
			(group): Mind => ({
				id: `captures-${group.number ?? "shop"}`,
				word: "no words yet",
				means: "plain",
				what:
					group.number === null ? (
						<Link href="/later">{counted(group.count, "photo or scan", "photos and scans")}</Link>
					) : (
						<Link href={`/later?machine=${group.number}`}>{counted(group.count, "photo or scan", "photos and scans")}</Link>
					),
				says: `of ${group.name}`,
			}),
		),
	];
	return (
		<Card title="Mind these">
			<Table
				caption="What wants attention"
				rows={rows}
				rowKey={(row) => row.id}
				empty={<p className="af-lead">Nothing late, nothing left in a bag, nothing without words.</p>}
				columns={[
					{ key: "word", head: "Why", hideHead: true, cell: (row) => <Badge means={row.means}>{row.word}</Badge> },
					{ key: "what", head: "What", hideHead: true, main: true, cell: (row) => row.what },
					{ key: "says", head: "Words", hideHead: true, cell: (row) => row.says },
				]}
			/>
		</Card>
	);
}
