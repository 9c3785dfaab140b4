import type { CSSProperties, ReactNode } from "react";

export type CurveMark = {
	/** 0 to 1 along the width. */
	readonly x: number;
	/** 0 to 1 of the height, from below. */
	readonly y: number;
	/** "1 in 2 by Thu 4 Dec". */
	readonly label: string;
};

/** How likely by when: a rising curve from 0 to 1, labelled on itself, with its table one press away. */
export function Curve({
	caption,
	points,
	ticks,
	marks,
	line,
	note,
	children,
}: {
	readonly caption: string;
	/** Left to right, both 0 to 1. */
	readonly points: readonly { readonly x: number; readonly y: number }[];
	readonly ticks: readonly { readonly x: number; readonly label: string }[];
	readonly marks: readonly CurveMark[];
	/** A moment that matters, such as the day that was promised. */
	readonly line?: { readonly x: number; readonly label: string } | null;
	readonly note?: ReactNode;
	readonly children: ReactNode;
}) {
	const path = points.map(({ x, y }, at) => `${at === 0 ? "M" : "L"}${(x * 100).toFixed(2)} ${((1 - y) * 100).toFixed(2)}`).join("");
	const at = (x: number, y: number): CSSProperties => ({ left: `${(x * 100).toFixed(2)}%`, top: `${((1 - y) * 100).toFixed(2)}%` });
	return (
		<figure className="af-plot">
			<div className="af-curve" role="img" aria-label={`${caption}: ${marks.map(({ label }) => label).join("; ")}`}>
				<div className="af-curve-room">
					<svg viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
						<path className="af-curve-area" d={`${path}L100 100L0 100Z`} />
						{[25, 50, 75].map((y) => (
							<path key={y} className="af-curve-grid" d={`M0 ${y}H100`} />
						))}
						{ticks.map(({ x }) => (
							<path key={x} className="af-curve-grid" d={`M${x * 100} 0V100`} />
						))}
						{line ? <path className="af-curve-line" d={`M${line.x * 100} 0V100`} /> : null}
						<path className="af-curve-path" d={path} />
					</svg>
					{marks.map(({ x, y, label }) => (
						<span key={label} className="af-curve-mark" data-side={x > 0.55 ? "left" : "right"} style={at(x, y)}>
							<i />
							<b className="af-curve-word">{label}</b>
						</span>
					))}
					{line ? (
						<span className="af-curve-said" data-side={line.x > 0.7 ? "left" : "right"} style={at(line.x, 1)}>
							{line.label}
						</span>
					) : null}
				</div>
				<div className="af-curve-ticks">
					{ticks.map(({ x, label }) => (
						<span key={x} className="af-curve-tick" style={{ left: `${x * 100}%` }}>
							{label}
						</span>
					))}
				</div>
			</div>
			{note ? <figcaption>{note}</figcaption> : null}
			<details className="af-details">
				<summary>As a table</summary>
				{children}
			</details>
			<div className="print-only">{children}</div>
		</figure>
	);
}
