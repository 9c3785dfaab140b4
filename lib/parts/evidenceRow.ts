import { add, type RowChange } from "@/lib/ledger/rows";
import type { NewEvidence } from "@/lib/parts/schema";

/** A row of evidence, for whatever it is evidence of. Pure. */
export const evidenceRow = (
	id: string,
	machineId: string,
	said: NewEvidence,
	of: { readonly partId: string | null; readonly positionId: string | null; readonly faultId?: string | null },
): RowChange =>
	add("Evidence", {
		id,
		machineId,
		partId: of.partId,
		positionId: of.positionId,
		faultId: of.faultId ?? null,
		kind: said.kind,
		claim: said.claim,
		how: said.how,
		words: said.words,
		whoSaid: said.whoSaid || null,
		captureId: said.captureId,
		stands: "yes",
	});
