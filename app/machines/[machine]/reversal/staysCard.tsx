import { Card } from "@/app/ui/card";
import { Notice } from "@/app/ui/notice";
import type { Plan } from "@/lib/reversal/plan";
import type { ReversalFacts } from "@/lib/reversal/queries";

/** What the reversal cannot bring back, why, and what would free it; what it leaves by choice; what comes back changed. */
export function StaysCard({ plan, facts }: { readonly plan: Plan; readonly facts: ReversalFacts }) {
	const nameOf = new Map(facts.positions.map(({ mark, name }) => [mark, name]));
	// A place that is no position and cannot be undone is nothing to plan, but the next owner must read it.
	const places = facts.alterations.filter(
		({ place, undo, partId, positionId }) => place !== null && undo === "never" && !partId && !positionId,
	);
	const listed = new Set(plan.staysDifferent.map(({ alteration }) => alteration));
	return (
		<Card title="Stays different">
			{plan.staysDifferent.length + places.length + plan.leftAlone.length === 0 ? (
				<p className="af-hint">Nothing: every position comes back.</p>
			) : null}
			<ul className="af-stays">
				{plan.staysDifferent.map((stays) => (
					<li key={`${stays.position} ${stays.alteration ?? ""}`}>
						<strong>
							{stays.position} {nameOf.get(stays.position) ?? ""}
						</strong>
						<span className="af-sub">{stays.why}</span>
						{stays.freedBy ? <span className="af-sub">Freed by {stays.freedBy}.</span> : null}
					</li>
				))}
				{places
					.filter(({ number }) => !listed.has(`a${number}`))
					.map((alteration) => (
						<li key={alteration.id}>
							<strong>{alteration.place}</strong>
							<span className="af-sub">{alteration.what}: cannot be undone</span>
						</li>
					))}
			</ul>
			{plan.leftAlone.length > 0 ? (
				<>
					<h3>Left as it is by choice</h3>
					<p className="af-hint">{plan.leftAlone.map(({ position }) => `${position} ${nameOf.get(position) ?? ""}`).join(", ")}</p>
				</>
			) : null}
			{plan.comesBack.length > 0 ? (
				<>
					<h3>Comes back, but</h3>
					<ul className="af-stays">
						{plan.comesBack.map((back) => (
							<li key={`${back.position} ${back.alteration ?? ""} ${back.say}`}>
								<strong>
									{back.position} {nameOf.get(back.position) ?? ""}
								</strong>
								<span className="af-sub">{back.say}</span>
							</li>
						))}
					</ul>
				</>
			) : null}
			{plan.loops.map((loop) => (
				<Notice key={loop.say} means="stop" live="off">
					{loop.say}
				</Notice>
			))}
		</Card>
	);
}
