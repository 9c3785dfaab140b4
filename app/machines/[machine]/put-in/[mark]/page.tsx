import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { decoded } from "@/app/decoded";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Empty } from "@/app/ui/empty";
import { HeroPhoto } from "@/app/ui/heroPhoto";
import { Bench } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { shopStore } from "@/lib/db/shopStore";
import { machineNumbered, putInSheet } from "@/lib/fittings/queries";
import { whatIsMissed } from "@/lib/parts/rules";
import { positionsLostWith } from "@/lib/reversal/beforehandQueries";
import "../../bench.css";
import { currentPerson } from "@/lib/people/current";
import { JustDone } from "../../justDone";
import { PutInForm } from "./putInForm";

type Params = Promise<{ machine: string; mark: string }>;

export async function generateMetadata({ params }: { params: Params }): Promise<Metadata> {
	return { title: `Put in ${decoded((await params).mark)}` };
}

/** One position is filled: which part, what holds it, what is wired to it. */
export default async function PutInPage({ params, searchParams }: { params: Params; searchParams: Promise<{ part?: string }> }) {
	const said = await params;
	const { part: wanted } = await searchParams;
	const { read } = await shopStore();
	const machine = await machineNumbered(read, Number(said.machine));
	const sheet = machine && (await putInSheet(read, machine.id, decoded(said.mark), wanted || null));
	if (!machine || !sheet) notFound();
	const { position, occupant, photos } = sheet;
	const foreign = sheet.candidates.find(({ from }) => from === "foreign");
	const photo = photos[0];
	const seat = `${position.name} (${position.mark})`;

	if (occupant || position.kind === "place") {
		return (
			<Bench>
				<JustDone>
					<Empty
						title={occupant ? `The ${occupant.name} is in ${seat}` : `${seat} is a place with no part of its own`}
						action={
							occupant ? (
								<ButtonLink kind="main" href={`/machines/${machine.number}/take-out/${encodeURIComponent(position.mark)}`}>
									Take it out
								</ButtonLink>
							) : null
						}
					>
						Nothing can be put in here{occupant ? " until it is out" : ""}.
					</Empty>
				</JustDone>
			</Bench>
		);
	}
	return (
		<Bench>
			<JustDone>
				{photo ? (
					<HeroPhoto src={`/files/${photo.fileSha}/small`} alt={photo.words || position.name} caption={photo.words || position.name} />
				) : null}
				<header>
					<p className="af-sub">
						Put into <Link href={`/machines/${machine.number}`}>{`${machine.number} ${machine.name}`}</Link>
					</p>
					<h1>{position.name}</h1>
					<p className="af-sub">
						{position.mark}
						{position.host ? ` on ${position.host.name}` : ""}
					</p>
				</header>
				{position.note ? (
					<Notice live="off" title="Know first">
						{position.note}
					</Notice>
				) : null}
				{sheet.behind ? (
					<Notice means="wait" live="off" title={`Behind ${sheet.behind}`}>
						<p>The record says that this position cannot be reached now.</p>
						<p>
							<Link className="inline-block py-1.5" href={`/machines/${machine.number}/reach/${encodeURIComponent(position.mark)}`}>
								The whole way to it, and how long that takes
							</Link>
						</p>
					</Notice>
				) : null}
				<PutInForm
					key={wanted ?? ""}
					machine={{ id: machine.id, number: machine.number, name: machine.name }}
					person={(await currentPerson())?.id ?? null}
					position={{ id: position.id, mark: position.mark, name: position.name }}
					wanted={wanted ?? null}
					candidates={sheet.candidates}
					fixings={sheet.fixings}
					gone={sheet.gone}
					wires={sheet.wires}
					settings={sheet.settings}
					ways={sheet.wayRound}
					safety={sheet.safety}
					misses={foreign ? whatIsMissed(await positionsLostWith(read, foreign.id)) : ""}
					behind={sheet.behind !== ""}
					steps={sheet.steps}
					conversions={sheet.conversions}
				/>
			</JustDone>
		</Bench>
	);
}
