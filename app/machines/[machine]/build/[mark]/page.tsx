import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Suspense } from "react";
import { decoded } from "@/app/decoded";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Facts } from "@/app/ui/facts";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { OriginalityMark } from "@/app/ui/originalityMark";
import { TagChip } from "@/app/ui/tagChip";
import { formatMinutes } from "@/lib/core/minutes";
import { shopStore } from "@/lib/db/shopStore";
import type { MachineHead } from "@/lib/machines/queries";
import { type OriginFacts, type OriginPosition, originalOf, partsOf } from "@/lib/originality/facts";
import { originFacts } from "@/lib/originality/queries";
import { markAsFound, markIn } from "@/lib/originality/strip";
import { evidenceWords, type PositionPage, positionByMark, positionChoices } from "@/lib/positions/positionQueries";
import { sidesOf } from "@/lib/positions/sides";
import { requireShop } from "@/lib/shop/queries";
import { afterReversal } from "../../afterReversal";
import { PinnedPhotos } from "../../papers/pinnedPhotos";
import { thisMachine } from "../../thisMachine";
import { EvidenceForm } from "./evidenceForm";
import { EvidenceList } from "./evidenceList";
import { FindingForm } from "./findingForm";
import { Fixings, Settings, Wires } from "./held";
import { InTheWay } from "./inTheWay";
import { Marks } from "./marks";
import { PartCard } from "./partCard";
import { PositionForm } from "./positionForm";
import type { Part, Said } from "./said";
import { Shown } from "./shown";
import { Findings, FoundWords, History, PartWords } from "./told";

type Props = { readonly params: Promise<{ machine: string; mark: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
	return { title: decoded((await params).mark) };
}

export default async function PositionPageOfMachine({ params }: Props) {
	const asked = await params;
	const machine = await thisMachine(asked.machine);
	const { read } = await shopStore();
	const page = await positionByMark(read, machine.id, decoded(asked.mark));
	if (!page) notFound();
	const [{ timeZone }, origins, choices, used] = await Promise.all([
		requireShop(read),
		originFacts(read, [machine.id]),
		positionChoices(read, machine.id),
		evidenceWords(read),
	]);
	const facts = origins.get(machine.id) ?? { positions: [], parts: [] };
	const origin = partsOf(facts);
	const facet = facts.positions.find((position) => position.id === page.id);
	const base = `/machines/${machine.number}`;
	const said: Said = { page, base, timeZone };
	const mark = facet && page.kind === "seat" ? markIn(facet, origin, "now") : null;
	const found = facet ? markAsFound(facet, origin) : null;
	const originalId = facet ? (originalOf(facet, origin)?.id ?? null) : null;
	const known = new Map(
		[...page.fittings.map((fitting) => fitting.part), ...(page.part ? [page.part] : [])].map((part) => [part.id, part]),
	);
	const original = originalId === null || originalId === page.part?.id ? null : (known.get(originalId) ?? null);
	const here = `${base}/take-out/${encodeURIComponent(page.mark)}`;
	const into = `${base}/put-in/${encodeURIComponent(page.mark)}`;
	return (
		<Stack>
			<div className="af-pagehead">
				<div className="af-pagehead-words">
					<div className="af-pagehead-above">
						<Link href={`${base}/build`}>Build</Link>
						{page.host?.position ? (
							<>
								<span aria-hidden="true">›</span>
								<Link href={`${base}/build/${encodeURIComponent(page.host.position.mark)}`}>{page.host.position.name}</Link>
							</>
						) : null}
						<span aria-hidden="true">›</span>
						<code>{page.mark}</code>
					</div>
					<h2 className="flex items-center gap-3 text-[1.5rem]">
						{mark ? <OriginalityMark state={mark.state} says={mark.says} /> : null}
						{page.name}
					</h2>
					<p className="af-lead">
						{[
							page.area,
							page.kind === "place" ? "a place with no part of its own" : mark?.says,
							page.asFound === "no" ? "made by the shop's work" : "",
						]
							.filter(Boolean)
							.join(" · ")}
					</p>
				</div>
				<div className="af-pagehead-actions">
					{page.part ? (
						<ButtonLink kind="main" href={here}>
							Take out
						</ButtonLink>
					) : page.kind === "seat" ? (
						<ButtonLink kind="main" href={into}>
							Put a part in
						</ButtonLink>
					) : null}
					<ButtonLink href={`${base}/reach/${encodeURIComponent(page.mark)}`}>What comes off first</ButtonLink>
				</div>
			</div>
			{page.note === "" ? null : (
				<Notice means="wait" live="off" title="Know before you touch it">
					<p className="whitespace-pre-line">{page.note}</p>
				</Notice>
			)}
			<Columns>
				<Stack>
					<Card title="As found · now · after reversal">
						<Facts
							facts={[
								{
									label: "As found",
									value:
										found === null ? page.kind === "place" ? "a place" : "no such place" : <FoundWords said={said} words={found.says} />,
								},
								{ label: "Now", value: page.kind === "place" ? null : page.part ? <PartWords part={page.part} said={said} /> : "empty" },
								{ label: "Its original", value: original === null ? null : <PartWords part={original} said={said} /> },
								{
									label: "After reversal",
									value:
										facet === undefined || page.kind === "place" || machine.asFoundAt === null ? null : (
											<Suspense fallback="planning the way back …">
												<AfterReversal machine={machine} facts={facts} facet={facet} names={known} />
											</Suspense>
										),
								},
								{ label: "To take out", value: minutes(page.outLow, page.outLikely, page.outHigh) },
								{ label: "To put in", value: minutes(page.inLow, page.inLikely, page.inHigh) },
							]}
						/>
					</Card>
					<InTheWay said={said} choices={choices} />
					<Fixings said={said} />
					<Wires said={said} />
					<Settings said={said} />
					<History said={said} />
					<PinnedPhotos read={read} of={{ positionId: page.id }} />
					<Shown captures={page.captures} name={page.name} base={base} />
				</Stack>
				<Stack>
					{page.kind === "place" ? null : (
						<Card title="What was found">
							<Findings said={said} asFoundAt={machine.asFoundAt} />
							<details className="af-details" open={page.asFound === "yes" && (page.findings.at(-1)?.state ?? "unseen") === "unseen"}>
								<summary>{machine.asFoundAt === null ? "Record what was found" : "Add what is known now"}</summary>
								<FindingForm
									key={page.findings.length}
									positionId={page.id}
									positionName={page.name}
									stamped={machine.asFoundAt !== null}
									known={spokenOf(page, machine.asFoundAt)}
									last={page.findings.at(-1)?.state ?? null}
								/>
							</details>
						</Card>
					)}
					{page.part ? <PartCard read={read} part={page.part} said={said} title="The part" /> : null}
					{original ? <PartCard read={read} part={original} said={said} title="Its original" /> : null}
					<Card title="How we know">
						<EvidenceList said={said} />
						<details className="af-details">
							<summary>Add evidence</summary>
							<EvidenceForm partId={original?.id ?? page.part?.id ?? null} positionId={page.id} used={used} />
						</details>
					</Card>
					<Marks said={said} />
					<Card title="This position">
						<Facts
							facts={[
								{ label: "Sides", value: sidesOf(page.sides).join(", ") },
								{
									label: "Sits on",
									value: page.host ? (
										<>
											{page.host.name}{" "}
											{page.host.tag ? <TagChip size="small" tag={page.host.tag.id} href={`/t/${page.host.tag.id}`} /> : null}
										</>
									) : (
										"the machine itself"
									),
								},
								{
									label: "Mirror image of",
									value: page.mirror ? (
										<Link href={`${base}/build/${encodeURIComponent(page.mirror.mark)}`}>
											{page.mirror.mark} {page.mirror.name}
										</Link>
									) : null,
								},
								{
									label: "Carries",
									value:
										page.guests.length === 0
											? null
											: page.guests.map((guest, index) => (
													<span key={guest.id}>
														{index > 0 ? ", " : ""}
														<Link href={`${base}/build/${encodeURIComponent(guest.mark)}`}>{guest.name}</Link>
													</span>
												)),
								},
							]}
						/>
						<details className="af-details">
							<summary>Correct what is said of it</summary>
							<PositionForm
								seen={page.entry}
								carriedBy={page.host && !page.host.position ? page.host.name : null}
								position={{
									positionId: page.id,
									name: page.name,
									area: page.area,
									kind: page.kind,
									sides: sidesOf(page.sides),
									note: page.note,
									hostMark: page.host?.position?.mark ?? "",
									mirrorMark: page.mirror?.mark ?? "",
									out: { low: typed(page.outLow), likely: typed(page.outLikely), high: typed(page.outHigh) },
									in: { low: typed(page.inLow), likely: typed(page.inLikely), high: typed(page.inHigh) },
								}}
								others={choices
									.filter((choice) => choice.id !== page.id)
									.map((choice) => ({ mark: choice.mark, name: choice.name, carries: choice.part !== null }))}
								areas={[...new Set(facts.positions.map((position) => position.area).filter(Boolean))]}
							/>
						</details>
					</Card>
				</Stack>
			</Columns>
		</Stack>
	);
}

const typed = (minutesOf: number | null): string => (minutesOf === null ? "" : String(minutesOf));

const minutes = (low: number | null, likely: number | null, high: number | null): string | null =>
	low === null || likely === null || high === null ? null : `${formatMinutes(likely)} (${formatMinutes(low)} to ${formatMinutes(high)})`;

/** The part that a finding of now would speak of, in words; null when it would bring a new one into the book. */
function spokenOf(page: PositionPage, asFoundAt: string | null): string | null {
	const open = page.fittings.find((fitting) => fitting.untilAt === null);
	const own = open && (asFoundAt === null || open.fromAt <= asFoundAt) ? open.part : (page.findings.at(-1)?.part ?? null);
	if (!own || own.place === "void") return null;
	return own.tag ? `${own.tag.id}, ${own.name}` : own.name;
}

async function AfterReversal({
	machine,
	facts,
	facet,
	names,
}: {
	readonly machine: MachineHead;
	readonly facts: OriginFacts;
	readonly facet: OriginPosition;
	readonly names: ReadonlyMap<string, Part>;
}) {
	const after = await afterReversal((await shopStore()).read, machine.id, machine.asFoundAt);
	if (after === null) return "no plan can be made of this record";
	const partId = after.get(facet.id);
	const part = partId === undefined ? undefined : names.get(partId);
	const { says } = markIn(facet, partsOf(facts), after);
	return part === undefined ? says : `${part.name}: ${says}`;
}
