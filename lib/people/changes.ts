import { formatDay } from "@/lib/core/days";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Env } from "@/lib/ledger/env";
import { overMeanwhile, UNSEEN } from "@/lib/ledger/meanwhile";
import { record } from "@/lib/ledger/record";
import { add, change, deed } from "@/lib/ledger/rows";
import type { DescribePerson, NewPerson, NewRate } from "@/lib/people/schema";

/** Adds somebody who works here. Gives the person's id. */
export const addPerson = (input: NewPerson, env: Env): Promise<Result<string>> => {
	const id = env.newId();
	return record(env, async () =>
		ok(
			deed(
				null,
				"person.added",
				{ table: "Person", id },
				{ say: `${input.name} (${input.initials}) works here now.` },
				[add("Person", { id, ...input, state: "here" })],
				id,
			),
		),
	);
};

/** Corrects a person's name, initials or skills, or says that they left or came back. */
export const describePerson = (input: DescribePerson, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const before = await read.person.findUnique({ where: { id: input.id } });
		if (!before) return refuse("no-such-person", "That person is not in the book. Load the page again.");
		const { id, ...said } = input;
		const laid = await overMeanwhile(read, "Person", before, env.seen ?? UNSEEN, said);
		if (!laid.ok) return laid;
		const patch = laid.value;
		const running = input.state === "left" && (await read.work.count({ where: { personId: id, endedAt: null } })) > 0;
		if (running) return refuse("clock-runs", `${before.name}'s clock is running. Stop it first.`);
		const say =
			input.state === before.state ? `Described ${input.name}.` : `${input.name} ${input.state === "left" ? "left the shop" : "is back"}.`;
		return ok(deed(null, "person.described", { table: "Person", id }, { say }, [change("Person", before, patch)], null));
	});

/** An hour's cost and charge from a day on. The same day again corrects that day's rate. */
export const setRate = (input: NewRate, env: Env): Promise<Result<string>> => {
	const fresh = env.newId();
	return record(env, async (read) => {
		const person = await read.person.findUnique({ where: { id: input.personId }, select: { name: true } });
		if (!person) return refuse("no-such-person", "That person is not in the book. Load the page again.");
		const before = await read.rate.findUnique({ where: { personId_fromDay: { personId: input.personId, fromDay: input.fromDay } } });
		const amounts = { costMinor: input.cost, chargeMinor: input.charge };
		const id = before?.id ?? fresh;
		const row = before
			? change("Rate", before, amounts)
			: add("Rate", { id, personId: input.personId, fromDay: input.fromDay, ...amounts });
		const say = `${before ? "Corrected" : "Set"} ${person.name}'s rate from ${formatDay(input.fromDay)}.`;
		return ok(deed(null, "rate.set", { table: "Rate", id }, { say }, [row], id));
	});
};
