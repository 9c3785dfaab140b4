"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { useWatch } from "react-hook-form";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { clientId } from "@/app/ui/clientId";
import { FormProblem } from "@/app/ui/formProblem";
import { Buttons } from "@/app/ui/layouts";
import { SelectField } from "@/app/ui/selectField";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { sayFaultSchema, sayNoteSchema } from "@/lib/machines/schema";
import { closeFaultAction, sayFaultAction, sayNoteAction } from "../actions";
import { EVIDENCE_OPTIONS } from "../evidenceOptions";

export function FaultForm({
	machineId,
	positions,
}: {
	readonly machineId: string;
	readonly positions: readonly { readonly id: string; readonly label: string }[];
}) {
	const form = useActionForm({
		schema: sayFaultSchema,
		defaults: { machineId, positionId: "", partId: "", kind: "seen", words: "", how: "" },
		action: sayFaultAction,
		onDone: (_, { reset }) => reset(),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="What is wrong" {...form.field("words")} />
			<SelectField
				label="Where"
				optional
				none="The machine as a whole"
				options={positions.map(({ id, label }) => ({ value: id, label }))}
				{...form.field("positionId")}
			/>
			<ChoiceField label="How it is known" options={EVIDENCE_OPTIONS} {...form.field("kind")} />
			<TextField label="How it shows" optional {...form.field("how")} />
			<Button type="submit" pending={form.pending}>
				Note the fault
			</Button>
		</form>
	);
}

/** What became of a fault; a slip is mended by pressing again. */
export function FaultState({ faultId, state }: { readonly faultId: string; readonly state: "open" | "mended" | "stays" }) {
	const router = useRouter();
	const [problem, setProblem] = useState<string | null>(null);
	const to = (next: "open" | "mended" | "stays") => async () => {
		const done = await closeFaultAction({ faultId, state: next, deed: clientId() });
		setProblem(done.ok ? null : done.error.say);
		router.refresh();
	};
	return (
		<Buttons>
			{state === "open" ? (
				<>
					<Button onClick={to("mended")}>Mended</Button>
					<Button kind="quiet" onClick={to("stays")}>
						Leave it so
					</Button>
				</>
			) : (
				<Button kind="quiet" onClick={to("open")}>
					Open again
				</Button>
			)}
			<span role="alert">{problem}</span>
		</Buttons>
	);
}

export function NoteForm({ machineId }: { readonly machineId: string }) {
	const form = useActionForm({
		schema: sayNoteSchema,
		defaults: { machineId, kind: "told", words: "", whoSaid: "" },
		action: sayNoteAction,
		onDone: (_, { reset }) => reset(),
	});
	const kind = useWatch({ control: form.form.control, name: "kind" });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextArea label="Note" hint="What the seller told, an odour, a find in the cash box." {...form.field("words")} />
			<ChoiceField label="How it is known" options={EVIDENCE_OPTIONS} {...form.field("kind")} />
			{kind === "told" ? <TextField label="Who said it" optional hint="Stays out of a dossier." {...form.field("whoSaid")} /> : null}
			<Button type="submit" pending={form.pending}>
				Write the note
			</Button>
		</form>
	);
}
