// Reads about a machine's conversions and what belongs to them.

import type { Reader } from "@/lib/db/store";

/** Rows of one kind that a conversion's page offers; more is said, not shown. */
export const MOST_MEMBERS = 500;

const FITTED = {
	id: true,
	fromAt: true,
	untilAt: true,
	conversionId: true,
	outConversionId: true,
	part: { select: { name: true, origin: true, tag: { select: { id: true } } } },
	position: { select: { mark: true, name: true } },
} as const;

/** A machine's conversions by number, each with what belongs to it. */
export const conversionsOf = (read: Reader, machineId: string) =>
	read.conversion.findMany({
		where: { machineId },
		orderBy: { number: "asc" },
		take: 100,
		select: {
			id: true,
			number: true,
			name: true,
			purpose: true,
			words: true,
			partsIn: { orderBy: [{ fromAt: "asc" }, { id: "asc" }], take: MOST_MEMBERS, select: FITTED },
			partsOut: { orderBy: [{ untilAt: "asc" }, { id: "asc" }], take: MOST_MEMBERS, select: FITTED },
			connections: { orderBy: { id: "asc" }, take: MOST_MEMBERS, select: { id: true, from: true, to: true, colour: true, state: true } },
			alterations: {
				where: { state: { not: "void" } },
				orderBy: { number: "asc" },
				take: MOST_MEMBERS,
				select: { id: true, number: true, what: true, undo: true, state: true },
			},
			steps: { orderBy: { number: "asc" }, take: MOST_MEMBERS, select: { id: true, number: true, title: true, state: true } },
			tests: { orderBy: { number: "asc" }, take: MOST_MEMBERS, select: { id: true, number: true, name: true } },
		},
	});
export type ConversionRow = Awaited<ReturnType<typeof conversionsOf>>[number];

/** All that could belong to a conversion of the machine, each with the conversion that it belongs to now. */
export async function possibleMembers(read: Reader, machineId: string) {
	const [fittings, connections, alterations, steps, tests] = await Promise.all([
		read.fitting.findMany({ where: { machineId }, orderBy: [{ fromAt: "desc" }, { id: "desc" }], take: MOST_MEMBERS, select: FITTED }),
		read.connection.findMany({
			where: { machineId },
			orderBy: { id: "asc" },
			take: MOST_MEMBERS,
			select: {
				id: true,
				from: true,
				to: true,
				colour: true,
				state: true,
				conversionId: true,
				fitting: { select: { position: { select: { mark: true, name: true } } } },
			},
		}),
		read.alteration.findMany({
			where: { machineId, state: { not: "void" } },
			orderBy: { number: "asc" },
			take: MOST_MEMBERS,
			select: { id: true, number: true, what: true, conversionId: true },
		}),
		read.step.findMany({
			where: { machineId },
			orderBy: { number: "asc" },
			take: MOST_MEMBERS,
			select: { id: true, number: true, title: true, conversionId: true },
		}),
		read.test.findMany({
			where: { machineId },
			orderBy: { number: "asc" },
			take: MOST_MEMBERS,
			select: { id: true, number: true, name: true, conversionId: true },
		}),
	]);
	return { fittings, connections, alterations, steps, tests };
}
export type PossibleMembers = Awaited<ReturnType<typeof possibleMembers>>;
