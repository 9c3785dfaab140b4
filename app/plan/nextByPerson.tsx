import { Badge } from "@/app/ui/badge";
import { Card } from "@/app/ui/card";
import { Grid } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { formatMinutes } from "@/lib/core/minutes";
import { plannedMinutes } from "@/lib/schedule/shopProblem";
import type { ShopAhead } from "@/lib/schedule/shopQueries";
import { momentOf, named, waitedWords } from "./said";

const FEW = 4;

/** What each person does next, by the plan. Whoever uses this browser stands first. */
export function NextByPerson({ ahead, me }: { readonly ahead: ShopAhead; readonly me: string | null }) {
	const people = ahead.people
		.map((person, at) => ({ ...person, at }))
		.filter(({ at }) => (ahead.asked.problem.people[at]?.windows.length ?? 0) > 0 || ahead.plan.tasks.some(({ crew }) => crew.includes(at)))
		.sort((a, b) => Number(b.id === me) - Number(a.id === me));
	return (
		<Grid>
			{people.map(({ id, name, at }) => {
				const mine = ahead.plan.tasks
					.map((row, task) => ({ ...row, task, found: named(ahead, row.id) }))
					.filter(({ crew, start }) => crew.includes(at) && start < Number.POSITIVE_INFINITY)
					.sort((a, b) => a.start - b.start);
				return (
					<Card key={id} title={name} aside={mine.length > FEW ? `${mine.length} steps` : undefined}>
						{mine.length === 0 ? <p className="af-lead">Nothing planned. Take what is ready, or plan a step.</p> : null}
						<ol className="flex flex-col gap-3">
							{mine.slice(0, FEW).map(({ task, start, finish, found, crew }, place) =>
								found === null ? null : (
									<li key={found.step.id}>
										<Link className={place === 0 ? "font-semibold" : ""} href={found.href}>
											{found.short} {found.step.title}
										</Link>
										<span className="af-sub">
											{start === 0 ? <Badge means="original">now</Badge> : momentOf(ahead, start)}
											{`, ${leftWords(ahead, task)}, done ${momentOf(ahead, finish)}`}
											{crew.length > 1
												? `, with ${crew
														.filter((person) => person !== at)
														.map((person) => ahead.people[person]?.name)
														.join(" and ")}`
												: ""}
										</span>
										{place === 0 ? <span className="af-sub">{waitedWords(ahead, task)}</span> : null}
									</li>
								),
							)}
						</ol>
					</Card>
				);
			})}
		</Grid>
	);
}

/** `50 min`, or `1 h 15 left of 3 h` of what has begun. */
function leftWords(ahead: ShopAhead, task: number): string {
	const asked = ahead.asked.problem.tasks[task];
	if (asked === undefined) return "";
	const left = formatMinutes(plannedMinutes(asked));
	return asked.spent === 0 ? left : `${left} left of ${formatMinutes(asked.estimate.likely)}`;
}
