"use client";

import { Badge } from "@/app/ui/badge";
import { Button } from "@/app/ui/button";
import { HeroPhoto } from "@/app/ui/heroPhoto";
import { Notice } from "@/app/ui/notice";
import { TagChip } from "@/app/ui/tagChip";
import type { BenchSeat, BenchSheet } from "@/lib/fittings/benchSheet";
import { type ReachFacts, whatCovers, withoutPart } from "@/lib/fittings/reach";
import { type OutcomeOut, TakeOutForm } from "../take-out/[mark]/takeOutForm";
import type { BenchOf, RunOut } from "./benchRun";

/** One part comes out: what is on record stands there, only what differs needs a tap. */
export function OneOut({
	machine,
	person,
	sheet,
	seat,
	reach,
	out,
	run,
	onBack,
	onOut,
}: BenchOf & {
	sheet: BenchSheet;
	seat: BenchSeat;
	reach: ReachFacts;
	/** Parts that are out, the last one first. */
	out: readonly string[];
	run: readonly RunOut[];
	onBack: () => void;
	onOut: (out: OutcomeOut) => void;
}) {
	const { position, part } = seat;
	const covers = whatCovers(out.reduce(withoutPart, reach), position.id);
	const names = new Map(sheet.names);
	const waiting = run.find(({ out }) => out.kind === "waits" && out.makesBag);
	const known = new Set(reach.covers.filter((cover) => cover.positionId === position.id).map((cover) => cover.partId));
	return (
		<>
			<p>
				<Button kind="quiet" onClick={onBack}>
					Back to the list
				</Button>
			</p>
			{seat.photo ? (
				<HeroPhoto src={`/files/${seat.photo}/small`} alt={`${position.name}, the last photo`} caption={position.name} />
			) : null}
			<header>
				<p className="af-sub">
					Take out of {machine.number} {machine.name}
				</p>
				<h1>{part.name}</h1>
				<p className="mt-1 flex flex-wrap items-center gap-3">
					{part.tag ? <TagChip tag={part.tag} href={`/t/${part.tag}`} size="large" says={part.name} /> : null}
					<Badge means={part.origin === "original" ? "original" : "plain"}>{part.origin}</Badge>
					{part.count > 1 ? <Badge>lot of {part.count}</Badge> : null}
				</p>
				<p className="af-sub mt-1">
					{position.name} ({position.mark}){position.mirror ? ` · its other side is ${position.mirror}` : ""}
				</p>
			</header>
			{position.note ? (
				<Notice live="off" title="Know first">
					{position.note}
				</Notice>
			) : null}
			{part.hosts.length > 0 ? <p>It comes out with {part.hosts.join(", ")} on it. They stay fitted on it.</p> : null}
			{covers.length > 0 ? (
				<Notice means="wait" live="off" title="Something is in the way">
					{[...new Set(covers.map((cover) => names.get(cover.partId) ?? "a part"))].join(", ")}, by the record.
				</Notice>
			) : null}
			<TakeOutForm
				machine={machine}
				person={person}
				position={position}
				part={part}
				wayRound={seat.wayRound}
				fixings={seat.fixings}
				wires={seat.connections}
				settings={seat.settings}
				behind={covers.length > 0}
				came={out
					.filter((partId) => partId !== part.id)
					.slice(0, 8)
					.map((partId) => ({ partId, name: names.get(partId) ?? "a part", known: known.has(partId) }))}
				bags={sheet.bags}
				places={sheet.places}
				steps={sheet.steps}
				conversions={sheet.conversions}
				offers={[...seat.offers, ...sheet.common]}
				waitingBag={waiting ? { deed: waiting.out.deed, words: waiting.part.name } : null}
				onOut={onOut}
			/>
		</>
	);
}
