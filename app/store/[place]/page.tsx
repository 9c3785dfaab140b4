import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { PageHead } from "@/app/ui/pageHead";
import { TagChip } from "@/app/ui/tagChip";
import { dayOf, formatDayShort } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { requireShop } from "@/lib/shop/queries";
import { contentsOf } from "@/lib/store/contents";
import { lastCounts, pathsOf, placesInOrder, placesUp, whatLiesAt } from "@/lib/store/queries";
import { AddPlaceForm, ChangePlaceForm, TagPlaceForm } from "../forms";
import { Things, thingsOf } from "../things";
import { Contents } from "./contents";

type Params = Promise<{ place: string }>;

export async function generateMetadata({ params }: { params: Params }): Promise<Metadata> {
	const { read } = await shopStore();
	const place = await read.location.findUnique({ where: { id: (await params).place }, select: { name: true } });
	return { title: place?.name ?? "Store" };
}

/** One place: what lies there, and the places in it; with `?all=yes` down to the last screw in the last bag. */
export default async function PlacePage({ params, searchParams }: { params: Params; searchParams: Promise<{ all?: string | string[] }> }) {
	const { place: id } = await params;
	const isWhole = (await searchParams).all === "yes";
	const { read } = await shopStore();
	const place = await read.location.findUnique({ where: { id }, select: { id: true, name: true, kind: true, parentId: true, rank: true } });
	if (!place) notFound();
	const [shop, up, places, here, counts, tag, whole] = await Promise.all([
		requireShop(read),
		placesUp(read, id),
		placesInOrder(read),
		whatLiesAt(read, id),
		lastCounts(read, id),
		read.placeTag.findUnique({ where: { locationId: id }, select: { id: true } }),
		isWhole ? contentsOf(read, id) : null,
	]);
	const counted = counts.get(id);
	const around = up.slice(1).reverse();
	const inIt = places.filter((other) => other.parentId === id);
	const things = thingsOf(here.bags, here.parts);
	const below = new Set(insideOf(places, id));
	const options = pathsOf(places)
		.filter((other) => !below.has(other.id))
		.map((other) => ({ value: other.id, label: other.path }));
	return (
		<Stack>
			<PageHead
				title={place.name}
				above={
					<nav aria-label="The way to it">
						<Link href="/store">Store</Link>
						{around.map((outer) => (
							<span key={outer.id}>
								{" · "}
								<Link href={`/store/${outer.id}`}>{outer.name}</Link>
							</span>
						))}
					</nav>
				}
				lead={`${place.kind}${things.length > 0 ? `, ${things.length} ${things.length === 1 ? "thing" : "things"} on it` : ""}`}
				actions={
					<>
						<ButtonLink kind="main" href={`/store/move?${new URLSearchParams({ to: id })}`}>
							Put things here
						</ButtonLink>
						<ButtonLink href={`/store/${id}/count`}>Count it</ButtonLink>
					</>
				}
			/>
			<Columns>
				<Stack>
					{inIt.length > 0 ? (
						<Card title="In it">
							<ul className="flex flex-wrap gap-3">
								{inIt.map((other) => (
									<li key={other.id}>
										<Link className="af-button" href={`/store/${other.id}`}>
											{other.name}
											{other.bags + other.parts > 0 ? ` (${other.bags + other.parts})` : ""}
										</Link>
									</li>
								))}
							</ul>
						</Card>
					) : null}
					<Card
						title="What lies here"
						aside={counted ? `counted ${formatDayShort(dayOf(instant(counted.at), shop.timeZone))}` : "not counted yet"}
					>
						{counted ? <p className="af-sub">{[counted.say, counted.by].filter(Boolean).join(" · ")}</p> : null}
						<Things
							caption={`Bags and parts at ${place.name}`}
							things={things}
							timeZone={shop.timeZone}
							empty={<Empty title="Nothing lies here">Put things here: scan them, one after the other.</Empty>}
						/>
						{isWhole ? null : (
							<p className="pt-2">
								<Link className="af-button" href={`/store/${id}?all=yes#all`}>
									All that is here, down to the last bag
								</Link>
							</p>
						)}
					</Card>
					{whole ? (
						<Card title="All that is here" id="all">
							<Contents whole={whole} />
						</Card>
					) : null}
				</Stack>
				<Stack>
					<Card title="Its tag">
						{tag ? (
							<p className="af-buttons">
								<TagChip tag={tag.id} size="large" says={place.name} />
								<ButtonLink href={`/labels/shelves?${new URLSearchParams({ place: id })}`}>Print its sheet</ButtonLink>
							</p>
						) : (
							<TagPlaceForm locationId={id} />
						)}
					</Card>
					<Card title={`Add a place in ${place.name}`}>
						<AddPlaceForm places={[]} within={{ id: place.id, kind: place.kind }} />
					</Card>
					<Card title="Change this place">
						<ChangePlaceForm place={place} places={options} />
					</Card>
				</Stack>
			</Columns>
		</Stack>
	);
}

/** The place itself and all in it: it cannot stand in any of them. */
function insideOf(places: readonly { id: string; parentId: string | null }[], id: string): string[] {
	const found = [id];
	// In the order of walking an outer place comes before those in it, so one pass is enough.
	for (const place of places) if (place.parentId !== null && found.includes(place.parentId)) found.push(place.id);
	return found;
}
