import type { Line } from "@/lib/reversal/checklist";
import type { Plan } from "@/lib/reversal/plan";

/** What a layer does, in one word over it. */
const WORDS: Readonly<Record<Line["kind"], string>> = {
	"make-safe": "make safe",
	"take-out": "comes off",
	undo: "undo",
	"put-in": "goes back",
	check: "check",
};

/**
 * Layers of what can be done once the layer before is done, from the plan's own "after": a list that a keyboard and a screen
 * reader walk in order; each thing leads to its line of the checklist.
 */
export function Peel({ plan, lines }: { readonly plan: Plan; readonly lines: readonly Line[] }) {
	const depth = new Map<string, number>();
	for (const operation of plan.operations) depth.set(operation.id, Math.max(-1, ...operation.after.map((id) => depth.get(id) ?? 0)) + 1);
	const layers = [...new Set(depth.values())].sort((a, b) => a - b).map((layer) => lines.filter((line) => depth.get(line.id) === layer));
	return (
		<ol className="af-peel">
			{layers.map((layer, index) => (
				<li key={layer[0]?.id ?? index}>
					<p className="af-peel-layer">
						<span className="sr-only">Layer </span>
						{index + 1} · {[...new Set(layer.map(({ kind }) => WORDS[kind]))].join(", ")}
					</p>
					<ul>
						{layer.map((line) => (
							<li key={line.id} data-kind={line.kind} data-trace={line.leavesTrace ? "" : undefined}>
								<a href={`#${anchorOf(line.id)}`}>
									<span className="af-peel-deed">
										<Sign kind={line.kind} /> {line.kind === "make-safe" || line.kind === "check" ? line.deed : line.what}
									</span>
									<span className="af-sub">
										{[
											line.kind === "undo" ? "undo" : "",
											line.leavesTrace ? "leaves a trace" : "",
											line.kind === "put-in" || line.kind === "undo"
												? (line.from[0]?.tag ?? line.from[0]?.words ?? "")
												: (line.fixings[0] ?? ""),
											line.origin !== null && line.origin !== "original" ? "not original" : "",
										]
											.filter(Boolean)
											.join(" · ") ||
											(line.mark ?? "")}
									</span>
								</a>
							</li>
						))}
					</ul>
				</li>
			))}
		</ol>
	);
}

/** The line of the checklist that an operation has. */
export const anchorOf = (id: string): string => `op-${encodeURIComponent(id)}`;

/** Out: an arrow away; in: an arrow home; undo: an arrow round. Said to nobody: the layer and the line say it in words. */
function Sign({ kind }: { readonly kind: Line["kind"] }) {
	const paths: Readonly<Record<Line["kind"], string>> = {
		"make-safe": "M8 1.5v5M4.2 4.2a5.5 5.5 0 1 0 7.6 0",
		"take-out": "M8 14V3M3.5 7.5 8 3l4.5 4.5",
		undo: "M3 3v4.5h4.5M3.4 7.5A5 5 0 1 1 4.5 12",
		"put-in": "M8 2v11M3.5 8.5 8 13l4.5-4.5",
		check: "M2.5 8.5 6.5 12.5 13.5 4",
	};
	return (
		<svg className="af-peel-sign" viewBox="0 0 16 16" width="14" height="14" aria-hidden="true">
			<path d={paths[kind]} fill="none" stroke="currentColor" strokeWidth="1.8" strokeLinecap="round" strokeLinejoin="round" />
		</svg>
	);
}
