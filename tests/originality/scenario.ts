// The forty positions of machine 12 and the five places that its conversion made, as the acceptance scenario lists them:
// as found (origin and evidence) and after.

import type { EvidenceKind, Origin, PlaceKind } from "@/lib/generated/prisma/enums";
import type { OriginFacts, OriginPart, OriginPosition } from "@/lib/originality/facts";

/** mark | host mark | as found | evidence | after: the same part, or another of this origin, or empty. */
const TABLE = `
k01||original|seen|same
k02||original|seen|same
k03||original|seen|same
k04|k03|original|seen|same
k05|k04|modern|documented|empty
k06|k04|modern|seen|empty
k07|k04|original|documented|empty
k08|k04|original|seen|empty
k09|k03|original|seen|same
k10||original|seen|same
k11||original|seen|same
k12||modern|told|same
k13||original|seen|same
k14||original|seen|same
k15||original|seen|same
k16|k15|original|seen|same
k17||original|seen|same
k18||unknown||modern
k19||original|seen|same
k20||original|seen|same
k21||original|seen|reproduction
k22||original|seen|modern
k23||original|seen|same
k24||original|seen|reproduction
k25|k23|original|documented|modern
k26|k23|original|seen|same
k27||original|seen|same
k28||original|seen|same
k29|k28|unknown||modern
k30||unknown||modern
k31||original|seen|same
k32||original|seen|same
k33||original|seen|same
k34|k33|original|documented|same
k35|k33|modern|documented|period
k36||original|seen|same
k37||original|seen|same
k38||original|seen|same
k39||period|assumed|same
k40||original|seen|same
n1||none||modern
n2|n1|none||modern
n3|n1|none||modern
n4|k04|none||modern
n5|k25|none||modern`;

type Row = { readonly mark: string; readonly host: string; readonly found: string; readonly evidence: string; readonly after: string };

const rows: readonly Row[] = TABLE.trim()
	.split("\n")
	.map((line) => {
		const [mark = "", host = "", found = "", evidence = "", after = ""] = line.split("|");
		return { mark, host, found, evidence, after };
	});

const partNow = (row: Row): string | null =>
	row.after === "empty" ? null : row.after === "same" ? `${row.mark}-found` : `${row.mark}-new`;

/** Machine 12 as it was found (`when` "found") or after the work, with its originals in bags and the ballast disposed of. */
export function skerryLight(when: "found" | "after"): OriginFacts {
	const after = when === "after";
	const holds = new Map(rows.map((row) => [row.mark, after ? partNow(row) : row.found === "none" ? null : `${row.mark}-found`]));
	const positions = rows
		.filter((row) => after || row.found !== "none")
		.map(
			(row): OriginPosition => ({
				id: row.mark,
				mark: row.mark,
				name: row.mark,
				area: row.mark.startsWith("n") ? "Drive" : "Cabinet",
				kind: "seat",
				asFound: row.found !== "none",
				hostId: row.host === "" ? null : (holds.get(row.host) ?? null),
				found: row.found === "none" ? null : { state: "there", partId: `${row.mark}-found` },
				holds: holds.get(row.mark) ?? null,
				held: [
					...(row.found === "none" ? [] : [`${row.mark}-found`]),
					...(after && partNow(row) === `${row.mark}-new` ? [`${row.mark}-new`] : []),
				],
			}),
		);
	const parts = rows.flatMap((row): OriginPart[] => {
		const fitted = (id: string): PlaceKind => (holds.get(row.mark) === id ? "fitted" : row.mark === "k07" ? "scrapped" : "bag");
		const found = row.found === "none" ? [] : [aPart(`${row.mark}-found`, row.found as Origin, row.evidence, fitted(`${row.mark}-found`))];
		const isNew = after && partNow(row) === `${row.mark}-new`;
		return [...found, ...(isNew ? [aPart(`${row.mark}-new`, row.after as Origin, "", "fitted")] : [])];
	});
	return { positions, parts };
}

const aPart = (id: string, origin: Origin, evidence: string, place: PlaceKind): OriginPart => ({
	id,
	origin,
	place,
	own: true,
	evidence: evidence === "" ? [] : [evidence as EvidenceKind],
});
