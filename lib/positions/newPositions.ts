// A list of positions as the rows it comes to. Pure: what stands is read before, ids are handed in.
//
// Before the stamp every item is part of the as found record: it gets a finding, and where something is there its part,
// fitted. After the stamp an item was either there all along (later knowledge, a finding after the stamp, fitted since
// then), or is a place that the shop's work makes: empty at first, and as found there was no such place.

import { ok, type Refusal, type Result, refuse } from "@/lib/core/result";
import { add, type RowChange } from "@/lib/ledger/rows";
import { evidenceRow } from "@/lib/parts/evidenceRow";
import { fittedAt, newPart } from "@/lib/parts/newPart";
import { type GivenTag, nextPartNumbers } from "@/lib/parts/numbering";
import type { PartDetails } from "@/lib/parts/schema";
import type { NewPosition } from "@/lib/positions/schema";
import { timeColumns } from "@/lib/positions/threePoints";

/** What stands on the machine already. */
export type Standing = {
	readonly machine: { readonly id: string; readonly number: number; readonly asFoundAt: string | null };
	readonly positions: readonly {
		readonly mark: string;
		readonly name: string;
		readonly area: string;
		readonly rank: number;
		readonly partId: string | null;
	}[];
	readonly tags: readonly GivenTag[];
	/** Loose parts that items name as their host. */
	readonly looseHosts: readonly string[];
};

export type AddedPosition = { readonly mark: string; readonly id: string; readonly partId: string | null; readonly tag: string | null };
export type NewPositions = { readonly rows: readonly RowChange[]; readonly added: readonly AddedPosition[] };

type Host = { readonly name: string; readonly area: string; readonly partId: string | null; readonly why: string };

/** The rows of new positions, or the first item that cannot be, by its number in the list (`positions.3`). */
export function newPositions(
	standing: Standing,
	items: readonly NewPosition[],
	given: { readonly wasThere: boolean; readonly at: string; readonly newId: () => string },
): Result<NewPositions> {
	const { machine } = standing;
	const stamped = machine.asFoundAt !== null;
	const asFound = !stamped || given.wasThere;
	const marked = withMarks(standing, items);
	if (!marked.ok) return marked;
	const marks = marked.value;
	const hosting = new Set(items.flatMap((item) => item.hostMark ?? []));
	const holds = items.map((item, index) => asFound && holdsPart(item, hosting.has(marks[index] ?? "")));
	const numbers = nextPartNumbers(machine.number, standing.tags, holds.filter(Boolean).length);
	if (!numbers.ok) return numbers;
	const left = [...numbers.value];

	const hosts = new Map<string, Host>(
		standing.positions.map((position) => [
			position.mark,
			{ name: position.name, area: position.area, partId: position.partId, why: "nothing is fitted there now" },
		]),
	);
	let rank = Math.max(0, ...standing.positions.map((position) => position.rank));
	// Position by position, hosts before what sits on them: each row then refers only to rows that stand. Where it did not,
	// SQLite would look through every table for what waits for the new row, which grows with the shop.
	const rows: RowChange[] = [];
	const added: AddedPosition[] = [];

	for (const [index, item] of items.entries()) {
		const wrong = (code: string, say: string, field = "name"): { ok: false; error: Refusal } =>
			refuse(code, say, { fields: { [`positions.${index}.${field}`]: say }, facts: { index } });
		const mark = marks[index] ?? "";
		const host = item.hostMark === null ? null : (hosts.get(item.hostMark) ?? null);
		if (item.hostMark !== null && host === null) {
			return wrong(
				"no-such-host",
				`${item.name} sits on ${item.hostMark}, which is neither on the machine nor earlier in the list.`,
				"hostMark",
			);
		}
		if (host !== null && host.partId === null) {
			return wrong(
				"host-is-empty",
				`${item.name} cannot sit on ${host.name}: ${host.why}. Put it beside it, or on the machine.`,
				"hostMark",
			);
		}
		if (item.hostPartId !== null && !standing.looseHosts.includes(item.hostPartId)) {
			return wrong("no-such-host", `${item.name} sits on a part that is not in the book.`, "hostPartId");
		}
		if (!asFound && item.part !== null) {
			return wrong(
				"made-places-are-empty",
				`${item.name} is a place that the shop's work makes: it is empty at first. Add the part, then put it in.`,
				"part",
			);
		}
		if (item.kind === "place" && item.part !== null) {
			return wrong(
				"place-holds-no-part",
				`${item.name} is a place with no part of its own. Make it a seat, or leave the part out.`,
				"kind",
			);
		}
		const id = given.newId();
		const area = item.area ?? host?.area ?? "";
		const partId = holds[index] ? given.newId() : null;
		const lot = item.part?.count ?? 1;
		rank += 1;
		rows.push(
			add("Position", {
				id,
				machineId: machine.id,
				mark,
				name: partId === null && lot > 1 ? `${item.name}, lot of ${lot}` : item.name,
				area,
				kind: item.kind,
				hostId: host?.partId ?? item.hostPartId,
				rank,
				sides: JSON.stringify(item.sides),
				asFound: asFound ? "yes" : "no",
				mirrorId: null,
				...timeColumns(item.out, item.in),
				note: item.note,
			}),
		);
		let tag: string | null = null;
		if (partId !== null) {
			// What was there all along has been fitted since the as found record was closed, at the latest.
			const since = machine.asFoundAt ?? given.at;
			const made = newPart({
				id: partId,
				machine,
				number: left.shift() ?? 0,
				details: { ...(item.part ?? NOTHING_SAID), name: item.part?.name || item.name },
				place: fittedAt(id),
				at: since,
			});
			tag = made.tag;
			rows.push(...made.rows);
			rows.push(newFitting({ id: given.newId(), machineId: machine.id, partId, positionId: id, fromAt: since, wayRound: item.wayRound }));
		}
		if (asFound && item.kind === "seat") {
			rows.push(
				add("Finding", {
					id: given.newId(),
					machineId: machine.id,
					positionId: id,
					at: given.at,
					state: item.finding,
					partId,
					words: item.foundWords,
				}),
			);
		}
		for (const said of item.evidence) rows.push(evidenceRow(given.newId(), machine.id, said, { partId, positionId: id }));
		hosts.set(mark, { name: item.name, area, partId, why: whyEmpty(item, asFound) });
		added.push({ mark, id, partId, tag });
	}
	return ok({ rows, added });
}

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

/** A seat that is there or wrong holds its part. One not seen yet holds a presumed part if something is known to sit on it. */
function holdsPart(item: NewPosition, hosts: boolean): boolean {
	if (item.kind === "place") return false;
	return item.finding === "there" || item.finding === "wrong" || (item.finding === "unseen" && (hosts || item.part !== null));
}

function whyEmpty(item: NewPosition, asFound: boolean): string {
	if (item.kind === "place") return "it is a place with no part of its own";
	return asFound ? "it is missing" : "nothing is fitted there yet";
}

/** An open fitting: the part has been there since `fromAt`. */
export const newFitting = (fitting: {
	readonly id: string;
	readonly machineId: string;
	readonly partId: string;
	readonly positionId: string;
	readonly fromAt: string;
	readonly wayRound: string;
}): RowChange =>
	add("Fitting", { ...fitting, untilAt: null, fromStepId: null, untilStepId: null, conversionId: null, outConversionId: null });

/** Each item's mark: its own, or the next free p01, p02 ... */
function withMarks(standing: Standing, items: readonly NewPosition[]): Result<string[]> {
	const taken = new Set(standing.positions.map((position) => position.mark));
	for (const [index, { mark, name }] of items.entries()) {
		if (mark === null) continue;
		if (taken.has(mark)) {
			const say = `The mark ${mark} of ${name} is taken. Give it another, or none.`;
			return refuse("mark-taken", say, { fields: { [`positions.${index}.mark`]: say }, facts: { index } });
		}
		taken.add(mark);
	}
	let next = 1;
	return ok(
		items.map(({ mark }) => {
			if (mark !== null) return mark;
			while (taken.has(markNumbered(next))) next += 1;
			const free = markNumbered(next);
			taken.add(free);
			return free;
		}),
	);
}

const markNumbered = (number: number): string => `p${String(number).padStart(2, "0")}`;
