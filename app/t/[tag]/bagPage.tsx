import { notFound } from "next/navigation";
import { Badge } from "@/app/ui/badge";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Facts } from "@/app/ui/facts";
import { HeroPhoto } from "@/app/ui/heroPhoto";
import { ActionBar, Bench, Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { PhotoGrid } from "@/app/ui/photoGrid";
import { TagChip } from "@/app/ui/tagChip";
import { bagSheet } from "@/lib/bags/bagSheet";
import { bagsToUse, leftInBag } from "@/lib/bags/queries";
import { photosOf } from "@/lib/captures/queries";
import { type Day, dayOf, formatDayShort } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { formatFixing } from "@/lib/fixings/fixingWords";
import { adviceForBag, NEVER } from "@/lib/keeping/advice";
import { whatIsMissed } from "@/lib/parts/rules";
import { positionsLostWithBag } from "@/lib/reversal/beforehandQueries";
import { requireShop } from "@/lib/shop/queries";
import { notPutAway, pathsOf, placesInOrder } from "@/lib/store/queries";
import { unseenAt } from "@/lib/store/unseen";
import "@/app/machines/[machine]/bench.css";
import { Keeping } from "../into";
import { NotSeen, Way } from "../way";
import { BagNotHereForm, DescribeBagForm, FillBagForm, MoveBagForm, MoveFixingForm, VoidBagForm } from "./bagForms";
import { Opens } from "./opens";
import { Said } from "./partPage";

const MOST_PHOTOS = 12;

/** The page of a bag: what is in it, where it is, what to do now. */
export async function BagPage({ bagId }: { bagId: string }) {
	const { read } = await shopStore();
	const bag = await bagSheet(read, bagId);
	if (!bag) notFound();
	const [shop, photos, bags, places, bench, left] = await Promise.all([
		requireShop(read),
		photosOf(read, { bagId }, { take: MOST_PHOTOS }),
		bagsToUse(read, bag.machineId),
		placesInOrder(read),
		bag.machineId === null ? null : notPutAway(read, bag.machineId),
		leftInBag(read, bag.id),
	]);
	const day = (at: string): Day => dayOf(instant(at), shop.timeZone);
	const hero = photos.find((photo) => photo.file);
	const { parts, fixings, bags: inner, more } = bag.inIt;
	const isHere = bag.place !== "out" && bag.place !== "void";
	const misses = isHere ? whatIsMissed(await positionsLostWithBag(read, bag.id)) : "";
	const keeping = adviceForBag(parts);
	const isEmpty = parts.length + fixings.length + inner.length === 0;
	const since = formatDayShort(day(bag.sinceAt));
	const unseen = await unseenAt(read, bag.where, bag);

	return (
		<Columns even>
			<Bench>
				{hero?.file ? (
					<HeroPhoto
						src={`/files/${hero.file.id}/small`}
						alt={hero.words || bag.words}
						caption={`${hero.words || "Packed"} · ${formatDayShort(day(hero.takenAt))}`}
					/>
				) : null}
				<header>
					<p className="flex flex-wrap items-center gap-3">
						<TagChip tag={bag.tag} size="large" isVoid={bag.place === "void"} />
						<Badge means={bag.role === "keeping" ? "original" : "plain"}>
							{bag.role} {bag.kind}
						</Badge>
					</p>
					<h1 className="mt-1">{bag.words}</h1>
					<p className="af-lead">
						{bag.machine ? (
							<Link href={`/machines/${bag.machine.number}`}>{`${bag.machine.number} ${bag.machine.name}`}</Link>
						) : (
							"The shop's own"
						)}
						{bag.role === "keeping" ? " · stays with the machine for ever" : " · emptied when the machine goes back together"}
					</p>
				</header>
				{bag.caution ? (
					<Notice means="wait" live="off">
						<strong>{bag.caution}</strong>
					</Notice>
				) : null}
				{bag.place === "void" ? (
					<Notice means="stop" live="off" title="Out of use">
						{bag.placeWhy}
					</Notice>
				) : null}
				{left ? (
					<Notice means="stop" live="off" title="It should be empty by now">
						{left.things.join("; ")}: the place is filled again or the machine is finished, so something was left out.
					</Notice>
				) : null}
				<section aria-labelledby="in-it">
					<h2 id="in-it">In it{bag.pieces > 0 ? `: ${bag.pieces} ${bag.pieces === 1 ? "piece" : "pieces"}` : ""}</h2>
					{isEmpty ? <p className="af-sub">Nothing. It is ready for the next part.</p> : null}
					<ul>
						{parts.map((part) => (
							<li key={part.id} className="af-bench-line py-2">
								{part.tag ? <TagChip tag={part.tag} href={`/t/${part.tag}`} says={part.name} /> : null}
								<span>
									<strong>{part.count > 1 ? `${part.count} x ${part.name}` : part.name}</strong>
									<span className="af-sub">
										{[
											part.origin,
											part.works === "faulty" ? "faulty" : null,
											part.home ? `goes to ${part.home.name} (${part.home.mark})` : null,
										]
											.filter(Boolean)
											.join(" · ")}
									</span>
								</span>
								{part.home && !part.home.filled ? (
									<Link
										className="inline-block py-2"
										href={`/machines/${part.home.machineNumber}/put-in/${encodeURIComponent(part.home.mark)}?part=${part.id}`}
									>
										Put it in
									</Link>
								) : null}
							</li>
						))}
						{fixings.map((fixing) => (
							<li key={fixing.id} className="py-2">
								<strong>{formatFixing(fixing)}</strong>
								<span className="af-sub">
									{[fixing.homes.map((home) => `${home.name} (${home.mark})`).join(" and "), fixing.tightness, fixing.differs, fixing.note]
										.filter(Boolean)
										.join(" · ")}
								</span>
								<details className="af-details">
									<summary>They are elsewhere</summary>
									<div className="pt-2">
										<MoveFixingForm
											fixing={{ id: fixing.id, count: fixing.count, words: formatFixing(fixing) }}
											bags={bags.filter((other) => other.id !== bag.id)}
										/>
									</div>
								</details>
							</li>
						))}
						{inner.map((other) => (
							<li key={other.id} className="af-bench-line py-2">
								{other.tag ? <TagChip tag={other.tag} href={`/t/${other.tag}`} says={other.words} /> : null}
								<span>
									<strong>{other.words}</strong>
									<span className="af-sub">
										{[`${other.role} ${other.kind}`, other.things === 0 ? "empty" : `${other.things} in it`, other.caution]
											.filter(Boolean)
											.join(" · ")}
									</span>
								</span>
							</li>
						))}
					</ul>
					{more > 0 ? <p className="af-sub">And {more} more in it.</p> : null}
					{isEmpty ? null : (
						<p>
							<Link className="inline-block py-2" href={`/labels/contents?tags=${bag.tag}`}>
								Print this list
							</Link>
						</p>
					)}
				</section>
				<Facts
					facts={[
						{
							label: "Where",
							value: (
								<>
									<Way where={bag.where} />
									<span className="af-sub">since {since}</span>
									{unseen === null ? null : <NotSeen day={formatDayShort(day(unseen))} />}
								</>
							),
						},
					]}
				/>
				{bag.place === "void" ? null : (
					<>
						<details className="af-details af-asked" id="move">
							<summary>Move it</summary>
							<div className="pt-2">
								<MoveBagForm
									bagId={bag.id}
									machineNumber={bag.machine?.number ?? 0}
									words={bag.words}
									bags={bags.filter((other) => other.id !== bag.id)}
									places={pathsOf(places)}
								/>
							</div>
						</details>
						<details className="af-details af-asked" id="not-here">
							<summary>It is not here</summary>
							<div className="pt-2">
								<BagNotHereForm bagId={bag.id} misses={misses} />
							</div>
						</details>
						{bench && bench.parts.length > 0 ? (
							<details className="af-details">
								<summary>Put something into it</summary>
								<div className="pt-2">
									<FillBagForm
										bagId={bag.id}
										loose={bench.parts.map((part) => ({ id: part.id, label: [part.tag, part.name].filter(Boolean).join(" ") }))}
									/>
								</div>
							</details>
						) : null}
						<ActionBar>
							<Opens id="move" kind="main">
								Move it
							</Opens>
							<ButtonLink href={`/store/move?tags=${bag.tag}`}>Scan where it goes</ButtonLink>
							<ButtonLink href={`/labels?tags=${bag.tag}`}>Print again</ButtonLink>
							<Opens id="not-here">It is not here</Opens>
						</ActionBar>
					</>
				)}
			</Bench>
			<Stack>
				{photos.length > 0 ? (
					<Card title="Photos">
						<PhotoGrid
							photos={photos.flatMap((photo) =>
								photo.file
									? [
											{
												id: photo.id,
												src: `/files/${photo.file.id}/small`,
												href: `/files/${photo.file.id}`,
												alt: photo.words || bag.words,
												caption: [photo.words, formatDayShort(day(photo.takenAt))].filter(Boolean).join(" · "),
											},
										]
									: [],
							)}
						/>
					</Card>
				) : null}
				{keeping.length > 0 ? (
					<Card title="Keeping">
						<Keeping hints={[...keeping, NEVER]} />
					</Card>
				) : null}
				{bag.place === "void" ? null : (
					<Card title="More">
						<details className="af-details">
							<summary>Say anew what it is</summary>
							<div className="pt-2">
								<DescribeBagForm bag={bag} />
							</div>
						</details>
						{isEmpty ? (
							<details className="af-details">
								<summary>Take it out of use</summary>
								<div className="pt-2">
									<VoidBagForm bagId={bag.id} />
								</div>
							</details>
						) : null}
					</Card>
				)}
				<Said said={bag.said.map((entry) => ({ ...entry, day: formatDayShort(day(entry.at)) }))} />
			</Stack>
		</Columns>
	);
}
