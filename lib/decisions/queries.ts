// Reads about what was weighed and decided on a machine.

import type { Reader } from "@/lib/db/store";

/** A machine's decisions, latest first, each with its options side by side. */
export const decisionsOf = (read: Reader, machineId: string) =>
	read.decision.findMany({
		where: { machineId },
		orderBy: [{ at: "desc" }, { id: "desc" }],
		take: 100,
		select: {
			id: true,
			question: true,
			at: true,
			agreedBy: true,
			words: true,
			step: { select: { number: true, title: true } },
			options: {
				orderBy: { number: "asc" },
				select: {
					id: true,
					number: true,
					words: true,
					costMinor: true,
					minutes: true,
					loses: true,
					state: true,
					does: true,
					undo: true,
					foreseen: true,
					positionsLost: true,
					statesLost: true,
					part: { select: { name: true, origin: true, tag: { select: { id: true } } } },
					position: { select: { mark: true, name: true } },
				},
			},
		},
	});
export type DecisionRow = Awaited<ReturnType<typeof decisionsOf>>[number];
