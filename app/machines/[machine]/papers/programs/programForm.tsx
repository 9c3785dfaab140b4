"use client";

import { useRouter } from "next/navigation";
import { useRef, useState } from "react";
import { Button } from "@/app/ui/button";
import { clientId } from "@/app/ui/clientId";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow, Stack } from "@/app/ui/layouts";
import { Notice } from "@/app/ui/notice";
import { SelectField } from "@/app/ui/selectField";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import type { Choice } from "@/lib/captures/choices";
import { addDigitalItemSchema } from "@/lib/digital/schema";
import { addDigitalItemAction } from "../actions";
import { FileChooser } from "../fileChooser";
import { sendFile } from "../sendFile";

type Chosen = { readonly name: string; readonly state: "goes" | "kept" | "refused"; readonly part: number; readonly words: string };

/** The file goes first, since its digest is what the ledger keeps; the words follow. */
export function ProgramForm({
	machineId,
	machine,
	devices,
}: {
	readonly machineId: string;
	readonly machine: number;
	readonly devices: readonly Choice[];
}) {
	const router = useRouter();
	const [chosen, setChosen] = useState<Chosen | null>(null);
	const [kept, setKept] = useState<string | null>(null);
	const latest = useRef("");
	const form = useActionForm({
		schema: addDigitalItemSchema,
		defaults: { machineId, partId: "", name: "", version: "", fileSha: "", pins: "", loading: "" },
		action: addDigitalItemAction,
		onDone: (_, sent) => {
			setKept(sent.getValues("name"));
			setChosen(null);
			sent.reset();
			router.refresh();
		},
	});

	const take = async ([file]: readonly File[]) => {
		if (!file) return;
		const deed = clientId();
		latest.current = deed;
		const show = (state: Chosen["state"], part: number, words: string) => {
			if (latest.current === deed) setChosen({ name: file.name, state, part, words });
		};
		setKept(null);
		show("goes", 0, "");
		const answer = await sendFile(file, { machine, kind: "digital", deed }, (part) => show("goes", part, ""));
		if (latest.current !== deed) return; // another file was chosen meanwhile
		show(answer.ok ? "kept" : "refused", 1, answer.ok ? `SHA-256 ${answer.value.sha}` : answer.error.say);
		form.form.setValue("fileSha", answer.ok ? answer.value.sha : "", { shouldValidate: answer.ok });
		if (answer.ok && form.form.getValues("name") === "") form.form.setValue("name", file.name.replace(/\.[^.]+$/, ""));
	};

	const { error: fileError, ...fileSha } = form.field("fileSha");
	return (
		<form {...form.formProps}>
			<Stack>
				{kept === null ? null : <Notice means="original" title={`${kept} is kept.`} />}
				<FormProblem problem={form.problem} />
				<div className="flex flex-col gap-2">
					<FileChooser deed={chosen ? "Choose another file" : "Choose the file"} onPick={(files) => void take(files)} />
					<input type="hidden" {...fileSha} />
					{chosen ? (
						<p className="flex flex-wrap items-center gap-2 break-words" role={chosen.state === "refused" ? "alert" : "status"}>
							<strong>{chosen.name}</strong>
							{chosen.state === "goes" ? (
								<progress className="accent-(--verdigris)" value={chosen.part} max={1} aria-label={`${chosen.name}, sent`} />
							) : (
								<span className="break-all">{chosen.words}</span>
							)}
						</p>
					) : null}
					{fileError ? <p className="af-error">{fileError}</p> : null}
				</div>
				<FormRow>
					<SelectField label="The device that needs it" none="Choose" options={devices} {...form.field("partId")} />
					<TextField label="Name" {...form.field("name")} />
					<TextField label="Version" hint="As its maker writes it, or the day." {...form.field("version")} />
				</FormRow>
				<TextArea label="Pin map" optional hint="Which pin goes where, one a line." mono {...form.field("pins")} />
				<TextArea label="How it is loaded" hint="With what, in which order, and how to tell that it took." {...form.field("loading")} />
				<Button type="submit" kind="main" pending={form.pending}>
					Keep it with the device
				</Button>
			</Stack>
		</form>
	);
}
