import type { ReactNode } from "react";

/** What one position says about originality: a shape each, so that it survives a photocopier. */
export type MarkState = "original" | "kept" | "not-original" | "unknown" | "lost" | "empty" | "unseen";

/** The word behind each shape. */
export const markWords: Readonly<Record<MarkState, string>> = {
	original: "original, fitted",
	kept: "original, kept",
	"not-original": "not original",
	unknown: "origin not known",
	lost: "original lost",
	empty: "empty",
	unseen: "not seen yet",
};

/** filled = original, fitted; outlined = original, kept; hatched = not original; half filled = not known; crossed = lost; dot = empty; dashed = not seen yet. */
export function OriginalityMark({
	state,
	says,
}: {
	readonly state: MarkState /** Named here when nothing beside it does. */;
	readonly says?: string;
}) {
	return says ? (
		<svg className="af-mark" data-state={state} viewBox="0 0 16 16" role="img" aria-label={says}>
			<title>{says}</title>
			{shapes[state]}
		</svg>
	) : (
		<svg className="af-mark" data-state={state} viewBox="0 0 16 16" aria-hidden="true">
			{shapes[state]}
		</svg>
	);
}

const box = { x: 1, y: 1, width: 14, height: 14, rx: 1.5 };
const shapes: Readonly<Record<MarkState, ReactNode>> = {
	original: <rect x={0} y={0} width={16} height={16} rx={2} fill="currentColor" />,
	kept: <rect {...box} fill="none" stroke="currentColor" strokeWidth={2} />,
	"not-original": (
		<>
			<rect {...box} fill="none" stroke="currentColor" strokeWidth={1.2} />
			<path d="M1.5 5.5 10.5 14.5M1.5 10.5 5.5 14.5M3 1.5 14.5 13M8 1.5 14.5 8" fill="none" stroke="currentColor" strokeWidth={1.5} />
		</>
	),
	unknown: (
		<>
			<rect {...box} fill="none" stroke="currentColor" strokeWidth={1.2} />
			<path d="M1.5 1.5V14.5H14.5Z" fill="currentColor" />
		</>
	),
	lost: <path d="M1.5 1.5 14.5 14.5M14.5 1.5 1.5 14.5" fill="none" stroke="currentColor" strokeWidth={2.2} strokeLinecap="round" />,
	empty: <circle cx={8} cy={8} r={2} fill="currentColor" />,
	unseen: <rect {...box} fill="none" stroke="currentColor" strokeWidth={1.3} strokeDasharray="2.6 2" />,
};
