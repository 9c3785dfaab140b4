// Parts are described, backed by evidence, added, and leave or come back. Putting in and taking out is fittings' work.

import { formatDay } from "@/lib/core/days";
import type { Instant } from "@/lib/core/instants";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import type { Env } from "@/lib/ledger/env";
import { overMeanwhile, UNSEEN } from "@/lib/ledger/meanwhile";
import { record } from "@/lib/ledger/record";
import { add, change, type Deed, deed, type RowChange, type Tables } from "@/lib/ledger/rows";
import { evidenceRow } from "@/lib/parts/evidenceRow";
import { atLocation, inBag, newPart, onTheBench, type Place } from "@/lib/parts/newPart";
import { nextPartNumbers } from "@/lib/parts/numbering";
import { tagsGiven } from "@/lib/parts/queries";
import { type LeavingPart, mayComeBack, mayGoForGood, mayGoOut } from "@/lib/parts/rules";
import type { AddPart, ComeBack, DescribePart, Leave, SayEvidence, SellPart, SendOut } from "@/lib/parts/schema";
import { positionsLostWith } from "@/lib/reversal/beforehandQueries";

type Later = { readonly at?: Instant };

async function partWithTag(read: Reader, id: string): Promise<Result<{ row: Tables["Part"]; tag: string; leaving: LeavingPart }>> {
	const found = await read.part.findUnique({ where: { id }, include: { tag: { select: { id: true } } } });
	if (!found) return refuse("no-such-part", "That part is not in the book. Load the page again.");
	const { tag, ...row } = found;
	const name = tag?.id ?? "a part without a tag";
	return ok({ row, tag: name, leaving: { name: row.name, tag: name, origin: row.origin, place: row.place } });
}

/** Corrects what is said of a part. What was said before stays readable in the ledger. */
export const describePart = (input: DescribePart, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const part = await partWithTag(read, input.partId);
		if (!part.ok) return part;
		const { row, tag } = part.value;
		if (row.place === "void") return refuse("is-void", `${tag} was entered in error. Nothing more is said of it.`);
		const { partId: _, ...said } = input;
		const laid = await overMeanwhile(read, "Part", row, env.seen ?? UNSEEN, said);
		if (!laid.ok) return laid;
		const patch = laid.value;
		const changed = Object.entries(patch).flatMap(([column, value]) => (row[column as keyof typeof row] === value ? [] : [column]));
		const origin = row.origin === patch.origin ? "" : ` Its origin was ${row.origin} and is now ${patch.origin}.`;
		return ok(
			deed(
				row.machineId,
				"part.described",
				{ table: "Part", id: row.id },
				{ say: `Described ${tag}, ${patch.name}.${origin}`, changed },
				[change("Part", row, patch)],
				null,
			),
		);
	});

/** How we know. Who said it is withheld; everything else may be shown. Gives the evidence's id. */
export const sayEvidence = (input: SayEvidence, env: Env): Promise<Result<string>> =>
	record(env, async (read) => {
		const part = input.partId === null ? null : await read.part.findUnique({ where: { id: input.partId }, include: { tag: true } });
		const position = input.positionId === null ? null : await read.position.findUnique({ where: { id: input.positionId } });
		const fault = input.faultId === null ? null : await read.fault.findUnique({ where: { id: input.faultId } });
		const subject = part ?? position ?? fault;
		if (!subject || (input.partId !== null && !part) || (input.positionId !== null && !position) || (input.faultId !== null && !fault)) {
			return refuse("no-such-subject", "What this is evidence of is not in the book. Load the page again.");
		}
		if (input.captureId !== null && (await read.capture.count({ where: { id: input.captureId, stands: "yes" } })) === 0) {
			return refuse("no-such-capture", "That photo or paper is not in the book. Choose another.", {
				fields: { captureId: "Choose another." },
			});
		}
		const id = env.newId();
		const of = part ? `${part.tag?.id ?? "a part"}, ${part.name}` : position ? `${position.mark} ${position.name}` : "a fault";
		const how = input.how === "" ? "" : `, ${input.how}`;
		return ok(
			deed(
				subject.machineId,
				"evidence.said",
				{ table: "Evidence", id },
				{ say: `Evidence for ${of}: ${input.kind}${how}.` },
				[evidenceRow(id, subject.machineId, input, input)],
				id,
			),
		);
	});

/** Takes evidence back that turned out not to hold; it stays readable as withdrawn. */
export const withdrawEvidence = (input: { readonly evidenceId: string; readonly why: string }, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const evidence = await read.evidence.findUnique({ where: { id: input.evidenceId } });
		if (!evidence) return refuse("no-such-evidence", "That evidence is not in the book. Load the page again.");
		if (evidence.stands === "no") return refuse("withdrawn", "That evidence is withdrawn already.");
		return ok(
			deed(
				evidence.machineId,
				"evidence.withdrawn",
				{ table: "Evidence", id: evidence.id },
				{ say: `Withdrew evidence (${evidence.kind}${evidence.how === "" ? "" : `, ${evidence.how}`}).`, why: input.why },
				[change("Evidence", evidence, { stands: "no" })],
				null,
			),
		);
	});

/** Where a part that is not fitted lies: the bag or the location that is named, else the bench. */
async function placeFor(
	read: Reader,
	input: { readonly bagId: string | null; readonly locationId: string | null },
): Promise<Result<Place>> {
	if (input.bagId !== null) {
		const bag = await read.bag.findUnique({ where: { id: input.bagId }, select: { place: true } });
		if (!bag || bag.place === "void")
			return refuse("no-such-bag", "That bag is not in use. Choose another.", { fields: { bagId: "Choose another bag." } });
		return ok(inBag(input.bagId));
	}
	if (input.locationId !== null) {
		const known = await read.location.count({ where: { id: input.locationId } });
		if (known === 0)
			return refuse("no-such-location", "That place is not in the shop. Choose another.", {
				fields: { locationId: "Choose another place." },
			});
		return ok(atLocation(input.locationId));
	}
	return ok(onTheBench);
}

/** A part that is not fitted yet: made here, bought, or found loose. Gives its id and tag. */
export const addPart = (input: AddPart & Later, env: Env): Promise<Result<{ id: string; tag: string }>> =>
	record(env, async (read) => {
		const machine = await read.machine.findUnique({ where: { id: input.machineId }, select: { id: true, number: true } });
		if (!machine) return refuse("no-such-machine", "That machine is not in the book. Load the page again.");
		if (input.lineId !== null && (await read.purchaseLine.count({ where: { id: input.lineId } })) === 0) {
			return refuse("no-such-line", "That purchase is not in the book. Choose again.", { fields: { lineId: "Choose again." } });
		}
		const place = await placeFor(read, input);
		if (!place.ok) return place;
		const numbers = nextPartNumbers(machine.number, await tagsGiven(read, machine.number), 1);
		if (!numbers.ok) return numbers;
		const id = env.newId();
		const at = input.at ?? env.clock();
		const { tag, rows } = newPart({
			id,
			machine,
			number: numbers.value[0] ?? 0,
			details: input,
			place: place.value,
			at,
			lineId: input.lineId,
		});
		return ok(
			deed(
				machine.id,
				"part.added",
				{ table: "Part", id },
				{ say: `Added ${tag}, ${lotOf(input)} (${input.origin}).`, origin: input.origin },
				rows,
				{
					id,
					tag,
				},
			),
		);
	});

const lotOf = (part: { readonly name: string; readonly count: number }): string =>
	part.count === 1 ? part.name : `${part.count} × ${part.name}`;

/** The chosen party, or a new one of that name. */
async function partyFor(
	read: Reader,
	env: Env,
	input: { readonly partyId: string | null; readonly partyName: string },
	kind: "owner" | "specialist",
): Promise<Result<{ id: string | null; rows: RowChange[] }>> {
	if (input.partyId !== null) {
		const known = await read.party.count({ where: { id: input.partyId } });
		if (known > 0) return ok({ id: input.partyId, rows: [] });
		return refuse("no-such-party", "That name is not in the book. Choose again.", { fields: { partyId: "Choose again." } });
	}
	if (input.partyName === "") return ok({ id: null, rows: [] });
	const id = env.newId();
	return ok({ id, rows: [add("Party", { id, kind, name: input.partyName, contact: null })] });
}

/** Lends a loose part, or gives it to a specialist. It stays the shop's, and somebody outside answers for it. */
export const sendOut = (input: SendOut & Later, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const part = await partWithTag(read, input.partId);
		if (!part.ok) return part;
		const { row, tag, leaving } = part.value;
		const ruling = mayGoOut(leaving, input.dueDay);
		if (!ruling.ok) return ruling;
		const party = await partyFor(read, env, input, "specialist");
		if (!party.ok) return party;
		if (party.value.id === null)
			return refuse("nobody-answers", "Say who answers for it.", { fields: { partyId: "Choose a name, or write one." } });
		const moved = change("Part", row, {
			...NOWHERE,
			place: "out",
			partyId: party.value.id,
			dueDay: input.dueDay,
			placeWhy: input.why,
			sinceAt: input.at ?? env.clock(),
		});
		const due = input.dueDay === null ? "" : `, due back ${formatDay(input.dueDay)}`;
		return ok(
			deed(
				row.machineId,
				"part.sent-out",
				{ table: "Part", id: row.id },
				{ say: `Sent out ${tag}, ${row.name}${due}.`, why: input.why },
				[...party.value.rows, moved],
				null,
			),
		);
	});

const NOWHERE = { positionId: null, bagId: null, locationId: null, partyId: null, dueDay: null } as const;

/** A part is in the shop again: from outside, or against all expectation from where it was sold, lost or scrapped. */
export const comeBack = (input: ComeBack & Later, env: Env): Promise<Result<null>> =>
	record(env, async (read) => {
		const part = await partWithTag(read, input.partId);
		if (!part.ok) return part;
		const { row, tag, leaving } = part.value;
		const ruling = mayComeBack(leaving, input.why);
		if (!ruling.ok) return ruling;
		const place = await placeFor(read, input);
		if (!place.ok) return place;
		const back = change("Part", row, { ...NOWHERE, ...place.value, placeWhy: "", sinceAt: input.at ?? env.clock() });
		const from = row.place === "out" ? "" : ` It was ${row.place}.`;
		return ok(
			deed(
				row.machineId,
				"part.come-back",
				{ table: "Part", id: row.id },
				{ say: `${tag}, ${row.name}, is back.${from}`, why: input.why },
				[back],
				null,
			),
		);
	});

type Gone = "sold" | "lost" | "scrapped" | "void";

const SAYS: Readonly<Record<Gone, string>> = { sold: "Sold", lost: "Lost", scrapped: "Scrapped", void: "Struck out as entered in error:" };
const DEEDS: Readonly<Record<Gone, string>> = { sold: "part.sold", lost: "part.lost", scrapped: "part.scrapped", void: "part.voided" };

async function goForGood(
	read: Reader,
	env: Env,
	way: Gone,
	input: Leave & Later,
	party: { readonly id: string | null; readonly rows: readonly RowChange[] },
): Promise<Result<Deed<{ loses: string[] }>>> {
	const part = await partWithTag(read, input.partId);
	if (!part.ok) return part;
	const { row, tag, leaving } = part.value;
	// What never was takes nothing with it.
	const loses = way === "void" ? [] : await positionsLostWith(read, row.id);
	const ruling = mayGoForGood(leaving, way, loses, input.why);
	if (!ruling.ok) return ruling;
	const gone = change("Part", row, { ...NOWHERE, place: way, partyId: party.id, placeWhy: input.why, sinceAt: input.at ?? env.clock() });
	const marks = loses.map((position) => position.mark);
	const lost = marks.length === 0 ? "" : ` Never original again: ${marks.join(", ")}.`;
	return ok(
		deed(
			row.machineId,
			DEEDS[way],
			{ table: "Part", id: row.id },
			{ say: `${SAYS[way]} ${tag}, ${row.name}.${lost}`, why: input.why, loses: marks },
			[...party.rows, gone],
			{ loses: marks },
		),
	);
}

const NOBODY = { id: null, rows: [] } as const;

/** Throws a loose part away. Rule 3: an original needs a reason. Gives the marks of the positions that lose their original. */
export const scrapPart = (input: Leave & Later, env: Env): Promise<Result<{ loses: string[] }>> =>
	record(env, (read) => goForGood(read, env, "scrapped", input, NOBODY));

/** A part cannot be found any more. */
export const losePart = (input: Leave & Later, env: Env): Promise<Result<{ loses: string[] }>> =>
	record(env, (read) => goForGood(read, env, "lost", input, NOBODY));

/** The same as a piece of a larger deed, such as a count. */
export const losing = (read: Reader, input: Leave & Later, env: Env): Promise<Result<Deed<{ loses: string[] }>>> =>
	goForGood(read, env, "lost", input, NOBODY);

/** A part that never was: entered in error. It stays in the book, struck out. */
export const voidPart = (input: Leave & Later, env: Env): Promise<Result<{ loses: string[] }>> =>
	record(env, (read) => goForGood(read, env, "void", input, NOBODY));

/** Sells a loose part by itself. */
export const sellPart = (input: SellPart & Later, env: Env): Promise<Result<{ loses: string[] }>> =>
	record(env, async (read) => {
		const party = await partyFor(read, env, input, "owner");
		return party.ok ? goForGood(read, env, "sold", input, party.value) : party;
	});
