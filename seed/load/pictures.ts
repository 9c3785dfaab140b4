// The pictures and papers of the demo: drawn and brought to the disk before the first deed that mentions them.

import { Readable } from "node:stream";
import { type KeptFile, keepFile } from "@/lib/files/keepFile";
import type { Bag, Machine, PurchaseLine, SketchKind } from "@/seed/data/types";
import { done } from "@/seed/load/diary";
import { drawPart, drawPortrait } from "@/seed/pictures";

export type Pictures = {
	readonly portrait: (machine: number) => KeptFile;
	/** A part as it came out in a step; null where none was drawn. */
	readonly taken: (machine: number, step: string, part: string) => KeptFile | null;
	readonly bag: (machine: number, bag: number) => KeptFile | null;
	/** A new part. */
	readonly part: (machine: number, part: string) => KeptFile | null;
	/** A position as it was found. */
	readonly found: (machine: number, position: string) => KeptFile | null;
};

type Job = { readonly key: string; readonly name: string; readonly draw: () => Promise<Buffer> };

const sketchOfBag = (machine: Machine, bag: Bag): SketchKind => {
	const [first] = bag.contents;
	if (first?.part !== undefined) return machine.positions.find(({ id }) => id === first.part)?.sketch ?? "screws";
	return first?.fixingOf === undefined ? "paper" : "screws";
};

const countIn = (bag: Bag): number => bag.contents.reduce((sum, { count, part }) => (part === undefined ? sum + count : sum), 0);

function jobsOf(machine: Machine): Job[] {
	const { number } = machine;
	const file = (words: string) => `${number} ${words}.jpg`;
	const portrait = { key: `${number} portrait`, name: file("as it stands"), draw: () => drawPortrait(number) };
	const seen = new Set<string>();
	const taken = machine.steps.flatMap((step) =>
		step.state === "planned"
			? []
			: step.moves.flatMap((move): Job[] => {
					const position = machine.positions.find(({ id }) => id === move.position);
					if (move.kind !== "take-out" || position === undefined || move.part !== move.position || seen.has(move.part)) return [];
					seen.add(move.part);
					const draw = () => drawPart(position.name, position.sketch, { going: "out", count: position.count });
					return [{ key: `${number} ${step.id} ${move.part}`, name: file(`${position.id} ${position.name}`), draw }];
				}),
	);
	const bags = machine.bags.map((bag): Job => {
		const kind = sketchOfBag(machine, bag);
		const count = kind === "screws" ? countIn(bag) : 1;
		const picture = { tag: bag.tag, count, bagged: true as const, ...(bag.side === undefined ? {} : { hand: bag.side }) };
		return { key: `${number} bag ${bag.number}`, name: file(bag.tag), draw: () => drawPart(bag.label, kind, picture) };
	});
	const made = machine.newParts
		.filter(({ mark }) => mark !== undefined)
		.map(
			(part): Job => ({
				key: `${number} part ${part.key}`,
				name: file(part.name),
				draw: () => drawPart(part.name, part.sketch, { count: part.count }),
			}),
		);
	// What does not work, is wrong or is missing is what a later reader looks for.
	const found = machine.positions
		.filter(
			({ asFound }) =>
				asFound !== undefined &&
				(asFound.works === false ||
					asFound.state === "wrong" ||
					(asFound.later ?? []).length > 0 ||
					asFound.evidence.some(({ kind }) => kind === "documented")),
		)
		.slice(0, MOST_FOUND)
		.map(
			(position): Job => ({
				key: `${number} found ${position.id}`,
				name: file(`${position.id} as found`),
				draw: () => drawPart(position.name, position.sketch, { count: position.count }),
			}),
		);
	return [portrait, ...taken, ...bags, ...made, ...found];
}

const MOST_FOUND = 3;

/** Draws everything and keeps it on the disk; as many at once as the drawing library has hands. */
export async function drawPictures(folder: string, machines: readonly Machine[]): Promise<Pictures> {
	const kept = new Map<string, KeptFile>();
	const jobs = machines.flatMap(jobsOf);
	const inHand = jobs[Symbol.iterator]();
	const hand = async () => {
		for (const { key, name, draw } of inHand) kept.set(key, await keep(folder, name, await draw()));
	};
	await Promise.all(Array.from({ length: 4 }, hand));
	const get = (key: string) => kept.get(key) ?? null;
	return {
		portrait: (machine) => {
			const file = get(`${machine} portrait`);
			if (file === null) throw new Error(`no portrait of machine ${machine}`);
			return file;
		},
		taken: (machine, step, part) => get(`${machine} ${step} ${part}`),
		bag: (machine, bag) => get(`${machine} bag ${bag}`),
		part: (machine, part) => get(`${machine} part ${part}`),
		found: (machine, position) => get(`${machine} found ${position}`),
	};
}

/** Brings bytes into the data folder, as an upload does. */
export async function keep(folder: string, name: string, bytes: Buffer, anyType = false): Promise<KeptFile> {
	return done(await keepFile(folder, { body: Readable.from([bytes]), name, announced: bytes.length, anyType }));
}

/** A paper as plain text. Says what it is: the demo's papers are written by the demo. */
export const paperText = (title: string, lines: readonly string[]): Buffer =>
	Buffer.from(`${title}\n(a paper of the demo shop, written for it)\n\n${lines.join("\n")}\n`);

export const lineInWords = ({ quantity, unit, what }: PurchaseLine): string => `${quantity} ${unit}  ${what}`;
