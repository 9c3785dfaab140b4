// Parts come out and go in, with what held them and how they were wired, as the take-out and put-in forms send it.

import { addCapture } from "@/lib/captures/changes";
import { changeConnection, putIn, sayConnection, takeOut } from "@/lib/fittings/changes";
import type { TakeOut } from "@/lib/fittings/schema";
import type { Env } from "@/lib/ledger/env";
import type { Connection, Destination, Move, Part, Position, PositionId, PurchaseLine, Step } from "@/seed/data/types";
import { type MachineBook, of, type ShopBook } from "@/seed/load/book";
import { done } from "@/seed/load/diary";
import { asSaid, packedIn, partlyPacked } from "@/seed/load/fixings";
import { asSet, asWired } from "@/seed/load/intake";
import type { Pictures } from "@/seed/load/pictures";

export type Books = { readonly book: MachineBook; readonly shop: ShopBook; readonly pictures: Pictures };

export const positionOf = (book: MachineBook, id: PositionId): Position => {
	const position = book.data.positions.find((each) => each.id === id);
	if (position === undefined) throw new Error(`no position ${id}`);
	return position;
};

const newPartOf = (book: MachineBook, key: string): Part | undefined => book.data.newParts.find((part) => part.key === key);

function destination({ book, shop }: Books, to: Destination) {
	if ("bag" in to) return { kind: "bag", bagId: of(book.bags, to.bag) } as const;
	if ("location" in to) return { kind: "location", locationId: of(shop.locations, to.location) } as const;
	if ("tray" in to) return { kind: "location", locationId: of(shop.locations, to.tray) } as const;
	throw new Error("nothing in the demo goes from one position straight on to another");
}

/** The conversion that this very take-out belongs to: the last one of a part that the conversion replaced. */
function conversionOut(book: MachineBook, step: Step, move: Move): string | null {
	const conversion = book.data.conversions.find(({ partsOut }) => partsOut.includes(move.part));
	if (conversion === undefined) return null;
	const outs = book.data.steps.flatMap(({ id, moves }) =>
		moves.flatMap((each) => (each.kind === "take-out" && each.part === move.part ? [id] : [])),
	);
	return outs.at(-1) === step.id ? of(book.conversions, conversion.id) : null;
}

function conversionIn(book: MachineBook, part: string): string | null {
	const conversion = book.data.conversions.find(({ partsIn }) => partsIn.includes(part));
	return conversion === undefined ? null : of(book.conversions, conversion.id);
}

/** What held the part, each where it went. Read from the book, as the form shows it. */
async function fixingsThatCameOff({ book }: Books, env: Env, step: Step, move: Move & { readonly kind: "take-out" }) {
	const positionId = of(book.positions, move.position);
	const held = await env.store.read.fixing.findMany({
		where: { place: "home", holds: { some: { fitting: { positionId, untilAt: null } } } },
		orderBy: { id: "asc" },
	});
	const position = positionOf(book, move.position);
	const packed = move.part === move.position ? packedIn(position, book.data.bags, step.id) : [];
	const partly = move.part === move.position ? partlyPacked(position, book.data.bags, step.id) : null;
	return held.flatMap((fixing): NonNullable<TakeOut["fixings"]> => {
		const { id, entry: _entry, machineId: _machine, place: _place, bagId: _bag, ...said } = fixing;
		const own = packed.find(({ fixing: each }) => asSaid(each).thread === said.thread && each.count === said.count);
		const named = { fixingId: id, ...said };
		if (own !== undefined && own.bag !== null) return [{ ...named, went: { kind: "bag", bagId: of(book.bags, own.bag) } as const }];
		if (partly !== null && said.count > partly.count) {
			const rest = { ...named, count: said.count - partly.count, note: "sheared" };
			return [
				{ ...named, count: partly.count, went: { kind: "bag", bagId: of(book.bags, partly.bag) } as const },
				{ ...rest, went: { kind: "scrapped" } as const },
			];
		}
		return [{ ...named, went: { kind: "left" } as const }];
	});
}

/** Takes a part out, with the picture of it. */
export async function carryOutTakeOut(
	books: Books,
	env: Env,
	next: () => Env,
	step: Step,
	move: Move & { readonly kind: "take-out" },
): Promise<void> {
	const { book, pictures } = books;
	const position = positionOf(book, move.position);
	const picture = pictures.taken(book.data.number, step.id, move.part);
	const words = `${newPartOf(book, move.part)?.name ?? position.name}, as it came out`;
	const captures =
		picture === null ? [] : [done(await addCapture({ machineId: book.machineId, kind: "drawing", file: picture, words }, env)).captureId];
	const taken = await takeOut(
		{
			machineId: book.machineId,
			positionId: of(book.positions, move.position),
			stepId: of(book.steps, step.id),
			conversionId: conversionOut(book, step, move),
			into: destination(books, move.to),
			fixings: await fixingsThatCameOff(books, env, step, move),
			captureIds: captures,
		},
		next(),
	);
	done(taken);
	await partGuestsFromTheMachine(books, next, move.part);
}

/** What is on an assembly that comes out cannot stay wired to the machine. */
async function partGuestsFromTheMachine({ book }: Books, next: () => Env, part: string): Promise<void> {
	const guests = book.data.positions.filter((position) => (position.hostPart ?? position.hostPosition) === part);
	for (const guest of guests)
		for (const wire of guest.connections.filter(({ to }) => to.startsWith("block "))) {
			const connectionId = book.wires.get(`${guest.id} ${wire.from}`);
			const env = next();
			const row = connectionId && (await env.store.read.connection.findUnique({ where: { id: connectionId }, select: { state: true } }));
			if (connectionId && row && row.state === "connected") done(await changeConnection({ connectionId, state: "parked" }, env));
		}
}

/** Screws that were bought to hold an old part: "screws M6 x 30". */
function boughtFixings(book: MachineBook, position: PositionId) {
	return book.data.purchases.flatMap(({ lines }) => lines.flatMap((line) => heldBy(line, position)));
}

function heldBy(line: PurchaseLine, position: PositionId) {
	const size = /^screws (M\d+) x (\d+)$/.exec(line.what);
	if (size === null) return [];
	return line.uses.flatMap((use) =>
		"fixingOf" in use.for && use.for.fixingOf === position ? [{ count: use.quantity, thread: size[1] ?? "", length: `${size[2]} mm` }] : [],
	);
}

/** What holds the part now: its own fixings again, those that its forerunner left in place, or new ones. */
async function fixingsThatHold(book: MachineBook, env: Env, move: Move) {
	const { read } = env.store;
	const [positionId, partId] = [of(book.positions, move.position), of(book.parts, move.part)];
	const before = await read.fixing.findMany({
		where: { holds: { some: { fitting: { positionId } } }, place: { notIn: ["home", "scrapped", "lost"] } },
		orderBy: { id: "asc" },
		include: { bag: { select: { role: true } }, holds: { select: { fitting: { select: { partId: true } } } } },
	});
	const onRecord = (fixing: (typeof before)[number]) => {
		const { count, thread, length, head, drive, tightness, differs, note } = fixing;
		return { fixingId: fixing.id, count, thread, length, head, drive, tightness, differs, note };
	};
	const own = before.filter(({ holds }) => holds.some(({ fitting }) => fitting.partId === partId));
	if (own.length > 0 || move.part === move.position)
		return [...own.filter(({ bag }) => bag?.role !== "keeping").map(onRecord), ...boughtFixings(book, move.position)];
	const left = before.filter(({ place }) => place === "left");
	return (newPartOf(book, move.part)?.fixings ?? []).map((fixing) => {
		const said = asSaid(fixing);
		const same = left.find(({ thread, count }) => thread === said.thread && count === said.count);
		return same === undefined ? said : onRecord(same);
	});
}

/** Wires of the part that were undone when it came out and that no conversion has taken over. */
async function wiresAgain(book: MachineBook, env: Env, move: Move) {
	const parked = await env.store.read.connection.findMany({
		where: {
			state: "parked",
			conversionId: null,
			fitting: { positionId: of(book.positions, move.position), partId: of(book.parts, move.part) },
		},
		orderBy: { id: "asc" },
	});
	return parked.map((wire) => ({ ...wire, connectionId: wire.id, state: "connected" as const }));
}

/** Puts a part in. A place that carries it must be in the book. */
export async function carryOutPutIn({ book }: Books, env: Env, step: Step, move: Move): Promise<void> {
	const position = positionOf(book, move.position);
	const comesBack = move.part === move.position;
	const conversionId = conversionIn(book, move.part);
	const wiring = book.data.connectionChanges.filter(({ at, step: id }) => at === move.position && id === step.id);
	const fresh = conversionId === null || position.asFound !== undefined ? [] : wiredAtOnce(book, step) ? position.connections : [];
	const into = await putIn(
		{
			partId: of(book.parts, move.part),
			positionId: of(book.positions, move.position),
			stepId: of(book.steps, step.id),
			conversionId,
			fixings: await fixingsThatHold(book, env, move),
			connections: [
				...(await wiresAgain(book, env, move)),
				...fresh.map(asWired),
				...wiring.flatMap((change) => newWires(book, change.connectionsAfter)).map(asWired),
			],
			settings: comesBack ? position.settings.map(asSet) : [],
		},
		env,
	);
	done(into);
}

/** Places of a conversion are wired when they are filled, unless a later step wires everything up. */
const wiredAtOnce = (book: MachineBook, step: Step): boolean => {
	const conversion = book.data.conversions.find(({ id }) => id === step.conversion);
	return !book.data.steps.some(({ what, conversion: id }) => what.startsWith("wire up") && id === conversion?.id);
};

/** What is said of a wire that is undone: its state says already that it is parked. */
const undoneWords = (after: string): string => (after.startsWith("parked, ") ? after.slice("parked, ".length) : `in its place ${after}`);

/** Each wire is written once: not again from its other end. */
export function newWires(book: MachineBook, wires: readonly Connection[]): Connection[] {
	const made = book.data.positions.filter(({ asFound }) => asFound === undefined).flatMap(({ connections }) => connections);
	return wires.filter(
		(wire) => !made.some((other) => other.from === wire.to && other.to === wire.from && other.colours.join() === wire.colours.join()),
	);
}

/** What a step changes in the wiring, one deed a wire. */
export async function carryOutWiring({ book }: Books, next: () => Env, step: Step): Promise<void> {
	for (const change of book.data.connectionChanges.filter((each) => each.step === step.id)) {
		const conversionId = change.conversion === undefined ? null : of(book.conversions, change.conversion);
		const position = positionOf(book, change.at);
		const terminals = new Set(change.connectionsAfter.map(({ from }) => from));
		const again = position.connections.filter(({ from }) => terminals.has(from));
		const undone = change.before.startsWith("no ") ? [] : again.length > 0 ? again : position.connections;
		for (const wire of undone) {
			const connectionId = of(book.wires, `${change.at} ${wire.from}`);
			done(
				await changeConnection(
					{ connectionId, state: "parked", conversionId, note: [wire.note, undoneWords(change.after)].filter(Boolean).join("; ") },
					next(),
				),
			);
		}
		const putInHere = step.moves.some((move) => move.kind === "put-in" && move.position === change.at);
		if (putInHere) continue;
		for (const wire of newWires(book, change.connectionsAfter))
			done(await sayConnection({ positionId: of(book.positions, change.at), conversionId, ...asWired(wire) }, next()));
	}
	if (!step.what.startsWith("wire up")) return;
	for (const position of book.data.positions) {
		const part = book.data.newParts.find((each) => each.position === position.id);
		const conversion = book.data.conversions.find(
			({ id, partsIn }) => id === step.conversion && part !== undefined && partsIn.includes(part.key),
		);
		if (position.asFound !== undefined || conversion === undefined) continue;
		for (const wire of position.connections) {
			const other = book.data.connectionChanges.find(({ connectionsAfter }) =>
				connectionsAfter.some(({ from, to }) => from === wire.to && to === wire.from),
			);
			const conversionId = of(book.conversions, other?.conversion ?? conversion.id);
			done(await sayConnection({ positionId: of(book.positions, position.id), conversionId, ...asWired(wire) }, next()));
		}
	}
}
