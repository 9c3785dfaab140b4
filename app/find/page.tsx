import type { Metadata } from "next";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { PageHead } from "@/app/ui/pageHead";
import { Table } from "@/app/ui/table";
import { TagChip } from "@/app/ui/tagChip";
import { whereBagIs, whereIs } from "@/lib/bags/queries";
import { shopStore } from "@/lib/db/shopStore";
import type { Reader } from "@/lib/db/store";
import { findByWords, MOST_FOUND, tagsMeant, wanted } from "@/lib/machines/find";
import { machineByNumber } from "@/lib/machines/queries";
import { counted } from "@/lib/machines/rules";
import { locationPath } from "@/lib/store/queries";
import { FindScan } from "./findScan";

export const metadata: Metadata = { title: "Find" };

export default async function FindPage({ searchParams }: { searchParams: Promise<{ q?: string | string[] }> }) {
	const { q } = await searchParams;
	const typed = (Array.isArray(q) ? q[0] : q) ?? "";
	const want = wanted(typed);
	if (want.to === "tag") redirect(`/t/${want.tag}`);
	const { read } = await shopStore();
	if (want.to === "machine" && (await machineByNumber(read, want.number))) redirect(`/machines/${want.number}`);
	if (want.to === "nothing") {
		return (
			<Card>
				<FindScan />
				<Empty title="Nothing typed yet">
					Type a tag such as 12-0147-K, a machine's number, or any word of a name, in the field at the top.
				</Empty>
			</Card>
		);
	}
	const words = want.to === "words" ? want.words : [String(want.number)];
	const [found, meant] = await Promise.all([findByWords(read, words), tagsMeant(read, typed)]);
	const where = await whereabouts(read, found);
	const total = Object.values(found).reduce((sum, kind) => sum + kind.rows.length, 0);
	const more = Object.values(found).some((kind) => kind.more);
	return (
		<Stack>
			<PageHead
				title={`“${typed.trim().slice(0, 80)}”`}
				lead={`${counted(total, "thing")} found${more ? ", and more: add a word to narrow it" : ""}`}
			/>
			{meant.length > 0 ? (
				<Notice means="wait" live="off" title="Did you mean one of these tags?">
					<p className="af-buttons">
						{meant.map((tag) => (
							<TagChip key={tag} tag={tag} href={`/t/${tag}`} />
						))}
					</p>
				</Notice>
			) : null}
			{total === 0 ? (
				<Card>
					<FindScan />
					<Empty title="Nothing found">
						Every word must occur in the name of a machine, position, part, fixing, bag, step or place. Try fewer words, or the tag.
					</Empty>
				</Card>
			) : null}
			<Found title="Machines" found={found.machines}>
				{(rows) => (
					<Table
						caption="Machines found"
						rows={rows}
						rowKey={(machine) => machine.id}
						columns={[
							{
								key: "tag",
								head: "Number",
								cell: (machine) => <TagChip size="small" tag={String(machine.number)} href={`/machines/${machine.number}`} />,
							},
							{
								key: "name",
								head: "Name",
								main: true,
								cell: (machine) => <Link href={`/machines/${machine.number}`}>{machine.name}</Link>,
							},
							{ key: "kind", head: "Kind", cell: (machine) => machine.kind },
						]}
					/>
				)}
			</Found>
			<Found title="Parts" found={found.parts}>
				{(rows) => (
					<Table
						caption="Parts found"
						rows={rows}
						rowKey={(part) => part.id}
						columns={[
							{
								key: "tag",
								head: "Tag",
								cell: (part) => (part.tag ? <TagChip size="small" tag={part.tag.id} href={`/t/${part.tag.id}`} /> : null),
							},
							{
								key: "name",
								head: "Name",
								main: true,
								cell: (part) =>
									part.tag ? (
										<Link href={`/t/${part.tag.id}`}>{part.count > 1 ? `${part.count} × ${part.name}` : part.name}</Link>
									) : (
										part.name
									),
							},
							{ key: "origin", head: "Origin", cell: (part) => part.origin },
							{ key: "place", head: "Where", cell: (part) => where.get(part.id) ?? PLACE_WORDS[part.place] },
							{ key: "machine", head: "Machine", cell: (part) => <OfMachine machine={part.machine} /> },
						]}
					/>
				)}
			</Found>
			<Found title="Positions" found={found.positions}>
				{(rows) => (
					<Table
						caption="Positions found"
						rows={rows}
						rowKey={(position) => position.id}
						columns={[
							{ key: "mark", head: "Mark", cell: (position) => position.mark },
							{
								key: "name",
								head: "Name",
								main: true,
								cell: (position) => (
									<Link href={`/machines/${position.machine.number}/build/${encodeURIComponent(position.mark)}`}>{position.name}</Link>
								),
							},
							{ key: "area", head: "Area", cell: (position) => position.area },
							{ key: "machine", head: "Machine", cell: (position) => <OfMachine machine={position.machine} /> },
						]}
					/>
				)}
			</Found>
			<Found title="Fixings" found={found.fixings}>
				{(rows) => (
					<Table
						caption="Fixings found"
						rows={rows}
						rowKey={(fixing) => fixing.id}
						columns={[
							{
								key: "tag",
								head: "Bag",
								cell: (fixing) =>
									fixing.bag?.tag ? <TagChip size="small" tag={fixing.bag.tag.id} href={`/t/${fixing.bag.tag.id}`} /> : null,
							},
							{
								key: "words",
								head: "What",
								main: true,
								cell: (fixing) => (fixing.bag?.tag ? <Link href={`/t/${fixing.bag.tag.id}`}>{fixing.words}</Link> : fixing.words),
							},
							{
								key: "of",
								head: "Of",
								cell: (fixing) => (
									<>
										{fixing.homes.map((home, at) => (
											<span key={home.mark}>
												{at > 0 ? ", " : ""}
												<Link href={`/machines/${home.machineNumber}/build/${encodeURIComponent(home.mark)}`}>{home.name}</Link>
											</span>
										))}
									</>
								),
							},
							{ key: "where", head: "Where", cell: (fixing) => where.get(fixing.id) ?? FIXING_WORDS[fixing.place] },
							{ key: "machine", head: "Machine", cell: (fixing) => <OfMachine machine={fixing.machine} /> },
						]}
					/>
				)}
			</Found>
			<Found title="Bags" found={found.bags}>
				{(rows) => (
					<Table
						caption="Bags found"
						rows={rows}
						rowKey={(bag) => bag.id}
						columns={[
							{
								key: "tag",
								head: "Tag",
								cell: (bag) => (bag.tag ? <TagChip size="small" tag={bag.tag.id} href={`/t/${bag.tag.id}`} /> : null),
							},
							{
								key: "words",
								head: "Words on it",
								main: true,
								cell: (bag) => (bag.tag ? <Link href={`/t/${bag.tag.id}`}>{bag.words}</Link> : bag.words),
								sub: (bag) => (bag.isEmpty ? "empty now" : null),
							},
							{ key: "role", head: "Role", cell: (bag) => bag.role },
							{ key: "where", head: "Where", cell: (bag) => where.get(bag.id) },
						]}
					/>
				)}
			</Found>
			<Found title="Places" found={found.places}>
				{(rows) => (
					<Table
						caption="Places found"
						rows={rows}
						rowKey={(place) => place.id}
						columns={[
							{
								key: "tag",
								head: "Tag",
								cell: (place) => (place.tag ? <TagChip size="small" tag={place.tag.id} href={`/t/${place.tag.id}`} /> : null),
							},
							{ key: "name", head: "Place", main: true, cell: (place) => <Link href={`/store/${place.id}`}>{place.name}</Link> },
							{ key: "kind", head: "It is", cell: (place) => place.kind },
							{ key: "where", head: "Where", cell: (place) => where.get(place.id) },
						]}
					/>
				)}
			</Found>
			<Found title="Steps" found={found.steps}>
				{(rows) => (
					<Table
						caption="Steps found"
						rows={rows}
						rowKey={(step) => step.id}
						columns={[
							{ key: "number", head: "Step", align: "right", cell: (step) => step.number },
							{
								key: "title",
								head: "What",
								main: true,
								cell: (step) => <Link href={`/machines/${step.machine.number}/work/${step.number}`}>{step.title}</Link>,
							},
							{ key: "state", head: "State", cell: (step) => step.state },
							{ key: "machine", head: "Machine", cell: (step) => <OfMachine machine={step.machine} /> },
						]}
					/>
				)}
			</Found>
		</Stack>
	);
}

/** Where what was found lies, as the way through the shop; what lies nowhere in it is left out. */
async function whereabouts(
	read: Reader,
	{ parts, bags, fixings, places }: Awaited<ReturnType<typeof findByWords>>,
): Promise<ReadonlyMap<string, string>> {
	const lying = parts.rows.filter(({ place }) => place === "bag" || place === "location" || place === "bench");
	const bagged = fixings.rows.flatMap(({ id, bag }) => (bag ? [{ id, bagId: bag.id, locationId: null }] : []));
	const ofThings = [...lying, ...bagged].map(async (thing) => [thing.id, (await whereIs(read, thing)).words] as const);
	const ofBags = bags.rows.map(async ({ id }) => [id, (await whereBagIs(read, id)).words] as const);
	const ofPlaces = places.rows.map(async ({ id }) => [id, (await locationPath(read, id)) ?? ""] as const);
	return new Map(await Promise.all([...ofThings, ...ofBags, ...ofPlaces]));
}

const FIXING_WORDS = {
	home: "holding it",
	bag: "in a bag",
	bench: "on the bench",
	left: "left in its hole, or on the part",
	lost: "lost",
	scrapped: "scrapped",
} as const;

const PLACE_WORDS = {
	fitted: "fitted",
	bag: "in a bag",
	location: "on a shelf",
	bench: "on the bench",
	out: "outside the shop",
	sold: "sold",
	lost: "lost",
	scrapped: "scrapped",
	void: "struck out",
} as const;

function OfMachine({ machine }: { readonly machine: { readonly number: number; readonly name: string } }) {
	return (
		<Link href={`/machines/${machine.number}`}>
			{machine.number} {machine.name}
		</Link>
	);
}

function Found<Row>({
	title,
	found,
	children,
}: {
	readonly title: string;
	readonly found: { readonly rows: readonly Row[]; readonly more: boolean };
	readonly children: (rows: readonly Row[]) => ReactNode;
}) {
	if (found.rows.length === 0) return null;
	return (
		<Card title={title} aside={found.more ? `the first ${MOST_FOUND}` : found.rows.length}>
			{children(found.rows)}
		</Card>
	);
}
