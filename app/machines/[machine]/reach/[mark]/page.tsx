import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { decoded } from "@/app/decoded";
import { Card } from "@/app/ui/card";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { PrintButton } from "@/app/ui/printButton";
import { systemClock } from "@/lib/core/clock";
import { shopStore } from "@/lib/db/shopStore";
import { positionByMark, positionChoices } from "@/lib/positions/positionQueries";
import { CHECK, MAKE_SAFE } from "@/lib/reversal/checklist";
import { reachOf } from "@/lib/reversal/reachQueries";
import type { ReachSheet } from "@/lib/reversal/reachSheet";
import { nextSentence, reachSentence, things } from "@/lib/reversal/reachWords";
import { thisMachine } from "../../thisMachine";
import { AlsoForm } from "./alsoForm";
import { InOrder } from "./inOrder";

type Props = {
	readonly params: Promise<{ machine: string; mark: string }>;
	readonly searchParams: Promise<{ readonly and?: string | string[] }>;
};

/** So many positions at once at most: more than a person would open for one job. */
const MOST = 20;

export async function generateMetadata({ params }: Props): Promise<Metadata> {
	return { title: `What comes off for ${decoded((await params).mark)}` };
}

/** What must come off to get at a position, in which order, and how long that takes. For service; nothing is recorded by it. */
export default async function ReachPage({ params, searchParams }: Props) {
	const asked = await params;
	const machine = await thisMachine(asked.machine);
	const { read } = await shopStore();
	const mark = decoded(asked.mark);
	const position = await positionByMark(read, machine.id, mark);
	if (!position) notFound();
	const also = [(await searchParams).and ?? []]
		.flat()
		.map((each) => each.trim())
		.filter((each) => each !== "" && each !== mark);
	const marks = [...new Set([mark, ...also])].slice(0, MOST);
	const [sheet, choices] = await Promise.all([reachOf(read, machine.id, marks, systemClock()), positionChoices(read, machine.id)]);
	const base = `/machines/${machine.number}`;
	const head = (lead: string, goal: string) => (
		<div className="af-pagehead">
			<div className="af-pagehead-words">
				<div className="af-pagehead-above">
					<Link href={`${base}/build`}>Build</Link>
					<span aria-hidden="true">›</span>
					<Link href={`${base}/build/${encodeURIComponent(mark)}`}>{position.name}</Link>
				</div>
				<h2>{`What comes off to get at ${goal}`}</h2>
				<p className="af-lead">{lead}</p>
			</div>
			<div className="af-pagehead-actions">
				<PrintButton>Print it</PrintButton>
			</div>
		</div>
	);
	if (!sheet.ok)
		return (
			<Stack>
				{head("", position.name)}
				<Notice means="stop" live="off" title="No way can be worked out from this record">
					<p>{sheet.error.say}</p>
				</Notice>
			</Stack>
		);
	const { wanted, first, out, into, stuck, unknown } = sheet.value;
	const alsoForm = (
		<div className="no-print">
			<Card title="More than one thing">
				<AlsoForm
					base={`${base}/reach/${encodeURIComponent(mark)}`}
					also={choices.filter((choice) => also.includes(choice.mark))}
					most={MOST}
					choices={choices.filter((choice) => !marks.includes(choice.mark))}
				/>
			</Card>
		</div>
	);
	return (
		<Stack>
			{head(reachSentence(sheet.value), wanted.length > 0 ? things(wanted) : position.name)}
			{stuck.map((seat) => (
				<Notice key={seat.mark} means="stop" live="off" title={`Out of reach: ${seat.mark} ${seat.name}`}>
					<p>{seat.why}</p>
				</Notice>
			))}
			{unknown.length > 0 ? (
				<Notice means="wait" live="off">
					{`Left out: ${unknown.join(", ")} ${unknown.length === 1 ? "is no position" : "are no positions"} of this machine.`}
				</Notice>
			) : null}
			<Notice means="wait" live="off" title="Make safe first">
				<ul className="af-cautions">
					{MAKE_SAFE.map((caution) => (
						<li key={caution}>{caution}</li>
					))}
				</ul>
			</Notice>
			{out.length === 0 ? (
				<div className="max-w-3xl">{alsoForm}</div>
			) : (
				<Columns>
					<Stack>
						<div className="break-inside-avoid">
							<Card title="Out, in this order" flush>
								<InOrder caption="What comes out, in order" lines={out} wanted={wanted} base={base} />
							</Card>
						</div>
						<div className="break-inside-avoid">
							<Card title="In again, in this order" flush>
								<InOrder caption="What goes in again, in order" lines={into} wanted={wanted} base={base} startAt={out.length} />
							</Card>
						</div>
						<Notice live="off" title="Then check">
							<p>{CHECK[0]}</p>
						</Notice>
					</Stack>
					<Stack>
						{first.length > 0 ? <OtherWay sheet={sheet.value} /> : null}
						{alsoForm}
					</Stack>
				</Columns>
			)}
		</Stack>
	);
}

function OtherWay({ sheet }: { readonly sheet: ReachSheet }) {
	return (
		<Card title="Another way">
			<p>{nextSentence(sheet)}</p>
			{sheet.leastProved ? null : <p className="af-sub mt-2">The search for the quickest way was cut short: a quicker one may exist.</p>}
			{sheet.firstTime.unknown > 0 ? (
				<p className="af-sub mt-2">
					Where nobody has estimated how long a thing takes, the quickest way is found as if it took no time. Say it at the position.
				</p>
			) : null}
		</Card>
	);
}
