// A moment as a person types it into a clock field: the shop's own day and time, without a zone. Pure.

import { z } from "zod";
import { dayOf, instantAt, isDay, timeOf } from "@/lib/core/days";
import type { Instant } from "@/lib/core/instants";
import { ok, type Result, refuse } from "@/lib/core/result";

const SHAPE = /^(\d{4}-\d{2}-\d{2})T(\d{2}:\d{2})(?::\d{2}(?:\.\d+)?)?$/;

/** What `<input type="datetime-local">` sends: `2026-03-02T14:05`, or nothing. */
export const typedMoment = z
	.string()
	.trim()
	.max(40, "Write the day and the time, like 2026-03-02T14:05.")
	.refine((text) => text === "" || (SHAPE.test(text) && isDay(text.slice(0, 10))), "Write the day and the time, like 2026-03-02T14:05.")
	.default("");

/**
 * The instant meant, in the shop's time zone; nothing typed is `undefined`, so that the deed's own clock counts.
 * What is still to come is refused at the field: a record says what happened.
 */
export function instantTyped(text: string, timeZone: string, now: Instant, field: string): Result<Instant | undefined> {
	if (text === "") return ok(undefined);
	const [, on = "", time = ""] = SHAPE.exec(text) ?? [];
	const wrong = (code: string, say: string) => refuse(code, say, { fields: { [field]: say } });
	if (!isDay(on)) return wrong("moment-unreadable", "Write the day and the time, like 2026-03-02T14:05.");
	const at = instantAt(on, time, timeZone);
	if (!at.ok) return wrong(at.error.code, at.error.say);
	if (at.value > now) return wrong("moment-ahead", "That moment is still to come. Write when it happened, or leave it empty for now.");
	return ok(at.value);
}

/** An instant as a clock field holds it, in the shop's time zone. */
export const momentToType = (at: Instant, timeZone: string): string => `${dayOf(at, timeZone)}T${timeOf(at, timeZone)}`;
