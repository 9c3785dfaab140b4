import { notFound } from "next/navigation";
import { PinnedPhotos } from "@/app/machines/[machine]/papers/pinnedPhotos";
import { Badge } from "@/app/ui/badge";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Facts } from "@/app/ui/facts";
import { HeroPhoto } from "@/app/ui/heroPhoto";
import { ActionBar, Bench, Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { PhotoGrid } from "@/app/ui/photoGrid";
import { Table } from "@/app/ui/table";
import { TagChip } from "@/app/ui/tagChip";
import { bagsToUse } from "@/lib/bags/queries";
import { photosOf } from "@/lib/captures/queries";
import { systemClock } from "@/lib/core/clock";
import { type Day, dayOf, formatDay, formatDayShort } from "@/lib/core/days";
import { edtfInWords } from "@/lib/core/edtf";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { type PartSheet, partSheet } from "@/lib/fittings/partSheet";
import { parties } from "@/lib/parties/queries";
import { whatIsLost, whatIsMissed } from "@/lib/parts/rules";
import { requireShop } from "@/lib/shop/queries";
import { pathsOf, placesInOrder } from "@/lib/store/queries";
import { unseenAt } from "@/lib/store/unseen";
import "@/app/machines/[machine]/bench.css";
import { NotSeen, Way } from "../way";
import { MovePartForm } from "./moveForm";
import { Opens } from "./opens";
import {
	ComeBackForm,
	DescribePartForm,
	EvidenceForm,
	LostForm,
	ScrapForm,
	SellForm,
	SendOutForm,
	VoidPartForm,
	WithdrawEvidence,
} from "./partForms";

const MOST_PHOTOS = 24;
const LOOSE = ["bag", "location", "bench"];

/** The canonical page of a part: what it is, where it is, where it goes, what to do now. History last. */
export async function PartPage({ partId }: { partId: string }) {
	const { read } = await shopStore();
	const part = await partSheet(read, partId);
	if (!part?.tag) notFound();
	const [shop, photos, bags, places, outsiders] = await Promise.all([
		requireShop(read),
		photosOf(read, { partId }, { take: MOST_PHOTOS }),
		bagsToUse(read, part.machine.id),
		placesInOrder(read),
		parties(read, ["specialist", "owner", "supplier"]),
	]);
	const day = (at: string): Day => dayOf(instant(at), shop.timeZone);
	const unseen = part.where ? await unseenAt(read, part.where, { tag: part.tag, sinceAt: part.sinceAt }) : null;
	const machine = part.machine;
	const hero = photos.find((photo) => photo.file);
	const isLoose = LOOSE.includes(part.place);
	const isAway = part.place === "out" || part.place === "sold" || part.place === "scrapped";
	const leaving = { name: part.name, tag: part.tag, origin: part.origin, place: part.place };
	const loses = whatIsLost(leaving, part.loses) ?? "";
	const misses = whatIsMissed(part.loses);
	// Into the position that it came from while that is empty; else into whichever is chosen.
	const putIn = !isLoose
		? null
		: part.goesTo && part.goesTo.holds === null
			? `/machines/${part.goesTo.machineNumber}/put-in/${encodeURIComponent(part.goesTo.mark)}?part=${part.id}`
			: part.goesTo === null
				? `/machines/${machine.number}/put-in?part=${part.id}`
				: null;
	const paths = pathsOf(places);
	const placeOptions = paths.map((place) => ({ value: place.id, label: place.path }));
	const partyOptions = outsiders.map((party) => ({ value: party.id, label: party.name }));
	const labels = `/labels?tags=${part.tag}`;
	const overdue = part.place === "out" && part.dueDay !== null && part.dueDay < dayOf(systemClock(), shop.timeZone);

	return (
		<Columns even>
			<Bench>
				{hero?.file ? (
					<HeroPhoto
						src={`/files/${hero.file.id}/small`}
						alt={hero.words || part.name}
						caption={`${hero.words || part.name} · ${formatDayShort(day(hero.takenAt))}`}
					/>
				) : null}
				<header>
					<p className="flex flex-wrap items-center gap-3">
						<TagChip tag={part.tag} size="large" isVoid={part.place === "void"} />
						<Badge means={part.origin === "original" ? "original" : "plain"}>{part.origin}</Badge>
						{part.works === "faulty" ? <Badge means="stop">faulty</Badge> : null}
						{part.count > 1 ? <Badge>lot of {part.count}</Badge> : null}
					</p>
					<h1 className="mt-1">{part.name}</h1>
					<p className="af-lead">
						<Link href={`/machines/${machine.number}`}>{`${machine.number} ${machine.name}`}</Link>
						{part.maker || part.type ? ` · ${[part.maker, part.type].filter(Boolean).join(" ")}` : ""}
					</p>
				</header>
				{part.place === "void" ? (
					<Notice means="stop" live="off" title="Entered in error">
						{part.placeWhy}
					</Notice>
				) : null}
				{part.faults.map((fault) => (
					<Notice key={fault.id} means="wait" live="off">
						{fault.words}
					</Notice>
				))}
				<Facts
					facts={[
						{
							label: "Where",
							value: (
								<Where
									part={part}
									since={formatDayShort(day(part.sinceAt))}
									overdue={overdue}
									unseen={unseen === null ? null : formatDayShort(day(unseen))}
								/>
							),
						},
						{
							label: "Goes to",
							value: part.goesTo ? (
								<>
									<Link href={`/machines/${part.goesTo.machineNumber}/build/${encodeURIComponent(part.goesTo.mark)}`}>
										{part.goesTo.name} ({part.goesTo.mark})
									</Link>
									{part.goesTo.holds === null ? ", empty now" : `, which holds the ${part.goesTo.holds} now`}
								</>
							) : null,
						},
						{ label: "Way round", value: part.wayRound },
						{
							label: part.fittedIn ? "Held by" : "Was held by",
							value:
								part.fixings.length === 0 ? null : (
									<ul>
										{part.fixings.map((fixing) => (
											<li key={fixing.id}>
												{fixing.words}
												{fixing.differs ? `, ${fixing.differs}` : ""}
												{fixing.bagTag ? (
													<>
														{" "}
														in <Link href={`/t/${fixing.bagTag}`}>{fixing.bagTag}</Link>
													</>
												) : fixing.place === "home" ? (
													""
												) : (
													`: ${fixing.place === "bench" ? "on the bench" : fixing.place === "left" ? "left in place" : fixing.place}`
												)}
											</li>
										))}
									</ul>
								),
						},
						{
							label: "Wires",
							value:
								part.wires.length === 0 ? null : (
									<ul>
										{part.wires.map((wire) => (
											<li key={wire.id}>
												{wire.words}: {wire.state}
												{wire.tags.length > 0 ? `, tagged ${wire.tags.join(" and ")}` : ""}
											</li>
										))}
									</ul>
								),
						},
						{
							label: "Was set",
							value: part.settings.length === 0 ? null : part.settings.map((setting) => `${setting.kind} ${setting.value}`).join("; "),
						},
						{ label: "Condition", value: part.condition },
						{ label: "Material", value: part.material },
						{ label: "Made", value: part.made ? edtfInWords(part.made) : null },
						{
							label: "Bought",
							value: part.line ? <Link href={`/buying/${part.line.purchase.number}`}>order {part.line.purchase.number}</Link> : null,
						},
					]}
				/>
				{part.guests.length > 0 ? (
					<section aria-labelledby="on-it">
						<h2 id="on-it">On it</h2>
						<ul>
							{part.guests.map((guest) => (
								<li key={guest.mark} className="py-1">
									{guest.name}:{" "}
									{guest.part?.tag ? (
										<TagChip tag={guest.part.tag} href={`/t/${guest.part.tag}`} size="small" says={guest.part.name} />
									) : (
										(guest.part?.name ?? "empty")
									)}
								</li>
							))}
						</ul>
					</section>
				) : null}
				{isLoose || part.place === "lost" ? (
					<details className="af-details af-asked" id="move">
						<summary>{part.place === "lost" ? "It turned up: where it lies" : "Move it"}</summary>
						<div className="pt-2">
							<MovePartForm
								part={{ id: part.id, name: part.name, isOriginal: part.origin === "original", material: part.material }}
								machineNumber={machine.number}
								bags={bags}
								places={paths}
							/>
						</div>
					</details>
				) : null}
				{isLoose ? (
					<details className="af-details af-asked" id="not-here">
						<summary>It is not here</summary>
						<div className="pt-2">
							<LostForm partId={part.id} misses={misses} />
						</div>
					</details>
				) : null}
				{isAway ? (
					<details className="af-details af-asked" id="back" open={part.place === "out"}>
						<summary>It is back</summary>
						<div className="pt-2">
							<ComeBackForm partId={part.id} places={placeOptions} place={part.place} />
						</div>
					</details>
				) : null}
				<ActionBar>
					{part.fittedIn ? (
						<ButtonLink kind="main" href={`/machines/${part.fittedIn.machineNumber}/take-out/${encodeURIComponent(part.fittedIn.mark)}`}>
							Take it out
						</ButtonLink>
					) : null}
					{part.fittedIn ? (
						<ButtonLink href={`/machines/${part.fittedIn.machineNumber}/reach/${encodeURIComponent(part.fittedIn.mark)}`}>
							What comes off first
						</ButtonLink>
					) : null}
					{putIn ? (
						<ButtonLink kind="main" href={putIn}>
							Put it in
						</ButtonLink>
					) : null}
					{part.place === "lost" ? (
						<Opens id="move" kind="main">
							It turned up
						</Opens>
					) : null}
					{isAway ? (
						<Opens id="back" kind="main">
							It is back
						</Opens>
					) : null}
					{isLoose ? (
						<Opens id="move" kind={putIn ? "plain" : "main"}>
							Move it
						</Opens>
					) : null}
					{isLoose ? <ButtonLink href={`/store/move?tags=${part.tag}`}>Scan where it goes</ButtonLink> : null}
					{!part.fittedIn && part.fittings[0] ? (
						<ButtonLink
							href={`/machines/${part.fittings[0].position.machineNumber}/reversal?${new URLSearchParams({ pos: part.fittings[0].position.mark })}`}
						>
							The way back for it
						</ButtonLink>
					) : null}
					<ButtonLink href={labels}>Print again</ButtonLink>
					{isLoose ? <Opens id="not-here">It is not here</Opens> : null}
				</ActionBar>
			</Bench>
			<Stack>
				<Card title="Evidence" aside={part.evidence.length === 0 ? undefined : String(part.evidence.length)}>
					{part.evidence.length === 0 ? (
						<p className="af-sub">
							{part.origin === "unknown" ? "None yet. Add what you find out." : `None yet: what shows that it is ${part.origin}?`}
						</p>
					) : null}
					<ul>
						{part.evidence.map((evidence) => (
							<li key={evidence.id} className="af-bench-line py-1.5">
								<span className={evidence.stands === "no" ? "line-through" : undefined}>
									<strong>{evidence.kind}</strong>
									{evidence.how ? `, ${evidence.how}` : ""}
									{evidence.words ? `: ${evidence.words}` : ""}
									{evidence.whoSaid ? ` (${evidence.whoSaid})` : ""}
									<span className="af-sub">
										{evidence.claim === "made" ? "was in it when it was made" : "was in it when it came"}
										{evidence.stands === "no" ? ", withdrawn" : ""}
									</span>
								</span>
								{evidence.capture?.fileSha ? <Link href={`/files/${evidence.capture.fileSha}`}>photo or paper</Link> : null}
								{evidence.stands === "yes" ? <WithdrawEvidence evidenceId={evidence.id} /> : null}
							</li>
						))}
					</ul>
					<details className="af-details">
						<summary>Add evidence</summary>
						<div className="pt-2">
							<EvidenceForm partId={part.id} />
						</div>
					</details>
				</Card>
				<Card title="Where it sat">
					<Table
						caption="Fittings of this part, the latest first"
						rows={part.fittings}
						rowKey={(fitting) => fitting.id}
						empty={<p className="af-sub">It was never fitted.</p>}
						columns={[
							{
								key: "position",
								head: "Position",
								main: true,
								cell: ({ position }) => (
									<Link href={`/machines/${position.machineNumber}/build/${encodeURIComponent(position.mark)}`}>
										{position.name} ({position.mark})
									</Link>
								),
							},
							{
								key: "from",
								head: "From",
								cell: (fitting) => formatDayShort(day(fitting.fromAt)),
								sub: (fitting) =>
									[fitting.fromStep ? `step ${fitting.fromStep.number}` : null, fitting.conversion].filter(Boolean).join(" · "),
							},
							{
								key: "until",
								head: "Until",
								cell: (fitting) => (fitting.untilAt === null ? "now" : formatDayShort(day(fitting.untilAt))),
								sub: (fitting) =>
									[fitting.untilStep ? `step ${fitting.untilStep.number}` : null, fitting.outConversion].filter(Boolean).join(" · "),
							},
						]}
					/>
				</Card>
				{part.alterations.length > 0 ? (
					<Card title="Altered">
						<ul>
							{part.alterations.map((alteration) => (
								<li key={alteration.id} className="py-1">
									{alteration.what}{" "}
									<Badge means={alteration.undo === "never" ? "stop" : "plain"}>
										{alteration.state === "undone"
											? "undone"
											: alteration.undo === "never"
												? "cannot be undone"
												: alteration.undo === "trace"
													? "leaves a trace"
													: "clean to undo"}
									</Badge>
									<span className="af-sub">{[formatDayShort(day(alteration.doneAt)), alteration.reason].filter(Boolean).join(" · ")}</span>
								</li>
							))}
						</ul>
					</Card>
				) : null}
				{part.digital.length > 0 ? (
					<Card title="Programs and settings">
						<ul>
							{part.digital.map((item) => (
								<li key={item.id}>
									<Link href={`/files/${item.fileSha}`}>
										{item.name} {item.version}
									</Link>
								</li>
							))}
						</ul>
					</Card>
				) : null}
				<PinnedPhotos read={read} of={{ partId: part.id }} />
				{photos.length > 0 ? (
					<Card title="Photos" aside={photos.length === MOST_PHOTOS ? `the last ${MOST_PHOTOS}` : undefined}>
						<PhotoGrid
							photos={photos.flatMap((photo) =>
								photo.file
									? [
											{
												id: photo.id,
												src: `/files/${photo.file.id}/small`,
												href: `/files/${photo.file.id}`,
												alt: photo.words || `${part.name}, ${formatDay(day(photo.takenAt))}`,
												caption: [photo.words, formatDayShort(day(photo.takenAt))].filter(Boolean).join(" · "),
											},
										]
									: [],
							)}
						/>
					</Card>
				) : null}
				<Card title="More">
					<details className="af-details">
						<summary>Describe it</summary>
						<div className="pt-2">
							<DescribePartForm partId={part.id} seen={part.entry} part={part} />
						</div>
					</details>
					{isLoose ? (
						<>
							<details className="af-details">
								<summary>Send it out: lend it, have it plated or rewound</summary>
								<div className="pt-2">
									<SendOutForm partId={part.id} parties={partyOptions} isOriginal={part.origin === "original"} misses={misses} />
								</div>
							</details>
							<details className="af-details">
								<summary>Sell it apart</summary>
								<div className="pt-2">
									<SellForm partId={part.id} parties={partyOptions} loses={loses} />
								</div>
							</details>
							<details className="af-details">
								<summary>Scrap it</summary>
								<div className="pt-2">
									<ScrapForm partId={part.id} loses={loses} />
								</div>
							</details>
							<details className="af-details">
								<summary>Entered in error</summary>
								<div className="pt-2">
									<VoidPartForm partId={part.id} />
								</div>
							</details>
						</>
					) : null}
				</Card>
				<Said said={part.said.map((entry) => ({ ...entry, day: formatDayShort(day(entry.at)) }))} />
			</Stack>
		</Columns>
	);
}

function Where({ part, since, overdue, unseen }: { part: PartSheet; since: string; overdue: boolean; unseen: string | null }) {
	if (part.fittedIn) {
		return (
			<>
				fitted in{" "}
				<Link href={`/machines/${part.fittedIn.machineNumber}/build/${encodeURIComponent(part.fittedIn.mark)}`}>
					{part.fittedIn.name} ({part.fittedIn.mark})
				</Link>{" "}
				since {since}
			</>
		);
	}
	if (part.where) {
		return (
			<>
				<Way where={part.where} />
				<span className="af-sub">since {since}</span>
				{unseen === null ? null : <NotSeen day={unseen} />}
			</>
		);
	}
	if (part.place === "out") {
		return (
			<>
				out, with {part.party?.name ?? "somebody"} since {since}
				{part.placeWhy ? `: ${part.placeWhy}` : ""}{" "}
				{part.dueDay ? (
					<Badge means={overdue ? "stop" : "wait"}>
						{overdue ? "was due" : "due"} {formatDayShort(part.dueDay as Day)}
					</Badge>
				) : null}
			</>
		);
	}
	return (
		<>
			{part.place === "void" ? "struck out" : part.place} {since}
			{part.placeWhy ? `: ${part.placeWhy}` : ""}
		</>
	);
}

/** What was said of it, newest first. */
export function Said({ said }: { said: readonly { seq: number; say: string; by: string; day: string }[] }) {
	return (
		<Card title="What was said of it">
			{said.length === 0 ? <p className="af-sub">Nothing yet beside what the machine's history tells.</p> : null}
			<ul>
				{said.map((entry) => (
					<li key={entry.seq} className="py-1">
						{entry.say}
						<span className="af-sub">{[entry.day, entry.by].filter(Boolean).join(" · ")}</span>
					</li>
				))}
			</ul>
		</Card>
	);
}
