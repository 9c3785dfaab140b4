import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { stepsOfDoubt } from "@/lib/schedule/doubtSteps";
import type { ShopAhead } from "@/lib/schedule/shopQueries";
import { doubtWords, named } from "./said";

/** A page shows so many of a kind; the rest is counted. */
const FEW = 8;

/** What the plan cannot date, and what it is not sure of, each with the way to mend it. `machineId` keeps to one machine's steps. */
export function Doubts({ ahead, machineId }: { readonly ahead: ShopAhead; readonly machineId?: string }) {
	const isMine = (stepId: string): boolean => machineId === undefined || named(ahead, stepId)?.machine.id === machineId;
	const doubts = ahead.asked.doubts
		.filter((doubt) => stepsOfDoubt(ahead.facts, doubt).some(isMine))
		.map((doubt) => doubtWords(ahead, doubt));
	const undated = ahead.asked.undated.filter(({ step }) => isMine(step)).flatMap(({ step }) => named(ahead, step) ?? []);
	const without = ahead.plan.without
		.map((task) => ahead.asked.problem.tasks[task]?.id ?? "")
		.filter(isMine)
		.flatMap((id) => named(ahead, id) ?? []);
	const dateless = undated.length + without.length;
	if (doubts.length === 0 && undated.length === 0 && without.length === 0) return null;
	return (
		<Notice
			means="wait"
			live="off"
			title={dateless === 0 ? "The plan is not sure of this" : `${dateless === 1 ? "One step has" : `${dateless} steps have`} no date`}
		>
			<ul className="flex flex-col gap-2">
				{doubts.slice(0, FEW).map(({ say, href, mend }) => (
					<li key={say}>
						{say} <Link href={href}>{mend}</Link>.
					</li>
				))}
			</ul>
			{doubts.length > FEW ? <p>And {doubts.length - FEW} more of these.</p> : null}
			{undated.length > 0 ? (
				<p>
					Without a date:{" "}
					{undated.slice(0, FEW).map(({ short, href, step }, at) => (
						<span key={short}>
							{at === 0 ? "" : ", "}
							<Link href={href}>
								{short} {step.title}
							</Link>
						</span>
					))}
					{undated.length > FEW ? ` and ${undated.length - FEW} more` : ""}.
				</p>
			) : null}
			{without.length > 0 ? (
				<p>
					Too long for the hours that are known, or after a step that is: {without.map(({ short }) => short).join(", ")}. Give who does it
					more hours under <Link href="/people/hours">Hours and days off</Link>, or name somebody else.
				</p>
			) : null}
		</Notice>
	);
}
