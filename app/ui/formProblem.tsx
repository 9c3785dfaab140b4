import type { Problem } from "./useActionForm";

/**
 * Where a form says why nothing was recorded. It stands in the page from the start, so that its words are announced;
 * the same words after another try are new words, and are announced again.
 */
export function FormProblem({ problem }: { readonly problem: Problem | null }) {
	return (
		<div className="af-problem" role="alert">
			{problem ? (
				<div key={problem.attempt}>
					<p>{problem.say}</p>
					{problem.also.length ? (
						<ul>
							{problem.also.map((words) => (
								<li key={words}>{words}</li>
							))}
						</ul>
					) : null}
				</div>
			) : null}
		</div>
	);
}
