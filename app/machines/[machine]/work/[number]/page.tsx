import type { Metadata } from "next";
import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import { Badge } from "@/app/ui/badge";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Facts } from "@/app/ui/facts";
import { ActionBar, Buttons, Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { PhotoGrid } from "@/app/ui/photoGrid";
import { TagChip } from "@/app/ui/tagChip";
import { UNDO_WORDS } from "@/lib/alterations/schema";
import { systemClock } from "@/lib/core/clock";
import { day, formatDayShort, formatInstant } from "@/lib/core/days";
import { type Instant, instant, millisOf } from "@/lib/core/instants";
import { formatMinutes, formatWait } from "@/lib/core/minutes";
import { shopStore } from "@/lib/db/shopStore";
import { soon as soonIn } from "@/lib/machines/bench";
import { expectedSixths, sixthsToMinutes } from "@/lib/money/pert";
import { currentPerson } from "@/lib/people/current";
import { peopleHere } from "@/lib/people/queries";
import { foreseeStep } from "@/lib/reversal/beforehandQueries";
import type { Foreseen } from "@/lib/reversal/thought";
import { requireShop } from "@/lib/shop/queries";
import { plannedWait } from "@/lib/steps/plannedWait";
import { hindranceWords, minutesOn } from "@/lib/steps/progress";
import { allClocks, runningClock, type StepPage, stepOfMachine } from "@/lib/steps/queries";
import { STEP_KIND_WORDS } from "@/lib/steps/schema";
import { ranOverNight } from "@/lib/steps/timeCheck";
import { timeDoubts } from "@/lib/steps/timeCheckQueries";
import { UndoBadge } from "../../changes/undoBadge";
import { thisMachine } from "../../thisMachine";
import { CautionNotice } from "../cautionNotice";
import { Elapsed, StartClock, StopClock } from "../clock";
import { numberInAddress } from "../numberInAddress";
import { StandingBadge } from "../standingBadge";
import { AddTimeForm, DropForm, FinishForm, ReopenForm, StartForOther } from "../stepForms";
import { StepPhotos } from "../stepPhotos";
import { StepTime } from "../stepTime";
import { TimeDoubts } from "../timeDoubts";

type Props = { readonly params: Promise<{ machine: string; number: string }> };

/** Kinds of work that may change a thing for good: it is drilled, cut, stripped. */
const CHANGES_THINGS: readonly StepPage["kind"][] = ["alter", "clean"];

export async function generateMetadata({ params }: Props): Promise<Metadata> {
	return { title: `Step ${(await params).number}` };
}

export default async function StepPageOfMachine({ params }: Props) {
	const { machine: inAddress, number } = await params;
	const machine = await thisMachine(inAddress);
	const { read } = await shopStore();
	const now = systemClock();
	const step = await stepOfMachine(read, machine.id, numberInAddress(number), now);
	if (!step) notFound();
	const [{ timeZone }, me, people] = await Promise.all([requireShop(read), currentPerson(), peopleHere(read)]);
	const elsewhere = me ? await runningClock(read, me.id) : null;
	const soon = (at: Instant) => soonIn(at, now, timeZone);
	const base = `/machines/${machine.number}`;
	const { row } = step;
	const open = step.state === "planned" || step.state === "doing";
	const mayChange = open && CHANGES_THINGS.includes(step.kind);
	const foreseen = mayChange ? await foreseeStep(read, machine.id, step) : null;
	const mine = row.clocks.find(({ personId }) => personId === me?.id);
	const [clocks, doubts] = await Promise.all([allClocks(read), timeDoubts(read, { stepId: step.id }, now, timeZone)]);
	const busy = new Set(clocks.map(({ personId }) => personId));
	const busyElsewhere = clocks.filter((clock) => clock.step.id !== step.id && clock.personId !== me?.id);
	const others = people.filter(({ id }) => id !== me?.id && !busy.has(id));
	// Who is planned for the step comes first in the list.
	const crewFirst = [...others].sort(
		(a, b) => Number(row.crew.some(({ id }) => id === b.id)) - Number(row.crew.some(({ id }) => id === a.id)),
	);
	const option = ({ id, name }: { readonly id: string; readonly name: string }) => ({ value: id, label: name });
	const wait = step.waitMinutes === 0 ? "" : `${step.waitWhy ? `${step.waitWhy}, ` : ""}${formatWait(step.waitMinutes)}`;
	const forgotten = (startedAt: Instant) => ranOverNight({ how: "timed", startedAt, endedAt: null }, now, timeZone);
	const seconds = (startedAt: Instant) => Math.max(0, Math.floor((millisOf(now) - millisOf(startedAt)) / 1000));

	/** The one press of this page: my clock. */
	const myClock = !open ? null : !me ? (
		<ButtonLink href="/people/me" kind="main" wide>
			Say who you are
		</ButtonLink>
	) : mine ? (
		<StopClock key={mine.workId} workId={mine.workId} words="Stop my clock" forgotten={forgotten(mine.startedAt)} main />
	) : elsewhere ? (
		<ButtonLink href={`/machines/${elsewhere.machine.number}/work/${elsewhere.step.number}`} kind="main" wide>
			{`Your clock runs on step ${elsewhere.step.number}${elsewhere.machine.number === machine.number ? "" : ` of machine ${elsewhere.machine.number}`}`}
		</ButtonLink>
	) : (
		<StartClock key={`start ${step.allTime.length}`} stepId={step.id} personId={me.id} words="Start my clock" main />
	);

	return (
		<Stack>
			<CautionNotice title={step.title} caution={step.caution} />
			<div>
				<p className="text-ink-2">
					<Link href={`${base}/work`}>Work</Link> · step {step.number} · {STEP_KIND_WORDS[step.kind]}
				</p>
				<h2 className="text-2xl">{step.title}</h2>
				<p className="mt-1">
					<StandingBadge standing={row.standing} hindered={row.hindered} soon={soon} />
					{row.waitsUntil === null ? null : (
						<>
							{" "}
							<Badge means="wait">{`${step.waitWhy || "its wait"} until ${soon(row.waitsUntil)}`}</Badge>
						</>
					)}
				</p>
				{open && row.hindered.length > 0 && row.clocks.length > 0 ? (
					<p className="text-ink-2">{`Still to come first: ${hindranceWords(row.hindered, soon).join("; ")}.`}</p>
				) : null}
			</div>
			<TimeDoubts doubts={doubts} here={step.number} machine={machine.number} timeZone={timeZone} now={now} />
			<Columns>
				<Stack>
					{mayChange ? <BeforehandOfStep step={step} foreseen={foreseen} base={base} /> : null}
					<Card title="Clock" aside={`${formatMinutes(minutesOn(row))} so far, likely ${formatMinutes(step.likelyMinutes)}`}>
						{row.clocks.length === 0 ? (
							<p className="text-ink-2">{open ? "No clock runs on it." : "The step is closed; no clock runs."}</p>
						) : (
							<ul className="flex flex-col gap-3">
								{row.clocks.map((clock) => (
									<li key={clock.workId} className="flex flex-wrap items-center justify-between gap-x-4 gap-y-2">
										<span>
											<strong className="text-lg">
												{clock.name}: <Elapsed seconds={seconds(clock.startedAt)} />
											</strong>
											<span className="af-sub">{`since ${soon(clock.startedAt)}`}</span>
										</span>
										{clock.personId === me?.id ? null : (
											<StopClock workId={clock.workId} words={`Stop ${clock.name}'s clock`} forgotten={forgotten(clock.startedAt)} />
										)}
									</li>
								))}
							</ul>
						)}
						{myClock === null ? null : <div className="mt-4 hidden max-w-sm sm:block">{myClock}</div>}
						{open && others.length > 0 ? (
							<details className="no-print mt-3">
								<summary>Start a second person's clock</summary>
								<div className="pt-3">
									<StartForOther key={others.map(({ id }) => id).join()} stepId={step.id} people={crewFirst.map(option)} />
								</div>
							</details>
						) : null}
						{open
							? busyElsewhere.map((clock) => (
									<p key={clock.personId} className="af-sub mt-2">
										{`${clock.person.name}'s clock runs on `}
										<Link href={`/machines/${clock.machine.number}/work/${clock.step.number}`}>
											{`step ${clock.step.number}${clock.machine.number === machine.number ? "" : ` of machine ${clock.machine.number}`}`}
										</Link>
										.
									</p>
								))
							: null}
					</Card>
					{open ? (
						<Card title="Done" id="done">
							<FinishForm stepId={step.id} wait={wait} />
						</Card>
					) : null}
					<Photos step={step} machineNumber={machine.number} timeZone={timeZone} />
					<Card title="Time" flush aside={step.allTime.length > 0 ? `${formatMinutes(minutesOn(row))} in all` : undefined}>
						<StepTime time={step.allTime} timeZone={timeZone} />
					</Card>
					{step.state === "dropped" ? null : (
						<Card title="Add time from memory" id="add-time">
							<AddTimeForm stepId={step.id} me={me?.id ?? people[0]?.id ?? ""} people={people.map(option)} />
						</Card>
					)}
				</Stack>
				<Stack>
					{open ? null : (
						<Card title={step.state === "done" ? "What happened" : "Why it was dropped"}>
							<p className="whitespace-pre-line">{step.words || "Nothing was written."}</p>
							{step.doneAt === null ? null : <p className="af-sub">{`Done ${formatInstant(instant(step.doneAt), timeZone)}`}</p>}
						</Card>
					)}
					<Card
						title="Plan"
						aside={
							<Link className="no-print" href={`${base}/work/${step.number}/plan`}>
								Change the plan
							</Link>
						}
					>
						<Facts
							facts={[
								{ label: "Who", value: row.crew.map(({ name }) => name).join(", ") || "nobody yet" },
								{
									label: "Minutes",
									value: `${formatMinutes(step.lowMinutes)} / ${formatMinutes(step.likelyMinutes)} / ${formatMinutes(step.highMinutes)}, expected ${formatMinutes(
										sixthsToMinutes(expectedSixths({ low: step.lowMinutes, likely: step.likelyMinutes, high: step.highMinutes })),
									)}`,
								},
								{ label: "Wait after", value: plannedWait(step) },
								{ label: "Somebody must be", value: step.skill },
								{
									label: "Equipment",
									value:
										step.equipment.length === 0 ? null : (
											<ul>
												{step.equipment.map(({ until, equipment }) => (
													<li key={equipment.id}>
														{equipment.name}
														<span className="af-sub">{until === "wait" ? "kept until its wait is over" : "kept until it is done"}</span>
													</li>
												))}
											</ul>
										),
								},
								{
									label: "Position",
									value: step.position ? (
										<Link href={`${base}/build/${step.position.mark}`}>{`${step.position.mark} ${step.position.name}`}</Link>
									) : null,
								},
								{
									label: "Part",
									value: step.part ? (
										step.part.tag ? (
											<TagChip tag={step.part.tag.id} says={step.part.name} href={`/t/${step.part.tag.id}`} size="small" />
										) : (
											step.part.name
										)
									) : null,
								},
								{
									label: "Conversion",
									value: step.conversion ? (
										<Link
											href={`${base}/changes/conversions/${step.conversion.number}`}
										>{`C${step.conversion.number} ${step.conversion.name}`}</Link>
									) : null,
								},
								{ label: "Added", value: step.addedWhy },
							]}
						/>
					</Card>
					<Card title="Needs">
						{step.needs.length === 0 && step.parcels.length === 0 ? (
							<p className="text-ink-2">Nothing has to come before it.</p>
						) : (
							<ul className="flex flex-col gap-2">
								{step.needs.map(({ needs }) => {
									const hinders = row.hindered.filter((one) => one.number === needs.number);
									return (
										<li key={needs.id}>
											<Link href={`${base}/work/${needs.number}`}>{`${needs.number} ${needs.title}`}</Link>{" "}
											{hinders.length === 0 ? (
												<Badge means="original">{needs.state === "dropped" ? "dropped" : "done"}</Badge>
											) : (
												<Badge means="wait">
													{hinders[0]?.why === "waits"
														? hindranceWords(hinders, soon).join("; ")
														: needs.state === "doing"
															? "begun, not done"
															: "not done"}
												</Badge>
											)}
										</li>
									);
								})}
								{step.parcels.map(({ purchase }) => (
									<li key={purchase.id}>
										<Link href={`/buying/${purchase.number}`}>
											{`purchase ${purchase.number}: ${purchase.lines.map(({ what }) => what).join(", ")}`}
										</Link>{" "}
										{purchase.arrivedDay === null ? (
											<Badge means="wait">in the post</Badge>
										) : (
											<Badge means="original">{`came ${formatDayShort(day(purchase.arrivedDay))}`}</Badge>
										)}
									</li>
								))}
							</ul>
						)}
						{step.neededBy.length === 0 ? null : (
							<p className="mt-3 text-ink-2">
								{"Waiting for it: "}
								{step.neededBy.map(({ step: later }, index) => (
									<span key={later.number}>
										{index === 0 ? "" : ", "}
										<Link href={`${base}/work/${later.number}`} title={later.title}>
											{`step ${later.number}`}
										</Link>
									</span>
								))}
							</p>
						)}
					</Card>
					<MadeInIt step={step} base={base} />
					{open ? (
						<Card title="Not to be done">
							<DropForm stepId={step.id} />
						</Card>
					) : (
						<Card title="Not done after all">
							<ReopenForm stepId={step.id} />
						</Card>
					)}
				</Stack>
			</Columns>
			{open ? (
				<div className="contents sm:hidden">
					<ActionBar>
						<div data-kind="main">{myClock}</div>
						<ButtonLink href="#done">It is done</ButtonLink>
						<ButtonLink href="#add-time">Add time</ButtonLink>
					</ActionBar>
				</div>
			) : null}
		</Stack>
	);
}

/** What reversal would lose by the step, before it is done. Nothing where it loses nothing; what is missing where that cannot be said. */
function BeforehandOfStep({ step, foreseen, base }: { step: StepPage; foreseen: Foreseen | null; base: string }) {
	if (step.partId === null && step.positionId === null)
		return (
			<p className="af-sub">
				What reversal would lose by it stands here once its <Link href={`${base}/work/${step.number}/plan`}>plan</Link> says which part or
				position it is about.
			</p>
		);
	if (foreseen === null) return null;
	return (
		<Notice means={step.kind === "alter" ? "stop" : "wait"} live="off" title="Before anything is drilled, cut or stripped for good">
			<p>{foreseen.say}</p>
			<p className="no-print">
				<Link className="inline-block py-1.5" href={`${base}/changes/decide?step=${step.number}`}>
					Weigh the options first
				</Link>
			</p>
		</Notice>
	);
}

function Photos({ step, machineNumber, timeZone }: { step: StepPage; machineNumber: number; timeZone: string }) {
	const photos = step.captures.flatMap(({ id, fileSha, words, takenAt }) =>
		fileSha === null
			? []
			: [
					{
						id,
						src: `/files/${fileSha}/small`,
						href: `/machines/${machineNumber}/papers/photo/${id}`,
						alt: words || `photo of step ${step.number}, machine ${machineNumber}`,
						caption: words || formatInstant(instant(takenAt), timeZone),
					},
				],
	);
	return (
		<Card title="Photos" aside={photos.length > 0 ? photos.length : undefined}>
			<StepPhotos machine={machineNumber} stepId={step.id} />
			<PhotoGrid
				photos={photos}
				empty={<Empty title="No photos of this step">Photograph before each part comes out, and what was found behind it.</Empty>}
			/>
		</Card>
	);
}

/** What came of the step: alterations, decisions, tests, what went in and out. */
function MadeInIt({ step, base }: { step: StepPage; base: string }) {
	const list = (title: string, items: readonly ReactNode[]) =>
		items.length === 0 ? null : (
			<>
				<h3>{title}</h3>
				<ul className="mb-2 flex flex-col gap-1">{items}</ul>
			</>
		);
	return (
		<Card title="Made in it">
			{list(
				"Alterations",
				step.alterations.map(({ number, what, undo, state }) => (
					<li key={number}>
						<Link href={`${base}/changes/${number}`}>{`a${number} ${what}`}</Link> <UndoBadge undo={undo} state={state} />
					</li>
				)),
			)}
			{list(
				"Decisions",
				step.decisions.map(({ id, question }) => (
					<li key={id}>
						<Link href={`${base}/changes#decision-${id}`}>{question}</Link>
					</li>
				)),
			)}
			{list(
				"Tests",
				step.tests.map(({ number, name }) => (
					<li key={number}>
						<Link href={`${base}/tests/${number}`}>{`t${number} ${name}`}</Link>
					</li>
				)),
			)}
			{list(
				"Taken out",
				step.tookOut.map(({ id, part, position }) => <li key={id}>{`${part.name}, from ${position.mark}`}</li>),
			)}
			{list(
				"Put in",
				step.putIn.map(({ id, part, position }) => <li key={id}>{`${part.name}, at ${position.mark}`}</li>),
			)}
			<div className="no-print mt-2">
				<Buttons>
					<ButtonLink href={`${base}/changes/alter?step=${step.number}`}>Record an alteration</ButtonLink>
					<ButtonLink href={`${base}/changes/decide?step=${step.number}`}>Record a decision</ButtonLink>
				</Buttons>
				<p className="af-sub mt-2">{`Undo is one of three: ${UNDO_WORDS.clean}, ${UNDO_WORDS.trace}, ${UNDO_WORDS.never}.`}</p>
			</div>
		</Card>
	);
}
