import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import type { ShopAhead } from "@/lib/schedule/shopQueries";
import { doubtWords, named } from "./said";

/** A page shows so many of a kind; the rest is counted. */
const FEW = 8;

/** What the plan cannot date, and what it is not sure of, each with the way to mend it. `machineId` keeps to one machine's steps. */
export function Doubts({ ahead, machineId }: { readonly ahead: ShopAhead; readonly machineId?: string }) {
	const isMine = (stepId: string): boolean => machineId === undefined || named(ahead, stepId)?.machine.id === machineId;
	const doubts = ahead.asked.doubts.filter((doubt) => !("step" in doubt) || isMine(doubt.step)).map((doubt) => doubtWords(ahead, doubt));
	const undated = ahead.asked.undated.filter(({ step }) => isMine(step)).flatMap(({ step }) => named(ahead, step) ?? []);
	const without = ahead.plan.without.flatMap((task) => named(ahead, ahead.asked.problem.tasks[task]?.id ?? "") ?? []);
	if (doubts.length === 0 && undated.length === 0 && without.length === 0) return null;
	return (
		<Notice
			means="wait"
			live="off"
			title={
				undated.length === 0
					? "The plan is not sure of this"
					: `${undated.length === 1 ? "One step has" : `${undated.length} steps have`} no date`
			}
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
			{without.length > 0 ? <p>No hours are left within two years for {without.map(({ short }) => short).join(", ")}.</p> : null}
		</Notice>
	);
}
