// Positions are added, described, found to hold this or that, and stood in the way of.

import type { Instant } from "@/lib/core/instants";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import type { Env } from "@/lib/ledger/env";
import { overMeanwhile, UNSEEN } from "@/lib/ledger/meanwhile";
import { record } from "@/lib/ledger/record";
import { add, change, type Deed, deed, type RowChange, type Tables } from "@/lib/ledger/rows";
import { counted } from "@/lib/machines/rules";
import { evidenceRow } from "@/lib/parts/evidenceRow";
import { fittedAt, newPart } from "@/lib/parts/newPart";
import { nextPartNumbers } from "@/lib/parts/numbering";
import { tagsGiven } from "@/lib/parts/queries";
import type { PartDetails } from "@/lib/parts/schema";
import { positionsOfList, readIndentedList } from "@/lib/positions/indentedList";
import { type AddedPosition, newFitting, newPositions, type Standing } from "@/lib/positions/newPositions";
import { buildToCopy } from "@/lib/positions/queries";
import { type FoundPosition, mayObstruct, whatFindingMeans } from "@/lib/positions/rules";
import type {
	AddPositions,
	AddPositionsAsText,
	CopyBuild,
	DescribePosition,
	NewPosition,
	RecordFinding,
	SayExclusion,
	SayObstruction,
} from "@/lib/positions/schema";
import { sidesOf } from "@/lib/positions/sides";
import { timeColumns } from "@/lib/positions/threePoints";

type Later = { readonly at?: Instant };
export type Added = { readonly positions: readonly AddedPosition[] };

const NO_MACHINE = refuse("no-such-machine", "That machine is not in the book. Load the page again.");
const NO_POSITION = refuse("no-such-position", "That position is not in the book. Load the page again.");

async function standingOf(read: Reader, machineId: string, hostPartIds: readonly string[]): Promise<Standing | null> {
	const machine = await read.machine.findUnique({ where: { id: machineId }, select: { id: true, number: true, asFoundAt: true } });
	if (!machine) return null;
	const positions = await read.position.findMany({
		where: { machineId },
		select: { mark: true, name: true, area: true, rank: true, part: { select: { id: true } } },
	});
	const looseHosts =
		hostPartIds.length === 0
			? []
			: await read.part.findMany({ where: { id: { in: [...hostPartIds] }, place: { not: "void" } }, select: { id: true } });
	return {
		machine,
		positions: positions.map(({ part, ...position }) => ({ ...position, partId: part?.id ?? null })),
		tags: await tagsGiven(read, machine.number),
		looseHosts: looseHosts.map((part) => part.id),
	};
}

async function adding(
	read: Reader,
	env: Env,
	input: { readonly machineId: string; readonly wasThere: boolean; readonly at?: Instant | undefined },
	itemsFor: (standing: Standing) => Result<{ items: readonly NewPosition[]; from?: string }>,
	hostPartIds: readonly string[] = [],
): Promise<Result<Deed<Added>>> {
	const standing = await standingOf(read, input.machineId, hostPartIds);
	if (!standing) return NO_MACHINE;
	const asked = itemsFor(standing);
	if (!asked.ok) return asked;
	const made = newPositions(standing, asked.value.items, { wasThere: input.wasThere, at: input.at ?? env.clock(), newId: env.newId });
	if (!made.ok) return made;
	const { rows, added } = made.value;
	const say = `Added ${counted(added.length, "position")}: ${namesOf(asked.value.items, added)}${asked.value.from ?? ""}.`;
	return ok(
		deed(standing.machine.id, "positions.added", { table: "Machine", id: standing.machine.id }, { say, count: added.length }, rows, {
			positions: added,
		}),
	);
}

function namesOf(items: readonly NewPosition[], added: readonly AddedPosition[]): string {
	const names = items.map((item, index) => `${added[index]?.mark ?? ""} ${item.name}`);
	return names.length <= 4 ? names.join(", ") : `${names.slice(0, 3).join(", ")} and ${names.length - 3} more`;
}

/**
 * Adds positions, with the parts that are in them, in the order of the list. Before the stamp they are part of the as found
 * record; after it they were there all along (`wasThere`) or are places that the shop's work makes.
 */
export const addPositions = (input: AddPositions & Later, env: Env): Promise<Result<Added>> =>
	record(env, (read) =>
		adding(
			read,
			env,
			input,
			() => ok({ items: input.positions }),
			input.positions.flatMap((item) => item.hostPartId ?? []),
		),
	);

/** The same from text, one position a line (lib/positions/indentedList.ts). A line that cannot be read adds nothing at all. */
export const addPositionsAsText = (input: AddPositionsAsText & Later, env: Env): Promise<Result<Added>> =>
	record(env, (read) =>
		adding(read, env, input, (standing) => {
			const list = readIndentedList(input.text);
			const first = list.wrong[0];
			if (first) {
				const more =
					list.wrong.length === 1 ? "" : ` ${counted(list.wrong.length - 1, "more line needs", "more lines need")} another look.`;
				return refuse("list-unreadable", `${first.say}${more} Nothing was added.`, {
					fields: { text: first.say },
					facts: { wrong: list.wrong },
				});
			}
			const items = positionsOfList(
				list.positions,
				standing.positions.map((position) => position.mark),
				input.origin,
			);
			// A place that the shop's work makes is empty at first, whatever the line says of a part.
			const made = standing.machine.asFoundAt !== null && !input.wasThere;
			return ok({ items: made ? items.map((item) => ({ ...item, part: null })) : items });
		}),
	);

/**
 * Begins a machine from another one's build: its positions, times, sides and what stands in the way of what, every one of
 * them not seen yet. A part that carries others or stands in a way is presumed until somebody has looked.
 */
export const copyBuild = (input: CopyBuild & Later, env: Env): Promise<Result<Added>> =>
	record(env, async (read) => {
		if (input.machineId === input.fromMachineId) return refuse("same-machine", "Choose another machine to begin from.");
		const from = await buildToCopy(read, input.fromMachineId);
		if (from === null)
			return refuse("no-such-machine", "The machine to begin from is not in the book.", { fields: { fromMachineId: "Choose another." } });
		if (from.items.length === 0) {
			return refuse("nothing-to-copy", `Machine ${from.number} has no positions yet. Choose another.`, {
				fields: { fromMachineId: "It has no positions yet." },
			});
		}
		const done = await adding(read, env, { ...input, wasThere: true }, (standing) => {
			const twice = standing.positions.find((position) => from.items.some((item) => item.mark === position.mark));
			if (!twice) return ok({ items: from.items, from: ` after machine ${from.number}` });
			return refuse("mark-taken", `The mark ${twice.mark} is on this machine already. Copy a build before adding positions of its own.`);
		});
		if (!done.ok) return done;
		const byMark = new Map(done.value.result.positions.map((position) => [position.mark, position]));
		const obstructions = from.obstructions.flatMap(({ partAt, position, side, note }) => {
			const part = byMark.get(partAt)?.partId;
			const to = byMark.get(position)?.id;
			return part && to
				? [add("Obstruction", { id: env.newId(), machineId: input.machineId, partId: part, positionId: to, side, stands: "yes", note })]
				: [];
		});
		const [entry] = done.value.entries;
		return entry ? ok({ entries: [{ ...entry, rows: [...entry.rows, ...obstructions] }], result: done.value.result }) : done;
	});

/** Corrects what is said of a position, and what carries it. */
export const describePosition = (input: DescribePosition, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const position = await read.position.findUnique({
			where: { id: input.positionId },
			include: { part: { select: { id: true } }, host: { select: { position: { select: { mark: true } } } } },
		});
		if (!position) return NO_POSITION;
		const { part, host: carrier, ...row } = position;
		const marked = async (mark: string, field: string) => {
			const found = await read.position.findUnique({
				where: { machineId_mark: { machineId: row.machineId, mark } },
				select: { id: true, name: true, part: { select: { id: true } } },
			});
			return found
				? ok(found)
				: refuse("no-such-mark", `There is no position ${mark} on this machine.`, { fields: { [field]: `There is no ${mark}.` } });
		};
		// What carries it may be out of the machine and then has no mark: it is changed only when another mark is named.
		let hostId = row.hostId;
		if (input.hostMark === null && carrier?.position) hostId = null;
		if (input.hostMark !== null && input.hostMark !== carrier?.position?.mark) {
			const host = await marked(input.hostMark, "hostMark");
			if (!host.ok) return host;
			if (host.value.id === row.id)
				return refuse("hosts-itself", "A position cannot sit on itself.", { fields: { hostMark: "Choose another." } });
			if (!host.value.part) {
				return refuse("host-is-empty", `Nothing is fitted in ${input.hostMark} that could carry it.`, {
					fields: { hostMark: "Nothing is fitted there." },
				});
			}
			hostId = host.value.part.id;
		}
		let mirrorId: string | null = null;
		if (input.mirrorMark !== null) {
			const mirror = await marked(input.mirrorMark, "mirrorMark");
			if (!mirror.ok) return mirror;
			if (mirror.value.id === row.id)
				return refuse("mirrors-itself", "A position is not its own mirror image.", { fields: { mirrorMark: "Choose another." } });
			mirrorId = mirror.value.id;
		}
		if (input.kind === "place" && part) {
			return refuse("holds-a-part", `${row.mark} holds a part. Take it out before you make it a place without one.`, {
				fields: { kind: "It holds a part." },
			});
		}
		const patch = {
			name: input.name,
			area: input.area,
			kind: input.kind,
			sides: JSON.stringify(input.sides),
			note: input.note,
			hostId,
			mirrorId,
			...timeColumns(input.out, input.in),
		};
		const laid = await overMeanwhile(read, "Position", row, env.seen ?? UNSEEN, patch, MEANWHILE);
		if (!laid.ok) return laid;
		const kept = await mayLoseSides(read, row, sidesOf(laid.value.sides));
		if (!kept.ok) return kept;
		return ok(
			deed(
				row.machineId,
				"position.described",
				{ table: "Position", id: row.id },
				{ say: `Described ${row.mark} ${laid.value.name}.` },
				[change("Position", row, laid.value)],
				null,
			),
		);
	});

/** A side goes only when nothing is said to be in the way from it: the word would stand about a side that is no more. */
async function mayLoseSides(read: Reader, position: Tables["Position"], keeps: readonly string[]): Promise<Result<null>> {
	const lost = sidesOf(position.sides).filter((side) => !keeps.includes(side));
	const named = await read.obstruction.findFirst({
		where: { positionId: position.id, stands: "yes", side: { in: lost } },
		orderBy: { id: "asc" },
		select: { side: true, part: { select: { name: true } } },
	});
	if (!named) return ok(null);
	const say = `${named.part.name} is in the way of ${position.mark} from the side ${named.side}. Withdraw that first, or leave the side as it is.`;
	return refuse("side-in-use", say, { fields: { sides: say }, facts: { side: named.side } });
}

const MEANWHILE = {
	fields: {
		hostId: "hostMark",
		mirrorId: "mirrorMark",
		outLow: "out.low",
		outLikely: "out.likely",
		outHigh: "out.high",
		inLow: "in.low",
		inLikely: "in.likely",
		inHigh: "in.high",
	},
	together: [
		["outLow", "outLikely", "outHigh"],
		["inLow", "inLikely", "inHigh"],
	],
};

/** Says what was found at a position, now or as later knowledge. Gives the finding, and the part that was entered for it. */
export const recordFinding = (
	input: RecordFinding & Later,
	env: Env,
): Promise<Result<{ findingId: string; partId: string | null; tag: string | null }>> =>
	record(env, async (read) => {
		const position = await read.position.findUnique({
			where: { id: input.positionId },
			include: {
				machine: { select: { id: true, number: true, asFoundAt: true } },
				part: { include: { tag: { select: { id: true } }, fittings: { where: { untilAt: null } } } },
				findings: {
					orderBy: [{ at: "desc" }, { entry: "desc" }],
					take: 1,
					select: { state: true, partId: true, part: { select: { place: true } } },
				},
			},
		});
		if (!position) return NO_POSITION;
		const { machine, part: occupant, findings } = position;
		const at = input.at ?? env.clock();
		if (input.partId !== null) {
			const known = await read.part.findUnique({ where: { id: input.partId }, select: { place: true } });
			if (!known || known.place === "void") {
				return refuse("no-such-part", "That part is not in the book. Choose another.", { fields: { partId: "Choose another." } });
			}
		}
		const standing: FoundPosition = {
			mark: position.mark,
			name: position.name,
			kind: position.kind,
			asFoundAt: machine.asFoundAt,
			last: findings[0] ? { state: findings[0].state, partId: findings[0].part?.place === "void" ? null : findings[0].partId } : null,
			holds: occupant
				? { partId: occupant.id, tag: occupant.tag?.id ?? occupant.name, since: occupant.fittings[0]?.fromAt ?? occupant.sinceAt }
				: null,
		};
		const ruling = whatFindingMeans(standing, { state: input.state, at, partId: input.partId });
		if (!ruling.ok) return ruling;
		const meant = ruling.value;
		const rows: RowChange[] = [];
		let partId: string | null = null;
		let tag: string | null = null;
		switch (meant.what) {
			case "no-part":
				break;
			case "of-part": {
				partId = meant.partId;
				if (input.part === null) break;
				const row = await read.part.findUnique({ where: { id: partId } });
				if (row) rows.push(change("Part", row, described(input.part, row.name)));
				break;
			}
			case "new-part": {
				const numbers = nextPartNumbers(machine.number, await tagsGiven(read, machine.number), 1);
				if (!numbers.ok) return numbers;
				partId = env.newId();
				const details = described(input.part ?? NOTHING_SAID, position.name);
				const made = newPart({
					id: partId,
					machine,
					number: numbers.value[0] ?? 0,
					details,
					place: fittedAt(position.id),
					at: meant.fromAt,
				});
				tag = made.tag;
				rows.push(
					...made.rows,
					newFitting({ id: env.newId(), machineId: machine.id, partId, positionId: position.id, fromAt: meant.fromAt, wayRound: "" }),
				);
				break;
			}
			case "strike-out":
				rows.push(...(await strikingOut(read, meant.partId, position.hostId, at, input.words)));
				break;
		}
		const findingId = env.newId();
		rows.push(
			add("Finding", { id: findingId, machineId: machine.id, positionId: position.id, at, state: input.state, partId, words: input.words }),
			...input.evidence.map((said) => evidenceRow(env.newId(), machine.id, said, { partId, positionId: position.id })),
		);
		// A place that had been taken for one of the shop's own was there all along.
		if (position.asFound === "no") {
			const { machine: _machine, part: _part, findings: _findings, ...row } = position;
			rows.push(change("Position", row, { asFound: "yes" }));
		}
		const later = machine.asFoundAt === null ? "" : " Later knowledge.";
		const say = `Found at ${position.mark} ${position.name}: ${FOUND_WORDS[input.state]}.${later}`;
		return ok(
			deed(
				machine.id,
				"finding.recorded",
				{ table: "Finding", id: findingId },
				{ say, state: input.state, before: standing.last?.state ?? null },
				rows,
				{ findingId, partId, tag },
			),
		);
	});

const FOUND_WORDS = { there: "there", missing: "missing", wrong: "there, but wrong", unseen: "not seen yet" } as const;

const NOTHING_SAID: PartDetails = {
	name: "",
	count: 1,
	maker: "",
	type: "",
	material: "",
	made: null,
	origin: "unknown",
	works: "unknown",
	condition: "",
};

const described = (details: PartDetails, name: string): PartDetails => ({ ...details, name: details.name || name });

/** What was entered as fitted was never there: its fitting ends, the part is struck out, and what sat on it moves up. */
async function strikingOut(read: Reader, partId: string, upTo: string | null, at: string, why: string): Promise<RowChange[]> {
	const part = await read.part.findUnique({ where: { id: partId } });
	const fitting = await read.fitting.findFirst({ where: { partId, untilAt: null } });
	const guests = await read.position.findMany({ where: { hostId: partId } });
	if (!part || !fitting) throw new Error(`the part ${partId} is not fitted`);
	const placeWhy = why === "" ? "Entered in error: it was missing." : `Entered in error: ${why}`;
	return [
		change("Fitting", fitting, { untilAt: at > fitting.fromAt ? at : fitting.fromAt }),
		change("Part", part, { place: "void", positionId: null, placeWhy, sinceAt: at }),
		...guests.map((guest: Tables["Position"]) => change("Position", guest, { hostId: upTo })),
	];
}

/** While the part is fitted, the position cannot be reached: from all sides, or from those named. Gives the rows' ids. */
export const sayObstruction = (input: SayObstruction, env: Env): Promise<Result<string[]>> =>
	record(env, async (read) => {
		const position = await read.position.findUnique({ where: { id: input.positionId }, include: { part: { select: { id: true } } } });
		if (!position) return NO_POSITION;
		const part = await read.part.findUnique({ where: { id: input.partId }, include: { position: { select: { machineId: true } } } });
		if (!part) return refuse("no-such-part", "That part is not in the book. Choose another.", { fields: { partId: "Choose another." } });
		const ruling = mayObstruct(
			{
				mark: position.mark,
				name: position.name,
				hostId: position.hostId,
				holdsPartId: position.part?.id ?? null,
				sides: sidesOf(position.sides),
			},
			{
				id: part.id,
				name: part.name,
				sameMachine: part.machineId === position.machineId || part.position?.machineId === position.machineId,
				isVoid: part.place === "void",
			},
			input.sides,
		);
		if (!ruling.ok) return ruling;
		const standing = await read.obstruction.findMany({ where: { partId: part.id, positionId: position.id } });
		const sides = input.sides.length === 0 ? [""] : input.sides;
		const ids: string[] = [];
		const rows = sides.flatMap((side): RowChange[] => {
			const known = standing.find((row) => row.side === side);
			const id = known?.id ?? env.newId();
			ids.push(id);
			if (known?.stands === "yes" && known.note === input.note) return [];
			if (known) return [change("Obstruction", known, { stands: "yes", note: input.note })];
			return [
				add("Obstruction", {
					id,
					machineId: position.machineId,
					partId: part.id,
					positionId: position.id,
					side,
					stands: "yes",
					note: input.note,
				}),
			];
		});
		if (rows.length === 0) return refuse("known", `It is in the book already that ${part.name} comes off first.`);
		const from = input.sides.length === 0 ? "" : ` from the ${input.sides.join(", ")}`;
		const say = `To reach ${position.mark} ${position.name}${from}, ${part.name} comes off first.`;
		return ok(deed(position.machineId, "obstruction.said", { table: "Position", id: position.id }, { say }, rows, ids));
	});

/** It turned out that nothing is in the way there. The word stays readable as withdrawn. */
export const withdrawObstruction = (input: { readonly obstructionId: string; readonly why: string }, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const found = await read.obstruction.findUnique({
			where: { id: input.obstructionId },
			include: { part: { select: { name: true } }, position: { select: { mark: true, name: true } } },
		});
		if (!found) return refuse("no-such-obstruction", "That is not in the book. Load the page again.");
		const { part, position, ...row } = found;
		if (row.stands === "no") return refuse("withdrawn", "That is withdrawn already.");
		return ok(
			deed(
				row.machineId,
				"obstruction.withdrawn",
				{ table: "Obstruction", id: row.id },
				{ say: `${part.name} is not in the way of ${position.mark} ${position.name} after all.`, why: input.why },
				[change("Obstruction", row, { stands: "no" })],
				null,
			),
		);
	});

/** The two parts cannot be fitted at the same time: one stands where the other would. Gives its id. */
export const sayExclusion = (input: SayExclusion, env: Env): Promise<Result<string>> =>
	record(env, async (read) => {
		if (input.partId === input.otherId) return refuse("same-part", "Choose two parts.", { fields: { otherId: "Choose another part." } });
		// One row a pair, whichever was named first.
		const [first, second] = input.partId < input.otherId ? [input.partId, input.otherId] : [input.otherId, input.partId];
		const parts = await read.part.findMany({
			where: { id: { in: [first, second] } },
			select: { id: true, name: true, machineId: true, place: true, position: { select: { machineId: true } } },
		});
		const [a, b] = [parts.find((part) => part.id === first), parts.find((part) => part.id === second)];
		if (!a || !b) return refuse("no-such-part", "One of the parts is not in the book. Choose again.");
		const gone = [a, b].find((part) => part.place === "void");
		if (gone) {
			const say = `${gone.name} was entered in error. Choose another part.`;
			return refuse("is-void", say, { fields: { [gone.id === input.partId ? "partId" : "otherId"]: say } });
		}
		// A part of another machine may be fitted in this one, and then stands where this one's would.
		const machinesOf = (part: typeof a) => [part.machineId, ...(part.position ? [part.position.machineId] : [])];
		const machineId = machinesOf(a).find((id) => machinesOf(b).includes(id));
		if (machineId === undefined) {
			const say = `${a.name} and ${b.name} are of two machines, and neither is fitted in the other's. Choose two parts of one machine.`;
			return refuse("other-machine", say, { fields: { otherId: say } });
		}
		if ((await read.exclusion.count({ where: { partId: first, otherId: second } })) > 0) {
			return refuse("known", `It is in the book already that ${a.name} and ${b.name} exclude each other.`);
		}
		const id = env.newId();
		return ok(
			deed(
				machineId,
				"exclusion.said",
				{ table: "Exclusion", id },
				{ say: `${a.name} and ${b.name} cannot be fitted at the same time.` },
				[add("Exclusion", { id, machineId, partId: first, otherId: second, note: input.note })],
				id,
			),
		);
	});
