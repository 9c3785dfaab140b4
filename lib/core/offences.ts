// What is wrong with input from outside, field by field, as one refusal. Pure.

import { fieldPath, type Offence } from "@/lib/core/fieldPath";
import type { Refusal } from "@/lib/core/result";

/** Refused input: `paths` names each offending field (`positions[3].host`), `fields` says what is wrong with it. */
export type FieldsRefusal = Refusal & { readonly paths: readonly string[]; readonly fields: Readonly<Record<string, string>> };

/** Sums the offences up, each field once. `lead` begins the sentence: "The problem cannot be planned". Requires at least one. */
export function fieldsRefused(code: string, lead: string, offences: readonly Offence[]): FieldsRefusal {
	const said = new Map<string, string>();
	for (const { path, say } of offences) {
		const at = fieldPath(path);
		const before = said.get(at);
		said.set(at, before === undefined || before === say ? say : `${before}; ${say}`);
	}
	const paths = [...said.keys()];
	const count = paths.length === 1 ? "one field is" : `${paths.length} fields are`;
	const first = paths[0] ?? "";
	return {
		code,
		say: `${lead} until ${count} put right, starting with ${first}: ${said.get(first) ?? ""}.`,
		paths,
		fields: Object.fromEntries(said),
		facts: { paths },
	};
}

/** A field as a schema names it. */
export const plainPath = (path: readonly PropertyKey[]): Offence["path"] =>
	path.map((step) => (typeof step === "symbol" ? String(step) : step));
