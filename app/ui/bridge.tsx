import { type ReactNode, useId } from "react";
import { placeBridge } from "./bridgePlaces";

/** end: ink, from nothing. start: grey, from nothing. over: hatched. under: outlined. On paper the four differ in black, too. */
export type BridgeBar = {
	readonly label: string;
	readonly kind: "start" | "over" | "under" | "end";
	/** Where the bar begins and ends, in any unit, the same for all bars. */
	readonly from: number;
	readonly to: number;
	/** What it comes to, or adds, or takes off, as it is to be read. */
	readonly text: string;
};

/**
 * How one sum becomes another, step by step: each bar begins where the one before it ended. Each is labelled, and `table`,
 * which the bars add up to, stands one press away.
 */
export function Bridge({
	caption,
	unit,
	bars,
	note,
	table,
}: {
	readonly caption: string;
	readonly unit: string;
	readonly bars: readonly BridgeBar[];
	readonly note?: ReactNode;
	readonly table: ReactNode;
}) {
	const places = placeBridge(bars);
	const room = `${Math.max(5, ...bars.map(({ text }) => text.length)) * 0.62 + 0.8}rem`;
	return (
		<figure className="af-plot">
			<ul className="af-bars" aria-label={`${caption}, ${unit}`}>
				{bars.map((bar, index) => {
					const place = places[index];
					if (place === undefined) return null;
					return (
						<li key={bar.label}>
							<span>{bar.label}</span>
							<div className="af-bar-track" style={{ "--room": room } as Record<string, string>}>
								<svg aria-hidden="true" className={`af-bridge-${bar.kind}`}>
									{index === 0 ? null : (
										<line className="af-bridge-guide" x1={percent(place.joins)} x2={percent(place.joins)} y1="-50%" y2="25%" />
									)}
									<Shape kind={bar.kind} x={percent(place.start)} width={percent(place.length)} />
								</svg>
								<span className="af-bar-amount" style={{ left: percent(place.start + place.length) }}>
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
				{table}
			</details>
		</figure>
	);
}

const percent = (share: number): string => `${(share * 100).toFixed(3)}%`;

function Shape({ kind, x, width }: { kind: BridgeBar["kind"]; x: string; width: string }) {
	const hatch = useId();
	const place = { x, width, y: "25%", height: "50%", rx: 2 };
	if (kind === "start" || kind === "end") return <rect {...place} fill="currentColor" />;
	if (kind === "under") return <rect {...place} fill="none" stroke="currentColor" strokeWidth={1.5} />;
	return (
		<>
			<pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
				<rect width="3.4" height="6" fill="currentColor" />
			</pattern>
			<rect {...place} fill={`url(#${hatch})`} stroke="currentColor" strokeWidth={1.5} />
		</>
	);
}
