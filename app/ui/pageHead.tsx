import type { ReactNode } from "react";
import type { Means } from "./means";

export type Figure = { readonly value: ReactNode; readonly label: string; readonly means?: Means };

/** The thing first: picture, tag, name, where it is now; then what to do next. Every page has exactly one. */
export function PageHead({
	title,
	tag,
	above,
	lead,
	photo,
	figures,
	actions,
}: {
	readonly title: ReactNode;
	/** A chip on the title's own line. */
	readonly tag?: ReactNode;
	/** Over the title: its tag, badges, the way back up. */
	readonly above?: ReactNode;
	/** One line under the title. */
	readonly lead?: ReactNode;
	readonly photo?: ReactNode;
	/** Two to four numbers that sum the thing up. */
	readonly figures?: readonly Figure[];
	readonly actions?: ReactNode;
}) {
	return (
		<div className="af-pagehead">
			{photo ? <div className="af-pagehead-photo">{photo}</div> : null}
			<div className="af-pagehead-words">
				{above ? <div className="af-pagehead-above">{above}</div> : null}
				<div className="af-pagehead-title">
					{tag}
					<h1>{title}</h1>
				</div>
				{lead ? <div className="af-lead">{lead}</div> : null}
			</div>
			{figures?.length ? (
				<ul className="af-figures">
					{figures.map((figure) => (
						<li key={figure.label} className="af-figure" data-means={figure.means}>
							<span className="af-figure-value">{figure.value}</span>
							<span className="af-figure-label">{figure.label}</span>
						</li>
					))}
				</ul>
			) : null}
			{actions ? <div className="af-pagehead-actions">{actions}</div> : null}
		</div>
	);
}
