// What a photo or a paper of a machine may show, to choose from.

import type { Reader } from "@/lib/db/store";

export type Choice = { readonly value: string; readonly label: string /** Of a position. */; readonly mark?: string };

/** More than any machine has; a list that is longer is cut. */
const MOST = 2000;

/** Positions, parts, bags and steps of a machine, each in the order in which a person would look. */
export async function shownChoices(
	read: Reader,
	machineId: string,
): Promise<{ positions: Choice[]; parts: Choice[]; bags: Choice[]; steps: Choice[] }> {
	const [positions, parts, bags, steps] = await Promise.all([
		read.position.findMany({ where: { machineId }, orderBy: { mark: "asc" }, take: MOST, select: { id: true, mark: true, name: true } }),
		partsOf(read, machineId),
		read.bag.findMany({
			where: { machineId, place: { not: "void" } },
			orderBy: { tag: { number: "asc" } },
			take: MOST,
			select: { id: true, words: true, tag: { select: { id: true } } },
		}),
		read.step.findMany({ where: { machineId }, orderBy: { number: "asc" }, take: MOST, select: { id: true, number: true, title: true } }),
	]);
	return {
		positions: positions.map(({ id, mark, name }) => ({ value: id, label: `${mark} ${name}`, mark })),
		parts,
		bags: bags.map(({ id, words, tag }) => ({ value: id, label: [tag?.id, words].filter(Boolean).join(" ") })),
		steps: steps.map(({ id, number, title }) => ({ value: id, label: `${number} ${title}` })),
	};
}

/** The parts of a machine that were not entered in error, by their tags. */
export async function partsOf(read: Reader, machineId: string): Promise<Choice[]> {
	const parts = await read.part.findMany({
		where: { machineId, place: { not: "void" } },
		orderBy: { tag: { number: "asc" } },
		take: MOST,
		select: { id: true, name: true, tag: { select: { id: true } } },
	});
	return parts.map(({ id, name, tag }) => ({ value: id, label: [tag?.id, name].filter(Boolean).join(" ") }));
}
