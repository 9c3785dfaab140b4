import type { ReactNode } from "react";

/** One subject on the page. `flush` lets a table run to the card's edges; `level` is its heading's (2). */
export function Card({
	title,
	aside,
	photo,
	flush,
	level = 2,
	id,
	children,
}: {
	readonly title?: ReactNode;
	/** Small words at the right of the title: a currency, a count, a link. */
	readonly aside?: ReactNode;
	/** A picture over the whole width, above everything. */
	readonly photo?: ReactNode;
	readonly flush?: boolean;
	readonly level?: 2 | 3;
	readonly id?: string;
	readonly children?: ReactNode;
}) {
	const Heading = level === 2 ? "h2" : "h3";
	return (
		<section className="af-card" id={id} data-flush={flush ? "" : undefined}>
			{photo ? <div className="af-card-photo">{photo}</div> : null}
			{title || aside ? (
				<div className="af-card-head">
					{title ? <Heading>{title}</Heading> : null}
					{aside ? <div className="af-card-aside">{aside}</div> : null}
				</div>
			) : null}
			{children}
		</section>
	);
}
