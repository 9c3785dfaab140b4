import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { decoded } from "@/app/decoded";
import { Badge } from "@/app/ui/badge";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Empty } from "@/app/ui/empty";
import { HeroPhoto } from "@/app/ui/heroPhoto";
import { Bench } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { TagChip } from "@/app/ui/tagChip";
import { captureById } from "@/lib/captures/queries";
import { shopStore } from "@/lib/db/shopStore";
import { machineNumbered, takeOutSheet } from "@/lib/fittings/queries";
import { currentPerson } from "@/lib/people/current";
import "../../bench.css";
import { JustDone } from "../../justDone";
import { takeOutProps } from "../takeOutProps";
import { TakeOutForm } from "./takeOutForm";

type Params = Promise<{ machine: string; mark: string }>;

export async function generateMetadata({ params }: { params: Params }): Promise<Metadata> {
	return { title: `Take out ${decoded((await params).mark)}` };
}

/** One part comes out: photo, what holds it, its wires, how it was set, and where it goes. */
export default async function TakeOutPage({
	params,
	searchParams,
}: {
	params: Params;
	searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
	const [said, asked, person] = await Promise.all([params, searchParams, currentPerson()]);
	const { read } = await shopStore();
	const machine = await machineNumbered(read, Number(said.machine));
	const sheet = machine && (await takeOutSheet(read, machine.id, decoded(said.mark)));
	if (!machine || !sheet) notFound();
	const { position, fitting, photos } = sheet;
	const seat = `${position.name} (${position.mark})`;
	const photo = photos[0];

	if (!fitting) {
		return (
			<Bench>
				<JustDone>
					<Empty
						title={position.kind === "place" ? `${seat} is a place with no part of its own` : `${seat} is empty`}
						action={
							position.kind === "place" ? null : (
								<ButtonLink kind="main" href={`/machines/${machine.number}/put-in/${encodeURIComponent(position.mark)}`}>
									Put a part in
								</ButtonLink>
							)
						}
					>
						Nothing can be taken out here, as far as the record goes.
						{position.kind === "place" ? null : (
							<>
								{" "}
								Is there something in it all the same?{" "}
								<Link href={`/machines/${machine.number}/build/${encodeURIComponent(position.mark)}`}>Say what was found</Link>, then take
								it out.
							</>
						)}
					</Empty>
				</JustDone>
			</Bench>
		);
	}
	const { part } = fitting;
	const capture = typeof asked.capture === "string" ? await photoToTakeAlong(asked.capture, machine.id) : undefined;
	return (
		<Bench>
			<JustDone>
				{photo ? (
					<HeroPhoto
						src={`/files/${photo.fileSha}/small`}
						alt={photo.words || `${position.name}, the last photo`}
						caption={`${photo.words || position.name}${photos.length > 1 ? ` · the last of ${photos.length}` : ""}`}
					/>
				) : null}
				<header>
					<p className="af-sub">
						Take out of <Link href={`/machines/${machine.number}`}>{`${machine.number} ${machine.name}`}</Link>
					</p>
					<h1>{part.name}</h1>
					<p className="mt-1 flex flex-wrap items-center gap-3">
						{part.tag ? <TagChip tag={part.tag} href={`/t/${part.tag}`} size="large" says={part.name} /> : null}
						<Badge means={part.origin === "original" ? "original" : "plain"}>{part.origin}</Badge>
						{part.count > 1 ? <Badge>lot of {part.count}</Badge> : null}
					</p>
					<p className="af-sub mt-1">
						{seat}
						{position.host ? ` on ${position.host.name}` : ""}
						{position.mirror ? ` · its other side is ${position.mirror.name}` : ""}
					</p>
				</header>
				{position.note ? (
					<Notice live="off" title="Know first">
						{position.note}
					</Notice>
				) : null}
				{part.hosts.length > 0 ? (
					<p>
						It comes out with {part.hosts.length === 1 ? "one part" : `${part.hosts.length} parts`} on it:{" "}
						{part.hosts.map((guest) => guest.name).join(", ")}. They stay fitted on it.
					</p>
				) : null}
				{sheet.behind ? (
					<Notice means="wait" live="off" title={`Behind ${sheet.behind}`}>
						<p>
							{sheet.coveredBy.some((cover) => cover.side !== "") ? "One free side is enough. " : ""}Take out first:{" "}
							{sheet.coveredBy.map((cover, at) => (
								<span key={`${cover.mark}/${cover.side}`}>
									{at > 0 ? ", " : ""}
									{cover.mark ? (
										<Link className="inline-block py-1.5" href={`/machines/${machine.number}/take-out/${encodeURIComponent(cover.mark)}`}>
											{cover.name}
										</Link>
									) : (
										cover.name
									)}
								</span>
							))}
							.
						</p>
						<p>
							<Link className="inline-block py-1.5" href={`/machines/${machine.number}/reach/${encodeURIComponent(position.mark)}`}>
								The whole way to it, and how long that takes
							</Link>
						</p>
					</Notice>
				) : null}
				<TakeOutForm {...takeOutProps(machine, person, sheet, fitting)} capture={capture} />
			</JustDone>
		</Bench>
	);
}

/** A photo of the machine that was taken before its words: it comes along, with its time. */
async function photoToTakeAlong(captureId: string, machineId: string) {
	const { read } = await shopStore();
	const capture = await captureById(read, captureId);
	if (!capture || capture.machineId !== machineId || capture.stands === "no") return;
	return { id: capture.id, sha: capture.file?.id ?? null, takenAt: capture.takenAt };
}
