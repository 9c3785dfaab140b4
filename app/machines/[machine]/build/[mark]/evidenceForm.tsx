"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { useWatch } from "react-hook-form";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { clientId } from "@/app/ui/clientId";
import { FormProblem } from "@/app/ui/formProblem";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { sayEvidenceSchema } from "@/lib/parts/schema";
import { EVIDENCE_OPTIONS } from "../../../evidenceOptions";
import { sayEvidenceAction, withdrawEvidenceAction } from "../actions";

const CLAIMS = [
	{ value: "made", label: "It was in it when it was made", hint: "paint shadow, matching wear, plate, date code, old photo" },
	{ value: "came", label: "It was in it when it came to us", hint: "our own sight proves that, and no more" },
] as const;

/** Signs that the trade goes by, offered before the shop has words of its own. */
const SIGNS = [
	"untouched fixings",
	"paint shadow",
	"matching wear",
	"casting number",
	"plate",
	"date code",
	"photo",
	"catalogue",
	"invoice",
	"schematic",
];

/** How we know: of a part, or of a position where no part is. */
export function EvidenceForm({
	partId,
	positionId,
	used,
}: {
	readonly partId: string | null;
	readonly positionId: string;
	readonly used: readonly string[];
}) {
	const form = useActionForm({
		schema: sayEvidenceSchema,
		defaults: {
			partId: partId ?? "",
			positionId,
			faultId: "",
			kind: "seen",
			claim: "made",
			how: "",
			words: "",
			whoSaid: "",
			captureId: "",
		},
		action: sayEvidenceAction,
		onDone: (_, { reset }) => reset(),
	});
	const kind = useWatch({ control: form.form.control, name: "kind" });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<ChoiceField label="What it shows" options={[...CLAIMS]} {...form.field("claim")} />
			<ChoiceField label="How it is known" options={EVIDENCE_OPTIONS} {...form.field("kind")} />
			<TextField label="By what" optional suggest={[...new Set([...used, ...SIGNS])]} {...form.field("how")} />
			{kind === "told" ? <TextField label="Who said it" hint="Stays out of a dossier." {...form.field("whoSaid")} /> : null}
			<TextArea label="In words" optional rows={2} {...form.field("words")} />
			<Button type="submit" pending={form.pending}>
				Add the evidence
			</Button>
		</form>
	);
}

/** Takes a piece of evidence back; it stays readable as withdrawn. */
export function WithdrawEvidence({ evidenceId }: { readonly evidenceId: string }) {
	const router = useRouter();
	const [problem, setProblem] = useState<string | null>(null);
	return (
		<>
			<Button
				kind="quiet"
				onClick={async () => {
					const done = await withdrawEvidenceAction({ evidenceId, why: "", deed: clientId() });
					setProblem(done.ok ? null : done.error.say);
					router.refresh();
				}}
			>
				Withdraw
			</Button>
			<span role="alert">{problem}</span>
		</>
	);
}
