import { type CSSProperties, type ReactNode, useId } from "react";

/** work: solid. wait and post: hatched, in two directions. held: outlined. off: dotted. On paper they differ in black, too. */
export type TimelineBlock = {
	readonly key: string;
	readonly kind: "work" | "wait" | "post" | "held" | "off";
	/** Shares of the width, 0 to 1. */
	readonly from: number;
	readonly until: number;
	/** A few signs in the block, where there is room. */
	readonly label?: string;
	/** The whole of it, for whoever points at it. */
	readonly title: string;
};

export type TimelineLine = {
	readonly key: string;
	readonly name: ReactNode;
	readonly lanes: readonly (readonly TimelineBlock[])[];
};

/** Who does what when: days side by side, a line each. The figures are the table's that follows; the picture says nothing that it does not. */
export function TimelinePlot({
	caption,
	columns,
	groups,
	now,
	note,
	children,
}: {
	readonly caption: string;
	readonly columns: readonly {
		readonly key: string;
		readonly label: string;
		/** Where there is little room. */
		readonly short: string;
		readonly from: number;
		readonly until: number;
		readonly isShut: boolean;
	}[];
	readonly groups: readonly { readonly name: string; readonly lines: readonly TimelineLine[] }[];
	readonly now: number | null;
	readonly note?: ReactNode;
	/** The same as a table. */
	readonly children?: ReactNode;
}) {
	const place = (from: number, until: number): CSSProperties => ({ left: percent(from), width: percent(until - from) });
	return (
		<figure className="af-plot">
			<div className="af-timeline" aria-hidden="true">
				<div className="af-timeline-days">
					<span className="af-timeline-corner" />
					<div className="af-timeline-dates">
						{columns.map(({ key, label, short, from, until, isShut }) => (
							<span key={key} className="af-timeline-date" style={place(from, until)} data-shut={isShut ? "" : undefined}>
								{isShut ? null : (
									<>
										<span className="af-timeline-long">{label}</span>
										<span className="af-timeline-short">{short}</span>
									</>
								)}
							</span>
						))}
					</div>
				</div>
				{groups.map((group) => (
					<div key={group.name} className="af-timeline-group">
						<p>{group.name}</p>
						{group.lines.map(({ key, name, lanes }) => (
							<div key={key} className="af-timeline-line">
								<span className="af-timeline-name">{name}</span>
								<div className="af-timeline-track">
									{columns.map(({ key: day, from, until, isShut }) => (
										<i key={day} className="af-timeline-day" style={place(from, until)} data-shut={isShut ? "" : undefined} />
									))}
									{now === null ? null : <i className="af-timeline-now" style={{ left: percent(now) }} />}
									{(lanes.length === 0 ? [[]] : lanes).map((lane, at) => (
										// biome-ignore lint/suspicious/noArrayIndexKey: lanes have no other name than their place
										<div key={at} className="af-timeline-lane">
											{lane.map((block) => (
												<span
													key={block.key}
													className="af-timeline-block"
													data-kind={block.kind}
													style={place(block.from, block.until)}
													title={block.title}
												>
													<Shape kind={block.kind} />
													{block.label ? <b className="af-timeline-word">{block.label}</b> : null}
												</span>
											))}
										</div>
									))}
								</div>
							</div>
						))}
					</div>
				))}
			</div>
			{note ? <figcaption>{note}</figcaption> : null}
			{children === undefined ? null : (
				<details className="af-details">
					<summary>{`${caption}, as a table`}</summary>
					{children}
				</details>
			)}
		</figure>
	);
}

const percent = (share: number): string => `${(share * 100).toFixed(3)}%`;

function Shape({ kind }: { kind: TimelineBlock["kind"] }) {
	const hatch = useId();
	if (kind === "work" || kind === "held") return null;
	const turn = { wait: 45, post: -45, off: 0 }[kind];
	return (
		<svg aria-hidden="true">
			<pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform={`rotate(${turn})`}>
				{kind === "off" ? <circle cx="3" cy="3" r="0.9" fill="currentColor" /> : <rect width="2.6" height="6" fill="currentColor" />}
			</pattern>
			<rect width="100%" height="100%" fill={`url(#${hatch})`} />
		</svg>
	);
}
