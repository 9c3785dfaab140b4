import type { Metadata } from "next";
import { FindScan } from "@/app/find/findScan";
import { Badge } from "@/app/ui/badge";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { PageHead } from "@/app/ui/pageHead";
import { Table } from "@/app/ui/table";
import { TagChip } from "@/app/ui/tagChip";
import { shouldBeEmpty } from "@/lib/bags/queries";
import { isNotFound } from "@/lib/bags/rules";
import { systemClock } from "@/lib/core/clock";
import { dayOf, formatDayShort } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { requireShop } from "@/lib/shop/queries";
import { bagsOut, type LastCount, lastCounts, lostParts, notPutAway, outside, pathsOf, placesInOrder } from "@/lib/store/queries";
import { unseenSince } from "@/lib/store/unseen";
import "@/app/machines/[machine]/bench.css";
import { AddPlaceForm } from "./forms";
import { Due, Things, thingsOf } from "./things";

export const metadata: Metadata = { title: "Store" };

/** What lies where, what is outside, what should be empty by now, and what is not put away. */
export default async function StorePage() {
	const { read } = await shopStore();
	const [shop, places, out, leftOver, bench, bagsAway, lost, counts] = await Promise.all([
		requireShop(read),
		placesInOrder(read),
		outside(read),
		shouldBeEmpty(read),
		notPutAway(read),
		bagsOut(read),
		lostParts(read),
		lastCounts(read),
	]);
	const today = dayOf(systemClock(), shop.timeZone);
	const late = out.filter((part) => part.dueDay !== null && part.dueDay < today);
	const options = pathsOf(places).map((place) => ({ value: place.id, label: place.path }));
	const loose = thingsOf(bench.bags, bench.parts);
	const away = thingsOf(
		bagsAway.filter(({ placeWhy }) => !isNotFound(placeWhy)),
		[],
	);
	const notFound = thingsOf(
		bagsAway.filter(({ placeWhy }) => isNotFound(placeWhy)),
		[],
	);
	const gone = thingsOf([], lost);
	const unseen = await unseenSince(read, counts);
	const pathOf = new Map(options.map(({ value, label }) => [value, label]));
	return (
		<Stack>
			<PageHead
				title="Store"
				lead="What lies where, in the order of walking."
				figures={[
					{
						value: String(leftOver.length),
						label: "bags that should be empty",
						...(leftOver.length > 0 ? { means: "stop" as const } : {}),
					},
					{
						value: String(out.length),
						label: late.length > 0 ? `outside the shop, ${late.length} past due` : "outside the shop",
						...(late.length > 0 ? { means: "stop" as const } : {}),
					},
				]}
				actions={
					<>
						<ButtonLink kind="main" href="/store/move">
							Put away
						</ButtonLink>
						<ButtonLink href="/labels">Print labels</ButtonLink>
					</>
				}
			/>
			<Card title="Where is">
				<FindScan label="Its tag, its name or a word" />
			</Card>
			{leftOver.length > 0 ? (
				<Card title="Should be empty by now" aside="their place in the machine is filled again" id="left-over">
					<Table
						caption="Holding bags that are not empty although the machine is together again"
						rows={leftOver}
						rowKey={(bag) => bag.bagId}
						columns={[
							{ key: "words", head: "Bag", main: true, cell: (bag) => <Link href={`/t/${bag.tag}`}>{bag.words}</Link> },
							{ key: "tag", head: "Tag", cell: (bag) => <TagChip tag={bag.tag} href={`/t/${bag.tag}`} size="small" says={bag.words} /> },
							{ key: "things", head: "Still in it", cell: (bag) => bag.things.join("; ") },
							{ key: "machine", head: "Machine", cell: (bag) => (bag.machine ? `${bag.machine.number} ${bag.machine.name}` : "the shop") },
						]}
					/>
				</Card>
			) : null}
			{out.length > 0 ? (
				<Card title="Outside the shop" id="outside">
					<Table
						caption="Parts outside the shop, those due first, first"
						rows={out}
						rowKey={(part) => part.id}
						columns={[
							{
								key: "name",
								head: "Part",
								main: true,
								cell: (part) => (part.tag ? <Link href={`/t/${part.tag}`}>{part.name}</Link> : part.name),
								sub: (part) => part.why,
							},
							{
								key: "tag",
								head: "Tag",
								cell: (part) => (part.tag ? <TagChip tag={part.tag} href={`/t/${part.tag}`} size="small" says={part.name} /> : "none"),
							},
							{
								key: "origin",
								head: "Origin",
								cell: (part) => <Badge means={part.origin === "original" ? "original" : "plain"}>{part.origin}</Badge>,
							},
							{ key: "party", head: "Who has it", cell: (part) => part.party ?? "nobody named" },
							{ key: "since", head: "Since", cell: (part) => formatDayShort(dayOf(instant(part.sinceAt), shop.timeZone)) },
							{ key: "due", head: "Due", cell: (part) => <Due day={part.dueDay} today={today} /> },
						]}
					/>
				</Card>
			) : null}
			{away.length > 0 ? (
				<Card title="Bags outside the shop" id="bags-out" aside={String(away.length)}>
					<Things caption="Bags out of the shop, the longest first" things={away} timeZone={shop.timeZone} empty={null} />
				</Card>
			) : null}
			{notFound.length > 0 ? (
				<Card title="Bags not found" id="not-found" aside={String(notFound.length)}>
					<Things caption="Bags that are missing, the longest first" things={notFound} timeZone={shop.timeZone} empty={null} />
				</Card>
			) : null}
			{unseen.length > 0 ? (
				<Card title="Not seen at the last count" id="not-seen" aside={String(unseen.length)}>
					<Table
						caption="What the last count of its place did not see, and was not moved since"
						rows={unseen}
						rowKey={(thing) => thing.tag}
						columns={[
							{ key: "name", head: "Thing", main: true, cell: (thing) => <Link href={`/t/${thing.tag}`}>{thing.name}</Link> },
							{
								key: "tag",
								head: "Tag",
								cell: (thing) => <TagChip tag={thing.tag} href={`/t/${thing.tag}`} size="small" says={thing.name} />,
							},
							{
								key: "place",
								head: "Should lie on",
								cell: (thing) => <Link href={`/store/${thing.locationId}`}>{pathOf.get(thing.locationId) ?? "its place"}</Link>,
							},
							{ key: "counted", head: "Counted", cell: (thing) => formatDayShort(dayOf(instant(thing.at), shop.timeZone)) },
						]}
					/>
				</Card>
			) : null}
			<Columns>
				<Stack>
					<Card title="Places" aside={places.length === 0 ? undefined : String(places.length)}>
						<Table
							caption="Places in the shop, in the order of walking"
							stack="never"
							rows={places}
							rowKey={(place) => place.id}
							empty={
								<Empty title="No place yet">
									A room, its racks, their shelves: add them once, and every bag has somewhere to be found.
								</Empty>
							}
							columns={[
								{
									key: "name",
									head: "Place",
									main: true,
									cell: (place) => (
										<span style={{ paddingInlineStart: `${Math.min(place.depth, 6) * 1.1}rem` }}>
											{place.depth > 0 ? <span className="sr-only">level {place.depth + 1}: </span> : null}
											<Link className="inline-block py-1" href={`/store/${place.id}`}>
												{place.name}
											</Link>
											<span className="sr-only">, {place.kind}</span>
										</span>
									),
									sub: (place) => {
										const words = countWords(counts.get(place.id), place.bags + place.parts, shop.timeZone);
										return words === "" ? null : (
											<span style={{ paddingInlineStart: `${Math.min(place.depth, 6) * 1.1}rem` }}>{words}</span>
										);
									},
								},
								{ key: "bags", head: "Bags", align: "right", cell: (place) => (place.bags === 0 ? "–" : place.bags) },
								{ key: "parts", head: "Parts", align: "right", cell: (place) => (place.parts === 0 ? "–" : place.parts) },
							]}
						/>
					</Card>
					<Card title="In hand, not put away" aside={loose.length === 0 ? undefined : String(loose.length)} id="bench">
						<Things
							caption="On the bench, the longest first"
							things={loose}
							late={today}
							timeZone={shop.timeZone}
							empty={<Empty title="The bench is clear">Everything that came out lies in a bag or at its place.</Empty>}
						/>
					</Card>
					{gone.length > 0 ? (
						<Card title="Lost, and may turn up" aside={String(gone.length)} id="lost">
							<Things caption="Lost parts, the last first" things={gone} timeZone={shop.timeZone} empty={null} />
						</Card>
					) : null}
				</Stack>
				<Card title="Add a place">
					<AddPlaceForm places={options} within={null} />
				</Card>
			</Columns>
		</Stack>
	);
}

/** "counted 3 Mar 2026, 2 missing"; nothing of a place at which nothing lies and that nobody counted. */
function countWords(count: LastCount | undefined, things: number, timeZone: string): string {
	if (!count) return things > 0 ? "not counted yet" : "";
	const missing = count.missing.length > 0 ? `, ${count.missing.length} missing then` : "";
	return `counted ${formatDayShort(dayOf(instant(count.at), timeZone))}${missing}`;
}
