import type { Reader } from "@/lib/db/store";
import { minor, NOTHING, sumMinor } from "@/lib/money/money";
import { type SharedLine, sharesOf, type WantedPart } from "@/lib/wanted/rules";

/** No machine's list of what is wanted shows more than this. */
export const MOST_WANTED = 1000;

/** What is, or was, to be bought for a machine: open first, then what was bought, then what was dropped. */
export async function wantedOf(read: Reader, machineId: string) {
	const rows = await read.wanted.findMany({
		where: { machineId },
		orderBy: [{ entry: "asc" }, { id: "asc" }],
		take: MOST_WANTED,
		select: {
			id: true,
			entry: true,
			words: true,
			estimatedMinor: true,
			state: true,
			addedWhy: true,
			stepId: true,
			lineId: true,
			step: { select: { number: true, title: true } },
			line: {
				select: {
					number: true,
					what: true,
					count: true,
					landedMinor: true,
					purchase: { select: { number: true, arrivedDay: true } },
					uses: { where: { kind: { not: "void" } }, select: { machineId: true, count: true, amountMinor: true } },
					wanted: {
						where: { state: "bought" },
						orderBy: [{ entry: "asc" }, { id: "asc" }],
						select: { id: true, machineId: true, estimatedMinor: true },
					},
				},
			},
		},
	});
	const order = ["open", "bought", "dropped"];
	return rows.sort((a, b) => order.indexOf(a.state) - order.indexOf(b.state));
}
export type WantedRow = Awaited<ReturnType<typeof wantedOf>>[number];

/** A row as the rules count it. */
export const wantedPart = ({ id, state, estimatedMinor, addedWhy, line }: WantedRow): WantedPart => ({
	state,
	estimated: minor(estimatedMinor),
	firstPlan: addedWhy === "",
	share: line ? (sharesOf(sharedLine(line)).get(id) ?? NOTHING) : NOTHING,
});

const sharedLine = ({ count, landedMinor, uses, wanted }: NonNullable<WantedRow["line"]>): SharedLine => ({
	count,
	left: minor(landedMinor - sumMinor(uses.map(({ amountMinor }) => minor(amountMinor)))),
	wanted: wanted.map(({ estimatedMinor, ...each }) => ({ ...each, estimated: minor(estimatedMinor) })),
	takings: uses,
});

/** Lines that something wanted may have been bought with: of the latest purchases, newest first. */
export const linesBought = (read: Reader) =>
	read.purchaseLine.findMany({
		orderBy: [{ purchase: { number: "desc" } }, { number: "asc" }],
		take: 300,
		select: { id: true, what: true, count: true, purchase: { select: { number: true } } },
	});

/** Steps of a machine that something may be wanted for: those that are not over. */
export const openSteps = (read: Reader, machineId: string) =>
	read.step.findMany({
		where: { machineId, state: { in: ["planned", "doing"] } },
		orderBy: { number: "asc" },
		take: 600,
		select: { id: true, number: true, title: true },
	});
