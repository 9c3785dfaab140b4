import "./decision.css";

const WORDS = { chosen: "chosen", refused: "refused", open: "still open" } as const;

/** Chosen is a filled disc with a tick, refused an empty one struck through, still open a broken ring: told apart without colour. */
export function DecidedMark({ state }: { readonly state: keyof typeof WORDS }) {
	return (
		<p className="af-decided" data-state={state}>
			<svg viewBox="0 0 20 20" width="20" height="20" aria-hidden="true">
				<circle cx="10" cy="10" r="8.5" />
				{state === "chosen" ? <path d="M5.5 10.5l3 3 6-7" /> : null}
				{state === "refused" ? <path d="M4 16L16 4" /> : null}
			</svg>
			{WORDS[state]}
		</p>
	);
}
