import { colourInWords } from "@/lib/colours/wireColour";
import type { Instant } from "@/lib/core/instants";
import { ok, type Result, refuse } from "@/lib/core/result";
import type { Reader } from "@/lib/db/store";
import type { LabelDrawing } from "@/lib/labels/drawing";
import { type FlagContent, isForFlags, layoutFlag } from "@/lib/labels/flagLayout";
import { labelFonts } from "@/lib/labels/labelFonts";
import { onStock, paperPdf } from "@/lib/labels/paper";
import { FLAG_ROLL, labelsPerPage, type Stock } from "@/lib/labels/stock";
import { nudgeOf, stocksToUse } from "@/lib/labels/stockQueries";

/** A machine has 60 to 250 wires. */
const MOST_WIRES = 400;

export type Wire = {
	readonly id: string;
	readonly mark: string;
	readonly position: string;
	readonly ends: readonly [FlagContent, FlagContent];
};

/** The wires of a machine that are not removed, or of one of its positions: what the flags of both ends say. */
export async function wiresOf(read: Reader, machineId: string, mark: string | null): Promise<Wire[]> {
	const rows = await read.connection.findMany({
		where: { machineId, state: { not: "removed" }, ...(mark === null ? {} : { fitting: { position: { mark } } }) },
		orderBy: [{ fitting: { position: { mark: "asc" } } }, { id: "asc" }],
		take: MOST_WIRES,
		select: {
			id: true,
			from: true,
			to: true,
			colour: true,
			base: true,
			tracer: true,
			tagFrom: true,
			tagTo: true,
			machine: { select: { number: true, name: true } },
			fitting: { select: { position: { select: { name: true, mark: true } } } },
		},
	});
	return rows.map(({ id, from, to, colour, base, tracer, tagFrom, tagTo, machine, fitting }) => {
		const { name, mark: at } = fitting.position;
		const cloth = [base, tracer].filter(Boolean).join(" with ");
		const seen = {
			colour,
			colourWords: [colour === "" ? "" : colourInWords(colour), cloth === "" ? "" : `seen: ${cloth}`].filter(Boolean).join(", "),
		};
		return {
			id,
			mark: at,
			position: name,
			ends: [
				{ tag: ownWords(tagFrom, from, colour), terminal: from, device: `${machine.number} ${at} ${name}`, ...seen, other: to },
				{
					tag: ownWords(tagTo, to, colour),
					terminal: to,
					device: `${machine.number} ${machine.name}`,
					...seen,
					other: `${at} ${name} ${from}`.trim(),
				},
			],
		};
	});
}

/** What the tag on an end says besides its terminal and the colour, which the flag says anyway: "X1-1 BN" on X1-1 is nothing new. */
function ownWords(tag: string, terminal: string, colour: string): string {
	const said = new Set(`${terminal} ${colour}`.toUpperCase().split(/\s+/));
	return tag
		.split(/\s+/)
		.filter((word) => !said.has(word.toUpperCase()))
		.join(" ");
}

/** The positions of a machine that have wires, with how many. */
export async function positionsWithWires(read: Reader, machineId: string): Promise<{ mark: string; name: string; wires: number }[]> {
	const rows = await read.position.findMany({
		where: { machineId, fittings: { some: { connections: { some: { state: { not: "removed" } } } } } },
		orderBy: { mark: "asc" },
		take: MOST_WIRES,
		select: {
			mark: true,
			name: true,
			fittings: { select: { _count: { select: { connections: { where: { state: { not: "removed" } } } } } } },
		},
	});
	return rows.map(({ mark, name, fittings }) => ({ mark, name, wires: fittings.reduce((sum, { _count }) => sum + _count.connections, 0) }));
}

/** Stock that flags can be made of, the roll that is made for it first. */
export async function flagStocks(read: Reader): Promise<Stock[]> {
	return [FLAG_ROLL, ...(await stocksToUse(read)).filter(isForFlags)];
}

type FlagsAsked = {
	readonly machine: number;
	readonly position: string | null;
	readonly stock?: string | undefined;
	readonly start: number;
};

/** The flags of both ends of each wire as a PDF, and what had to be shortened on which. */
export async function flagsOnPaper(
	read: Reader,
	{ machine, position, stock: stockId, start }: FlagsAsked,
	madeAt: Instant,
): Promise<Result<{ pdf: Buffer; pages: number; flags: number }>> {
	const found = await read.machine.findUnique({ where: { number: machine }, select: { id: true } });
	if (!found) return refuse("no-machine", "There is no machine of this number. Choose one from the list.");
	const [wires, stocks] = await Promise.all([wiresOf(read, found.id, position), flagStocks(read)]);
	if (wires.length === 0) return refuse("no-wires", "No wire is on record there. Say what is connected on the position's page first.");
	const stock = stocks.find(({ id }) => id === stockId) ?? FLAG_ROLL;
	const perSheet = labelsPerPage(stock);
	if (stock.kind === "sheet" && start > perSheet) {
		return refuse("start-beyond-sheet", `This sheet has ${perSheet} labels: start at one of them.`);
	}
	const fonts = labelFonts();
	const drawings: LabelDrawing[] = [];
	for (const end of wires.flatMap(({ ends }) => ends)) {
		const laid = layoutFlag(end, stock, fonts);
		if (!laid.ok) return laid;
		drawings.push(laid.value);
	}
	const pages = onStock(drawings, stock, { startAt: start, outlines: false, ...(await nudgeOf(read, stock.id)) });
	const pdf = await paperPdf(pages, `${drawings.length} flags of machine ${machine}`, madeAt);
	return ok({ pdf, pages: pages.length, flags: drawings.length });
}
