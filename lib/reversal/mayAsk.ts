// Whether a question may be asked at all: putting a danger back takes a reason, and no record reaches back before it begins. Pure.

import { ok, type Result, refuse } from "@/lib/core/result";
import { meantBy } from "@/lib/reversal/asked";
import type { ReversalFacts } from "@/lib/reversal/queries";
import { type Asked, asksFor, isChosen, placeMark, placesOf } from "@/lib/reversal/scope";

/**
 * Names of the conversions done for safety that a question takes back, wholly or in part: because it names them, undoes an
 * alteration of theirs, or changes a position that they ever worked on, whoever changed it since.
 */
export function safetyAsked(facts: ReversalFacts, asked: Asked): string[] {
	const { now, target, alterations, scope, mine } = meantBy(facts, asked);
	const changed = new Set([
		...[...mine].filter((id) => (scope === null || scope.has(id)) && now.get(id) !== target.get(id)),
		...alterations.flatMap(({ positionId, place }) => positionId ?? (place ? placeMark(place) : [])),
	]);
	return facts.conversions
		.filter(({ id, purpose }) => {
			if (purpose !== "safety") return false;
			if (isChosen(asked) && asksFor(facts, asked, id)) return true;
			return alterations.some(({ conversionId }) => conversionId === id) || placesOf(facts, [id], mine).some((place) => changed.has(place));
		})
		.map(({ number, name }) => `${number} ${name}`);
}

/** A question that takes back what was done for safety needs a reason: with a missing earth nothing goes in that could be refused. */
export function mayAsk(facts: ReversalFacts, asked: Asked): Result<null> {
	const first = facts.fittings[0]?.fromAt;
	if (asked.at !== undefined && (first === undefined || asked.at < first)) {
		const say = "Nothing is on record of that day: it lies before the machine's book begins. Choose a later one, or as found.";
		return refuse("before-the-record", say, { fields: { day: say } });
	}
	const named = safetyAsked(facts, asked);
	if (named.length === 0 || asked.reason?.trim()) return ok(null);
	const say = `Say why a danger is put back: ${named.join(" and ")} ${named.length === 1 ? "was" : "were"} done for safety.`;
	return refuse("danger-without-reason", say, { fields: { reason: say } });
}
