import { type MarkState, markWords, OriginalityMark } from "./originalityMark";
import { StripReader } from "./stripReader";

export type StripMark = {
	readonly id: string;
	readonly name: string;
	readonly state: MarkState /** Where "Open" leads. */;
	readonly href?: string;
};
export type StripGroup = { readonly name: string; readonly marks: readonly StripMark[] };

/**
 * Every position as one small mark, grouped as the machine is built. `label` says which state it shows ("Now", "As found").
 * One stop for the keyboard: arrows go from mark to mark, and the mark under finger, pointer or focus is named below.
 */
export function OriginalityStrip({
	label,
	groups,
	legend = true,
}: {
	readonly label: string;
	readonly groups: readonly StripGroup[];
	readonly legend?: boolean;
}) {
	let first = true;
	return (
		<div>
			<StripReader label={label}>
				<ul className="af-strip-groups">
					{groups.map((group) => (
						<li key={group.name}>
							<p className="af-strip-group-name">{group.name}</p>
							<ul className="af-strip-marks" aria-label={group.name}>
								{group.marks.map((mark) => {
									const tabIndex = first ? 0 : -1;
									first = false;
									const says = `${mark.name}: ${markWords[mark.state]}`;
									return (
										<li key={mark.id}>
											<button type="button" tabIndex={tabIndex} aria-label={says} title={says} data-says={says} data-href={mark.href}>
												<OriginalityMark state={mark.state} />
											</button>
										</li>
									);
								})}
							</ul>
						</li>
					))}
				</ul>
			</StripReader>
			{legend ? <StripLegend marks={groups.flatMap((group) => group.marks)} /> : null}
		</div>
	);
}

/** The strip as one picture, for a card in a list: no stop for the keyboard, its counts are its name. */
export function SmallStrip({
	label,
	marks,
}: {
	readonly label: string;
	readonly marks: readonly { readonly id: string; readonly state: MarkState }[];
}) {
	const counts = countsOf(marks).map(([state, count]) => `${count} ${markWords[state]}`);
	return (
		<div className="af-strip-small" role="img" aria-label={`${label}: ${counts.join("; ") || "no positions yet"}`}>
			{marks.map((mark) => (
				<OriginalityMark key={mark.id} state={mark.state} />
			))}
		</div>
	);
}

/** The shapes in use, each with its word and how many there are. */
export function StripLegend({ marks }: { readonly marks: readonly { readonly state: MarkState }[] }) {
	return (
		<ul className="af-strip-legend" aria-label="What the marks mean">
			{countsOf(marks).map(([state, count]) => (
				<li key={state}>
					<OriginalityMark state={state} />
					<span>
						{markWords[state]} <b>{count}</b>
					</span>
				</li>
			))}
		</ul>
	);
}

const order: readonly MarkState[] = ["original", "kept", "not-original", "unknown", "lost", "empty", "unseen"];
const countsOf = (marks: readonly { readonly state: MarkState }[]) =>
	order.map((state) => [state, marks.filter((mark) => mark.state === state).length] as const).filter(([, count]) => count > 0);
