import { laidIn, laidInNewBag } from "@/lib/bags/placing";
import { lower } from "@/lib/bags/rules";
import { ok, type Result, refuse } from "@/lib/core/result";
import { unreadable } from "@/lib/core/unreadable";
import type { Reader } from "@/lib/db/store";
import { connectionsIn, connectionsOut } from "@/lib/fittings/connectionRows";
import { lastEmptied } from "@/lib/fittings/emptied";
import { fixingsIn, fixingsOut } from "@/lib/fittings/fixingRows";
import { obstructionsAfterPutIn, obstructionsAfterTakeOut } from "@/lib/fittings/obstructionRows";
import { isReachable, withoutPart } from "@/lib/fittings/reach";
import { partNames, reachFacts } from "@/lib/fittings/reachFacts";
import { coversInWords, mayHaveBeen, mayHaveComeBefore, mayPutIn, mayTakeOut } from "@/lib/fittings/rules";
import { type PutBack, type PutIn, putBackSchema, putInSchema, type TakeOut, takeOutSchema } from "@/lib/fittings/schema";
import { bagsNamed, captureRows, heldFixings, mayName, partOfId, seatOfId } from "@/lib/fittings/seatRows";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, change, type Deed, type EntryDraft, type RowChange } from "@/lib/ledger/rows";
import { wholeOf } from "@/lib/parts/queries";

export { changeConnection, moveFixing, sayConnection, sayFixing, saySetting } from "@/lib/fittings/details";

/** A position in a list: its mark and name. */
export type Named = { readonly mark: string; readonly name: string };

export type TakenOut = {
	readonly fittingId: string;
	readonly partId: string;
	readonly partTag: string | null;
	readonly positionId: string;
	/** Where it went, in words: "in 12-0208-Q". */
	readonly words: string;
	/** The bag that it went into. */
	readonly bagId: string | null;
	readonly bagTag: string | null;
	/** Positions that can be reached now and could not be before. */
	readonly opens: readonly Named[];
};

export type PutInDone = {
	readonly fittingId: string;
	readonly partId: string;
	readonly partTag: string | null;
	readonly positionId: string;
	/** Positions that cannot be reached any more. */
	readonly closes: readonly Named[];
};

/**
 * Takes the part out of a position: ends its fitting, lays it down, and says what held it, what was wired to it and how
 * it was set. An assembly keeps its guests fitted in its own small build.
 *
 * Refused when the position is empty, when something covers it (unless `anyway` says how), when a moment is impossible.
 */
export async function takeOut(input: TakeOut, env: Env): Promise<Result<TakenOut>> {
	const form = takeOutSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const said = form.data;
	return record(env, async (read) => {
		const now = env.clock();
		const at = said.at ?? now;
		const seat = await seatOfId(read, said.positionId);
		if (!seat.ok) return seat;
		const { fact: position, machine } = seat.value;
		if (position.machineId !== said.machineId) {
			return refuse("position-of-another", "That position is of another machine. Choose one from this build.");
		}
		const [facts, fitting] = await Promise.all([
			reachFacts(read, machine.id),
			read.fitting.findFirst({ where: { positionId: position.id, untilAt: null } }),
		]);
		const part = fitting && (await partOfId(read, fitting.partId));
		const covering = facts.covers.filter((cover) => cover.positionId === position.id).map((cover) => cover.partId);
		const names = await partNames(read, [...covering, ...said.cameBefore.map((before) => before.partId)]);
		const ruling = mayTakeOut(
			position,
			part?.fact ?? null,
			facts,
			names,
			Boolean(said.anyway),
			part ? null : await lastEmptied(read, position.id),
		);
		if (!ruling.ok) return ruling;
		if (!fitting || !part) throw new Error(`position ${position.id} holds a part without a fitting`);
		const timely = mayHaveBeen(at, now, fitting.fromAt, "it went in");
		if (!timely.ok) return timely;
		const before = mayHaveComeBefore(position, said.cameBefore, facts, names);
		if (!before.ok) return before;
		const named = await mayName(read, machine.id, said);
		if (!named.ok) return named;

		const owner = { id: part.row.machineId, number: part.fact.machineNumber };
		const laid =
			said.into.kind === "new-bag"
				? await laidInNewBag(read, said.into.bag, owner, part.row.name, at, env.newId)
				: await laidIn(read, said.into, owner);
		if (!laid.ok) return laid;
		const { columns, bag } = laid.value;
		const bags = await bagsNamed(
			read,
			said.fixings.flatMap((item) => (item.went.kind === "bag" ? item.went.bagId : [])),
			machine.id,
		);
		if (!bags.ok) return bags;
		const fixings = fixingsOut(said.fixings, await heldFixings(read, fitting.id, []), {
			machineId: machine.id,
			fittingId: fitting.id,
			// A fixing lies in a bag or on the bench; on a shelf it stays on its part.
			withPart:
				columns.place === "bag"
					? { place: "bag", bagId: columns.bagId }
					: { place: columns.place === "location" ? "left" : "bench", bagId: null },
			bags: bags.value,
			newId: env.newId,
		});
		if (!fixings.ok) return fixings;
		const wires = connectionsOut(
			said.connections,
			await read.connection.findMany({ where: { fittingId: fitting.id }, orderBy: { id: "asc" } }),
			{ machineId: machine.id, fittingId: fitting.id, conversionId: said.conversionId, newId: env.newId },
		);
		if (!wires.ok) return wires;
		const obstructions = await obstructionsAfterTakeOut(read, said, ruling.value.covers, machine.id, env.newId);
		const captures = await captureRows(read, said.captureIds, {
			machineId: machine.id,
			positionId: position.id,
			partId: part.row.id,
			stepId: said.stepId,
		});
		if (!captures.ok) return captures;

		const rows: RowChange[] = [
			change("Fitting", fitting, {
				untilAt: at,
				untilStepId: said.stepId,
				outConversionId: said.conversionId,
				wayRound: said.wayRound ?? fitting.wayRound,
			}),
			...fixings.value.rows,
			...wires.value.rows,
			...said.settings.map((setting) => add("Setting", { id: env.newId(), machineId: machine.id, fittingId: fitting.id, ...setting })),
			...obstructions,
			...captures.value,
		];
		const partRow = change("Part", part.row, {
			...columns,
			positionId: null,
			partyId: null,
			dueDay: null,
			sinceAt: at,
			placeWhy: "",
			works: said.works ?? part.row.works,
			condition: said.condition ?? part.row.condition,
		});
		const after = withoutPart(facts, part.row.id);
		const opens = await namesOf(
			read,
			[...facts.positions.keys()].filter((id) => id !== position.id && !isReachable(facts, id) && isReachable(after, id)),
		);
		const reached = said.anyway
			? `, although ${coversInWords(ruling.value.covers, names) || "something"} was in the way: ${said.anyway.reason}`
			: "";
		const held = fixings.value.words.length === 0 ? "" : ` Fixings: ${fixings.value.words.join("; ")}.`;
		const wired = wires.value.undone === 0 ? "" : ` ${wires.value.undone === 1 ? "1 wire" : `${wires.value.undone} wires`} undone.`;
		return ok(
			entries<TakenOut>(
				{
					machine: machine.id,
					action: "part.taken-out",
					subject: { table: "Position", id: position.id },
					facts: {
						say: `Took the ${lower(part.row.name)}${tagged(part.fact.tag)} out of ${seatWords(position, part.row.name)} and laid it ${laid.value.words}${reached}.${held}${wired}`,
						position: position.mark,
						tag: part.fact.tag,
						bag: bag?.tag ?? null,
					},
				},
				rows,
				owner.id,
				[...laid.value.rows, partRow],
				`The ${lower(part.row.name)}${tagged(part.fact.tag)} came out of machine ${machine.number}.`,
				{
					fittingId: fitting.id,
					partId: part.row.id,
					partTag: part.fact.tag,
					positionId: position.id,
					words: laid.value.words,
					bagId: bag?.id ?? null,
					bagTag: bag?.tag ?? null,
					opens,
				},
			),
		);
	});
}

/**
 * Puts a loose part into an empty position: opens a fitting, brings fixings home, connects wires, and lets the part
 * cover what the one before it covered.
 *
 * Refused when the position is taken or a mere place, when the part is fitted, out, sold, lost, scrapped or void, when it
 * would host itself, when something covers the position or excludes the part (unless `anyway` says how), and without a
 * reason for an original of another machine or what was taken out for safety.
 */
export async function putIn(input: PutIn, env: Env): Promise<Result<PutInDone>> {
	const form = putInSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const said = form.data;
	return record(env, (read) => decidePutIn(read, said, env, "part.put-in"));
}

/**
 * Puts a part straight back where it was taken out, as if it had not been: its fixings, wires and settings too.
 * For the moment after; what was taken out for safety, or is covered by now, goes through `putIn`.
 */
export async function putBack(input: PutBack, env: Env): Promise<Result<PutInDone>> {
	const form = putBackSchema.safeParse(input);
	if (!form.success) return unreadable(form.error);
	const { partId, at } = form.data;
	return record(env, async (read) => {
		const last = await read.fitting.findFirst({
			where: { partId, untilAt: { not: null } },
			orderBy: [{ untilAt: "desc" }, { id: "desc" }],
		});
		if (!last) return refuse("never-fitted", "This part was never fitted, so it cannot go back. Put it in by choosing its position.");
		const [held, wires, settings] = await Promise.all([
			heldFixings(read, last.id, []),
			read.connection.findMany({ where: { fittingId: last.id }, orderBy: { id: "asc" } }),
			read.setting.findMany({ where: { fittingId: last.id }, orderBy: { id: "asc" } }),
		]);
		// What the take-out wrote bears the number of its entry or, moved since, a later one.
		const since = <T extends { entry: number }>(rows: readonly T[]) => rows.filter((row) => row.entry >= last.entry);
		const fixings = held.filter(({ fixing }) => fixing.place !== "scrapped" && fixing.place !== "home");
		return decidePutIn(
			read,
			{
				partId,
				positionId: last.positionId,
				at,
				stepId: null,
				conversionId: last.conversionId,
				fixings: fixings.map(({ fixing }) => ({ ...fixing, fixingId: fixing.id })),
				connections: since(wires)
					.filter((wire) => wire.state !== "connected")
					.map((wire) => ({ ...wire, connectionId: wire.id, state: "connected" as const })),
				settings: settings.map(({ kind, value, captureId }) => ({ kind, value, captureId })),
				captureIds: [],
				wayRound: last.wayRound,
				obstructsLike: null,
				anyway: null,
				reason: "",
			},
			env,
			"part.put-back",
		);
	});
}

type SaidPutIn = ReturnType<typeof putInSchema.parse>;

async function decidePutIn(
	read: Reader,
	said: SaidPutIn,
	env: Env,
	action: "part.put-in" | "part.put-back",
): Promise<Result<Deed<PutInDone>>> {
	const now = env.clock();
	const at = said.at ?? now;
	const seat = await seatOfId(read, said.positionId);
	if (!seat.ok) return seat;
	const { fact: position, machine } = seat.value;
	const part = await partOfId(read, said.partId);
	if (!part) return refuse("no-part", "That part is not known. Scan its tag, or choose one from the list.");
	// What is fitted on it goes in with it, and brings along what that excludes.
	const whole = await wholeOf(read, part.row.id);
	const [reach, exclusions, occupant, lastHere, lastOfPart, safety, carries] = await Promise.all([
		reachFacts(read, machine.id),
		read.exclusion.findMany({
			where: { OR: [{ partId: { in: whole } }, { otherId: { in: whole } }] },
			orderBy: { id: "asc" },
			select: { partId: true, otherId: true, note: true },
		}),
		read.part.findUnique({ where: { positionId: position.id }, select: { name: true, tag: { select: { id: true } } } }),
		read.fitting.findFirst({
			where: { positionId: position.id, untilAt: { not: null } },
			orderBy: [{ untilAt: "desc" }, { id: "desc" }],
			select: { partId: true, untilAt: true },
		}),
		read.fitting.findFirst({
			where: { partId: part.row.id, untilAt: { not: null } },
			orderBy: [{ untilAt: "desc" }, { id: "desc" }],
			select: { untilAt: true },
		}),
		read.fitting.findFirst({
			where: { partId: part.row.id, machineId: machine.id, outConversion: { purpose: "safety" } },
			orderBy: { untilAt: "desc" },
			select: { outConversion: { select: { name: true } } },
		}),
		read.part.findMany({
			where: { id: { in: whole.filter((id) => id !== part.row.id) }, origin: "original", machineId: { not: machine.id } },
			orderBy: { id: "asc" },
			take: 1,
			select: { name: true, machine: { select: { number: true } } },
		}),
	]);
	const excludes = exclusions.map(({ partId, otherId, note }) =>
		whole.includes(partId) ? { ofId: partId, partId: otherId, note } : { ofId: otherId, partId, note },
	);
	const covering = reach.covers.filter((cover) => cover.positionId === position.id).map((cover) => cover.partId);
	const names = await partNames(read, [...covering, ...excludes.flatMap((other) => [other.ofId, other.partId])]);
	const ruling = mayPutIn({
		position,
		machineNumber: machine.number,
		occupant: occupant && { name: occupant.name, tag: occupant.tag?.id ?? null },
		part: part.fact,
		reach,
		names,
		excludes,
		carries: carries.map(({ name, machine: of }) => ({ name, machineNumber: of.number })),
		safety: safety?.outConversion?.name ?? null,
		anyway: Boolean(said.anyway),
		reason: said.reason || (action === "part.put-back" && !safety ? "put back" : ""),
	});
	if (!ruling.ok) return ruling;
	const after = [lastHere?.untilAt ?? "", lastOfPart?.untilAt ?? ""].sort().at(-1) || null;
	const timely = mayHaveBeen(at, now, after, after === lastOfPart?.untilAt ? "the part last came out" : "the position was last emptied");
	if (!timely.ok) return timely;
	const named = await mayName(read, machine.id, said);
	if (!named.ok) return named;

	const fittingId = env.newId();
	const of = { machineId: machine.id, fittingId, conversionId: said.conversionId, newId: env.newId };
	const fixings = fixingsIn(
		said.fixings,
		await heldFixings(
			read,
			null,
			said.fixings.flatMap((item) => item.fixingId ?? []),
		),
		of,
	);
	if (!fixings.ok) return fixings;
	const wires = connectionsIn(
		said.connections,
		await read.connection.findMany({ where: { id: { in: said.connections.flatMap((item) => item.connectionId ?? []) } } }),
		of,
	);
	if (!wires.ok) return wires;
	const like = said.obstructsLike === undefined ? (lastHere?.partId ?? null) : said.obstructsLike;
	const obstructions = await obstructionsAfterPutIn(
		read,
		said.anyway ?? null,
		ruling.value.covers,
		like,
		part.row.id,
		position.id,
		env.newId,
	);
	const captures = await captureRows(read, said.captureIds, {
		machineId: machine.id,
		positionId: position.id,
		partId: part.row.id,
		stepId: said.stepId,
	});
	if (!captures.ok) return captures;

	const rows: RowChange[] = [
		add("Fitting", {
			id: fittingId,
			machineId: machine.id,
			partId: part.row.id,
			positionId: position.id,
			fromAt: at,
			untilAt: null,
			fromStepId: said.stepId,
			untilStepId: null,
			conversionId: said.conversionId,
			outConversionId: null,
			wayRound: said.wayRound,
		}),
		...fixings.value.rows,
		...wires.value.rows,
		...said.settings.map((setting) => add("Setting", { id: env.newId(), machineId: machine.id, fittingId, ...setting })),
		...obstructions.rows,
		...captures.value,
	];
	const partRow = change("Part", part.row, {
		place: "fitted",
		positionId: position.id,
		bagId: null,
		locationId: null,
		partyId: null,
		dueDay: null,
		sinceAt: at,
		placeWhy: "",
	});
	const seatOf = new Map(reach.seatOf).set(part.row.id, position.id);
	const covers = [...reach.covers, ...obstructions.covers];
	const closes = await namesOf(
		read,
		[...reach.positions.keys()].filter(
			(id) => id !== position.id && isReachable(reach, id) && !isReachable({ ...reach, seatOf, covers }, id),
		),
	);
	const where = action === "part.put-back" ? "back into" : "into";
	const why = [said.anyway?.reason, said.reason].filter(Boolean).join("; ");
	const held = fixings.value.words.length === 0 ? "" : ` Fixings: ${fixings.value.words.join("; ")}.`;
	const wired =
		wires.value.connected === 0 ? "" : ` ${wires.value.connected === 1 ? "1 wire" : `${wires.value.connected} wires`} connected.`;
	return ok(
		entries<PutInDone>(
			{
				machine: machine.id,
				action,
				subject: { table: "Position", id: position.id },
				facts: {
					say: `Put the ${lower(part.row.name)}${tagged(part.fact.tag)} ${where} ${seatWords(position, part.row.name)}${why === "" ? "" : `: ${why}`}.${held}${wired}`,
					position: position.mark,
					tag: part.fact.tag,
				},
			},
			rows,
			part.row.machineId,
			[partRow],
			`The ${lower(part.row.name)}${tagged(part.fact.tag)} went into machine ${machine.number}${why === "" ? "" : `: ${why}`}.`,
			{ fittingId, partId: part.row.id, partTag: part.fact.tag, positionId: position.id, closes },
		),
	);
}

/** "drive motor (k25)"; the mark alone where the position is called as its part is. */
const seatWords = (position: { name: string; mark: string }, partName: string): string =>
	lower(position.name) === lower(partName) ? position.mark : `${lower(position.name)} (${position.mark})`;

const tagged = (tag: string | null): string => (tag === null ? "" : ` (${tag})`);

/**
 * One entry; two when the part is of another machine, so that each machine's chain alone tells what became of its own
 * parts and positions.
 */
function entries<T>(
	main: Omit<EntryDraft, "rows">,
	rows: readonly RowChange[],
	partMachineId: string,
	partRows: readonly RowChange[],
	partSay: string,
	result: T,
): Deed<T> {
	if (partMachineId === main.machine) return { entries: [{ ...main, rows: [...partRows, ...rows] }], result };
	const part = partRows.at(-1);
	if (!part) throw new Error("a deed about a part without its row");
	return {
		entries: [
			{ ...main, rows },
			{
				machine: partMachineId,
				action: main.action,
				subject: { table: part.table, id: part.id },
				facts: { say: partSay },
				rows: partRows,
			},
		],
		result,
	};
}

async function namesOf(read: Reader, positionIds: readonly string[]): Promise<Named[]> {
	if (positionIds.length === 0) return [];
	return read.position.findMany({
		where: { id: { in: [...positionIds] } },
		orderBy: { mark: "asc" },
		select: { mark: true, name: true },
	});
}
