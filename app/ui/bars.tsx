import { type ReactNode, useId } from "react";
import { Table } from "./table";

/** estimate: grey. spent: solid. to-come: hatched. total: ink. On paper the four differ in black, too. */
export type Bar = {
	readonly label: string;
	readonly kind: "estimate" | "spent" | "to-come" | "total";
	/** In any unit, the same for all bars; only its length is drawn. Null draws no bar, only the words. */
	readonly amount: number | null;
	/** Where the bar begins, in the same unit: what is still to come begins where what is spent ends. */
	readonly from?: number;
	/** The amount as the shop writes it, or why there is none ("no estimate yet"). */
	readonly text: string;
};

/** Horizontal bars on one scale, each labelled at its end, with the table one press away. */
export function Bars({
	caption,
	unit,
	bars,
	note,
}: {
	readonly caption: string;
	readonly unit: string;
	readonly bars: readonly Bar[];
	readonly note?: ReactNode;
}) {
	const longest = Math.max(1, ...bars.map((bar) => (bar.from ?? 0) + (bar.amount ?? 0)));
	const percent = (value: number) => `${Math.max(0, (value / longest) * 100).toFixed(3)}%`;
	const room = `${Math.max(5, ...bars.map((bar) => (bar.amount === null ? 0 : bar.text.length))) * 0.62 + 0.8}rem`;
	return (
		<figure className="af-plot">
			<ul className="af-bars" aria-label={`${caption}, ${unit}`}>
				{bars.map((bar) => {
					const from = bar.from ?? 0;
					const end = from + (bar.amount ?? 0);
					return (
						<li key={bar.label}>
							<span>{bar.label}</span>
							<div className="af-bar-track" style={{ "--room": room } as Record<string, string>}>
								{bar.amount === null ? null : (
									<svg aria-hidden="true" className={`af-bars-${bar.kind}`}>
										{from > 0 ? <line className="af-bars-guide" x1={percent(from)} x2={percent(from)} y1="-24" y2="100%" /> : null}
										<BarShape kind={bar.kind} x={percent(from)} width={percent(bar.amount)} />
									</svg>
								)}
								<span
									className={`af-bar-amount ${bar.amount === null ? "af-bar-none" : ""}`}
									style={{ left: percent(bar.amount === null ? 0 : end) }}
								>
									{bar.text}
								</span>
							</div>
						</li>
					);
				})}
			</ul>
			{note ? <figcaption>{note}</figcaption> : null}
			<details className="af-details">
				<summary>As a table</summary>
				<Table
					caption={caption}
					stack="never"
					rows={bars}
					rowKey={(bar) => bar.label}
					columns={[
						{ key: "what", head: "What", main: true, cell: (bar) => bar.label },
						{ key: "amount", head: unit, align: "decimal", cell: (bar) => bar.text },
					]}
				/>
			</details>
		</figure>
	);
}

function BarShape({ kind, x, width }: { kind: Bar["kind"]; x: string; width: string }) {
	const hatch = useId();
	const place = { x, width, y: "25%", height: "50%", rx: 2 };
	if (kind !== "to-come") return <rect {...place} fill="currentColor" />;
	return (
		<>
			<pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
				<rect width="3.4" height="6" fill="currentColor" />
			</pattern>
			<rect {...place} fill={`url(#${hatch})`} stroke="currentColor" strokeWidth={1.5} />
		</>
	);
}
