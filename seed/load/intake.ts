// A machine comes in: who brought it, what was found at each position and how that is known, what holds each part, what
// must come off first. Then the stamp.

import { sayConnection, sayFixing, saySetting } from "@/lib/fittings/changes";
import { sayFault, sayNote, stampAsFound, takeInMachine } from "@/lib/machines/changes";
import { sayFaultSchema, sayNoteSchema, takeInMachineSchema } from "@/lib/machines/schema";
import { addPositions, describePosition, recordFinding, sayObstruction } from "@/lib/positions/changes";
import { addPositionsSchema, describePositionSchema, recordFindingSchema, sayObstructionSchema } from "@/lib/positions/schema";
import type { Connection, Evidence, Machine, Position, Setting, Step } from "@/seed/data/types";
import { type MachineBook, of, type ShopBook } from "@/seed/load/book";
import { type Diary, type Doing, done } from "@/seed/load/diary";
import { asSaid } from "@/seed/load/fixings";
import { asTyped, currency } from "@/seed/load/shop";

/** The as found record is written in this step. */
export const asFoundStep = (machine: Machine): Step => {
	const step = machine.steps.find(({ what }) => what.startsWith("as found record"));
	if (step === undefined) throw new Error(`machine ${machine.number} has no as found record`);
	return step;
};

/** Who told what is told: whoever had it before. */
const tellerOf = ({ ownership }: Machine): string => (ownership.kind === "shop" ? ownership.seller : ownership.owner);

const dayIn = (machine: Machine): string => machine.received.slice(0, 10);

const serialOf = ({ plate = "" }: Machine): string => /(?:No\.|serial) (\S+)$/.exec(plate)?.[1] ?? "";

const inKilograms = (grams: number): string => `${grams % 1000 === 0 ? grams / 1000 : (grams / 1000).toFixed(1)} kg`;

/** Takes the machine in. */
export const takeIn =
	(book: MachineBook): Doing =>
	async (env) => {
		const { data } = book;
		const bought =
			data.ownership.kind === "shop"
				? {
						ownership: "shop",
						sellerName: data.ownership.seller,
						price: asTyped(data.ownership.boughtMinor),
						carriage: asTyped(data.ownership.carriageMinor),
					}
				: { ownership: "customer", ownerName: data.ownership.owner };
		const input = takeInMachineSchema(currency).parse({
			...bought,
			number: data.number,
			name: data.name,
			kind: data.what,
			maker: data.maker,
			serial: serialOf(data),
			made: data.madeEdtf,
			condition: [data.plate ? `Plate: ${data.plate}.` : "", `${data.supplyVolts}, ${inKilograms(data.massGrams)}.`]
				.filter(Boolean)
				.join(" "),
			hazards: data.hazards.map(({ what, positions, caution }) => `${what} (${positions.join(", ")}): ${caution}`).join("\n"),
			receivedDay: dayIn(data),
		});
		book.machineId = done(await takeInMachine(input, env)).id;
	};

export const asEvidence = (evidence: Evidence, teller: string) => ({ ...evidence, whoSaid: evidence.kind === "told" ? teller : "" });

/** What the next person must know of a position, in one note. */
function noteOf(position: Position): string {
	const wired = position.connections.length === 0 && position.connectionWords ? `Wiring: ${position.connectionWords}.` : "";
	const held =
		position.fixings.length === 0 && position.fixingWords && position.fixingWords !== "none" ? `Held: ${position.fixingWords}.` : "";
	const sentence = (words: string) => `${words.charAt(0).toUpperCase()}${words.slice(1)}${/[.!?]$/.test(words) ? "" : "."}`;
	const whole = position.whole ? "Comes out whole: its members are not undone singly." : "";
	const two = position.persons === 2 && !position.hazards.some((hazard) => hazard.includes("two persons")) ? "Two persons." : "";
	return [
		...position.hazards.map(sentence),
		two,
		whole,
		position.notes && !position.hazards.some((hazard) => sentence(hazard) === sentence(position.notes ?? ""))
			? sentence(position.notes)
			: "",
		held,
		wired,
	]
		.filter(Boolean)
		.join(" ");
}

const worksOf = (works: boolean | undefined): "works" | "faulty" | "unknown" =>
	works === undefined ? "unknown" : works ? "works" : "faulty";

/** One position as the list takes it. `presumed`: not seen, yet a part of it stands in a way or carries others. */
export function asListed(position: Position, teller: string, presumed: boolean) {
	const found = position.asFound;
	const plain = {
		mark: position.id,
		name: position.name,
		area: position.area,
		sides: position.sides ?? [],
		out: position.minutesOut,
		in: position.minutesIn,
		note: noteOf(position),
	};
	if (found === undefined) return plain;
	const part = {
		count: position.count,
		origin: found.origin ?? "unknown",
		works: worksOf(found.works),
		condition: found.condition ?? "",
	};
	const state = ({ present: "there", missing: "missing", wrong: "wrong", "not-seen": "unseen" } as const)[found.state];
	const holds = state === "there" || state === "wrong";
	return {
		...plain,
		hostMark: position.hostPosition,
		finding: state,
		foundWords: holds ? "" : (found.condition ?? ""),
		evidence: found.evidence.map((evidence) => asEvidence(evidence, teller)),
		...(holds ? { part } : presumed ? { part: { count: position.count, origin: "unknown" } } : {}),
	};
}

/** Positions of one area after the other, as one walks round the machine. */
function byArea(positions: readonly Position[]): Position[][] {
	const runs: Position[][] = [];
	for (const position of positions) {
		const run = runs.at(-1);
		if (run?.[0] !== undefined && run[0].area === position.area) run.push(position);
		else runs.push([position]);
	}
	return runs;
}

const holdsPart = (position: Position): boolean =>
	position.asFound !== undefined && position.asFound.state !== "missing" && position.asFound.state !== "not-seen";

const addThem =
	(book: MachineBook, positions: readonly Position[]): Doing =>
	async (env) => {
		const { data } = book;
		const input = addPositionsSchema.parse({
			machineId: book.machineId,
			positions: positions.map((position) =>
				asListed(
					position,
					tellerOf(data),
					data.obstructions.some(({ blocker }) => blocker === position.id),
				),
			),
		});
		const added = done(await addPositions(input, env));
		for (const { mark, id, partId, tag } of added.positions) {
			book.positions.set(mark, id);
			if (partId !== null) book.parts.set(mark, partId);
			if (tag !== null) book.tags.set(mark, tag);
		}
	};

const settingValue = ({ words, value, unit }: Setting): string =>
	value === undefined || words.includes(String(value)) ? words : `${words}: ${value} ${unit ?? ""}`.trim();

/** A setting as the form takes it. */
export const asSet = (setting: Setting) => ({ kind: setting.kind.replaceAll("-", " "), value: settingValue(setting) });

/** A wire as the form takes it. */
export const asWired = (wire: Connection) => ({
	from: wire.from,
	to: wire.to,
	colour: wire.colours.join(""),
	base: wire.base ?? "",
	tracer: wire.tracer ?? "",
	gauge: wire.gauge ?? "",
	tagFrom: wire.tags?.[0] ?? "",
	tagTo: wire.tags?.[1] ?? "",
	note: wire.note ?? "",
});

/** Says every wire at the parts that are there. */
export const wiresOf = (book: MachineBook): Doing[] =>
	book.data.positions.filter(holdsPart).flatMap((position) =>
		position.connections.map(
			(wire): Doing =>
				async (env) => {
					const { connectionId } = done(await sayConnection({ positionId: of(book.positions, position.id), ...asWired(wire) }, env));
					book.wires.set(`${position.id} ${wire.from}`, connectionId);
				},
		),
	);

const obstructionsAt = (book: MachineBook, positions: readonly Position[]): Doing[] =>
	book.data.obstructions
		.filter(({ blocked }) => positions.some(({ id }) => id === blocked))
		.map(
			({ blocked, blocker, side }): Doing =>
				async (env) => {
					const input = sayObstructionSchema.parse({
						positionId: of(book.positions, blocked),
						partId: of(book.parts, blocker),
						sides: side === undefined ? [] : [side],
					});
					done(await sayObstruction(input, env));
				},
		);

/** The deeds of the as found record, in order. */
export function asFoundRecord(book: MachineBook): Doing[] {
	const { data } = book;
	const found = data.positions.filter(({ asFound }) => asFound !== undefined);
	const there = found.filter(holdsPart);
	const story: Doing = async (env) => {
		const words = data.ownership.story;
		done(await sayNote(sayNoteSchema.parse({ machineId: book.machineId, kind: "told", words, whoSaid: tellerOf(data) }), env));
	};
	return [
		...byArea(found).map((run) => addThem(book, run)),
		...there.flatMap((position) =>
			position.fixings.map(
				(fixing): Doing =>
					async (env) => {
						const at = [position.id, ...(fixing.sharedWith === undefined ? [] : [fixing.sharedWith])];
						done(await sayFixing({ positionIds: at.map((id) => of(book.positions, id)), ...asSaid(fixing) }, env));
					},
			),
		),
		...there.flatMap((position) =>
			position.settings.map(
				(setting): Doing =>
					async (env) => {
						done(await saySetting({ positionId: of(book.positions, position.id), ...asSet(setting) }, env));
					},
			),
		),
		...obstructionsAt(book, found),
		...found.filter(({ mirrorOf }) => mirrorOf !== undefined).map((position) => mirrored(book, position)),
		story,
		...there
			.filter(({ asFound }) => asFound?.works === false)
			.map(
				(position): Doing =>
					async (env) => {
						const input = sayFaultSchema.parse({
							machineId: book.machineId,
							positionId: of(book.positions, position.id),
							partId: of(book.parts, position.id),
							kind: "seen",
							words: `${position.name}: ${position.asFound?.condition ?? "does not work"}`,
						});
						book.faults.set(position.id, done(await sayFault(input, env)));
					},
			),
	];
}

const mirrored =
	(book: MachineBook, position: Position): Doing =>
	async (env) => {
		const input = describePositionSchema.parse({
			...asListed(position, "", false),
			positionId: of(book.positions, position.id),
			hostMark: position.hostPosition,
			mirrorMark: position.mirrorOf,
		});
		done(await describePosition(input, env));
	};

export const stamp =
	(book: MachineBook): Doing =>
	async (env) => {
		done(await stampAsFound({ machineId: book.machineId }, env));
	};

/** A place that the shop's work makes, with what must come off first, empty. The part that carries it is in the book. */
export const makePlaces = (book: MachineBook, positions: readonly Position[]): Doing[] => [
	async (env) => {
		const input = addPositionsSchema.parse({
			machineId: book.machineId,
			positions: positions.map((position) => {
				const host = position.hostPart ?? position.hostPosition;
				return { ...asListed(position, "", false), hostPartId: host === null ? null : of(book.parts, host) };
			}),
		});
		for (const { mark, id } of done(await addPositions(input, env)).positions) book.positions.set(mark, id);
	},
	...obstructionsAt(book, positions),
];

/** What was learnt of positions after the stamp: added to the record, never written over it. */
export function laterKnowledge(diary: Diary, book: MachineBook, _shop: ShopBook): void {
	const teller = tellerOf(book.data);
	for (const position of book.data.positions)
		for (const learnt of position.asFound?.later ?? [])
			diary.note(learnt.at, learnt.by, `later knowledge of ${position.id}`, async (env) => {
				const input = recordFindingSchema.parse({
					positionId: of(book.positions, position.id),
					state: "there",
					words: learnt.evidence.map(({ words }) => words).join(" "),
					part: {
						name: position.name,
						count: position.count,
						origin: learnt.origin,
						works: worksOf(position.asFound?.works),
						condition: position.asFound?.condition ?? "",
					},
					evidence: learnt.evidence.map((evidence) => asEvidence(evidence, teller)),
				});
				done(await recordFinding(input, env));
			});
	for (const { at, by, words } of book.data.remarks)
		diary.note(at, by, "a remark", async (env) => {
			done(await sayNote(sayNoteSchema.parse({ machineId: book.machineId, kind: "seen", words }), env));
		});
}
