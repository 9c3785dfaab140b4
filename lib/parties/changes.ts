import { ok, type Result } from "@/lib/core/result";
import type { Env } from "@/lib/ledger/env";
import { record } from "@/lib/ledger/record";
import { add, deed } from "@/lib/ledger/rows";
import type { NewParty } from "@/lib/parties/schema";

const KIND = { supplier: "a supplier", owner: "an owner", specialist: "a specialist" } as const;

/** Adds somebody outside the shop: their name and contact are withheld from what a dossier shows. Gives the id. */
export const addParty = (input: NewParty, env: Env): Promise<Result<string>> => {
	const id = env.newId();
	return record(env, async () =>
		ok(
			deed(
				null,
				"party.added",
				{ table: "Party", id },
				{ say: `Added ${KIND[input.kind]}.` },
				[add("Party", { id, kind: input.kind, name: input.name, contact: input.contact || null })],
				id,
			),
		),
	);
};
