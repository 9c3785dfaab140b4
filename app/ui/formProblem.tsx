import type { Problem } from "./useActionForm";

/** Where a form says why nothing was recorded. It stands in the page from the start, so that its words are announced. */
export function FormProblem({ problem }: { readonly problem: Problem | null }) {
	return (
		<div className="af-problem" role="alert">
			{problem ? problem.say : null}
			{problem?.also.length ? (
				<ul>
					{problem.also.map((words) => (
						<li key={words}>{words}</li>
					))}
				</ul>
			) : null}
		</div>
	);
}
