// Conversions, decisions and tests.

import { joinConversion, nameConversion } from "@/lib/conversions/changes";
import { joinConversionSchema, nameConversionSchema } from "@/lib/conversions/schema";
import { recordDecision } from "@/lib/decisions/changes";
import { recordDecisionSchema } from "@/lib/decisions/schema";
import { handOver, sayNote } from "@/lib/machines/changes";
import { handOverSchema, sayNoteSchema } from "@/lib/machines/schema";
import { planTest, runTest } from "@/lib/tests/changes";
import { planTestSchema, runTestSchema } from "@/lib/tests/schema";
import { instruments } from "@/seed/data/shop";
import type { Decision, DecisionOption, Instant, PartKey } from "@/seed/data/types";
import { of } from "@/seed/load/book";
import { type Diary, done } from "@/seed/load/diary";
import type { Books } from "@/seed/load/moves";
import { asTyped, currency } from "@/seed/load/shop";
import { limitOf, readingOf, unitOf } from "@/seed/load/testWords";

/** Names the conversions when they were agreed, with the steps and tests that are planned for them. */
export function conversions(diary: Diary, { book }: Books, agreed: Instant): void {
	for (const conversion of book.data.conversions) {
		diary.note(agreed, "A", `conversion ${conversion.id}`, async (env) => {
			const input = nameConversionSchema.parse({
				machineId: book.machineId,
				name: conversion.name,
				purpose: conversion.safety ? "safety" : "ordinary",
				words: conversion.why,
			});
			book.conversions.set(conversion.id, done(await nameConversion(input, env)).id);
		});
		diary.note(agreed, "A", `what belongs to ${conversion.id}`, async (env) => {
			const input = joinConversionSchema.parse({
				conversionId: of(book.conversions, conversion.id),
				steps: conversion.steps.flatMap((id) => book.steps.get(id) ?? []),
				tests: conversion.tests.flatMap((id) => book.tests.get(id) ?? []),
			});
			done(await joinConversion(input, env));
		});
	}
}

/** An option's cost; a payment to the shop is no cost, and is said in words. */
const asOption = (option: DecisionOption, parts: ReadonlyMap<PartKey, string>) => ({
	words: [option.name, option.refusedBecause === undefined ? "" : `refused: ${option.refusedBecause}`].filter(Boolean).join("; "),
	cost: option.costMinor < 0 ? "" : asTyped(option.costMinor),
	minutes: option.minutes,
	...doesOf(option, parts),
	loses: option.loses,
	state: option.chosen ? "chosen" : option.refusedBecause === undefined ? "open" : "refused",
});

/** What the option would do, as the form sends it. */
function doesOf({ does, undo }: DecisionOption, parts: ReadonlyMap<PartKey, string>) {
	if (does === undefined) return { does: "other" };
	if (does === "nothing") return { does };
	if ("alters" in does) return { does: "alter", thing: `part:${of(parts, does.alters)}`, undo };
	return { does: "parting", thing: `part:${of(parts, does.partsWith)}` };
}

export function decisions(diary: Diary, { book }: Books): void {
	const agreedBy = (decision: Decision) => (decision.agreedBy === "not answered yet" ? "" : decision.agreedBy);
	for (const decision of book.data.decisions)
		diary.note(decision.at, decision.by, `decision ${decision.id}`, async (env) => {
			const input = recordDecisionSchema(currency).parse({
				machineId: book.machineId,
				question: decision.question,
				options: decision.options.map((option) => asOption(option, book.parts)),
				stepId: of(book.steps, decision.step),
				agreedBy: agreedBy(decision),
			});
			done(await recordDecision(input, env));
		});
}

const instrumentWords = (key: string | undefined): string => {
	const found = instruments.find((each) => each.key === key);
	return found === undefined ? "" : `${found.name}, ${found.serial}, calibrated ${found.calibrated}`;
};

/** Sets every test before the first is run, then runs them when they were run. */
export function tests(diary: Diary, { book, shop }: Books): void {
	const { data } = book;
	const first = data.tests
		.flatMap(({ runs }) => runs)
		.map(({ step }) => data.steps.find(({ id }) => id === step)?.sessions[0])
		.reduce<{ start: Instant; person: "A" | "B" | "C" } | undefined>(
			(earliest, session) => (session !== undefined && (earliest === undefined || session.start < earliest.start) ? session : earliest),
			undefined,
		);
	for (const test of data.tests) {
		if (first === undefined) throw new Error(`no test of machine ${data.number} was run`);
		diary.note(
			first.start,
			first.person,
			`test ${test.id}`,
			async (env) => {
				const step = test.runs.find(({ when }) => when === "after")?.step;
				const input = planTestSchema.parse({
					machineId: book.machineId,
					name: test.what,
					unit: unitOf(test),
					limit: limitOf(test),
					limitSource: [...new Set(test.limits.map(({ source }) => source))].join("; "),
					stepId: step === undefined ? null : (book.steps.get(step) ?? null),
				});
				book.tests.set(test.id, done(await planTest(input, env)).id);
			},
			"plan",
		);
		for (const run of test.runs)
			diary.note(run.at, run.by, `run of ${test.id}`, async (env) => {
				const input = runTestSchema.parse({
					testId: of(book.tests, test.id),
					phase: run.when,
					...readingOf(test, run),
					instrument: instrumentWords(run.instrument),
					personId: of(shop.persons, run.by),
				});
				done(await runTest(input, env));
			});
	}
}

export function sale(diary: Diary, { book }: Books): void {
	const { sale: sold } = book.data;
	if (sold === undefined) return;
	diary.note(sold.at, "A", "what was handed over", async (env) => {
		done(await sayNote(sayNoteSchema.parse({ machineId: book.machineId, kind: "seen", words: sold.words }), env));
	});
	diary.note(sold.at, "A", "the sale", async (env) => {
		const input = handOverSchema(currency).parse({
			machineId: book.machineId,
			leftDay: sold.day,
			buyerName: sold.buyer,
			sold: asTyped(sold.minor),
		});
		done(await handOver(input, env));
	});
}
