"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { Stack } from "@/app/ui/layouts";
import { Notice } from "@/app/ui/notice";
import { SelectField } from "@/app/ui/selectField";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import type { Choice } from "@/lib/captures/choices";
import { sayWordsSchema, withdrawCaptureSchema } from "@/lib/captures/schema";
import { sayWordsAction, withdrawCaptureAction } from "../../actions";

type Capture = {
	readonly captureId: string;
	readonly words: string;
	readonly positionId: string;
	readonly partId: string;
	readonly bagId: string;
	readonly stepId: string;
};
type Choices = {
	readonly positions: readonly Choice[];
	readonly parts: readonly Choice[];
	readonly bags: readonly Choice[];
	readonly steps: readonly Choice[];
};

export function WordsForm({ capture, choices }: { readonly capture: Capture; readonly choices: Choices }) {
	const router = useRouter();
	const [kept, setKept] = useState(false);
	const form = useActionForm({
		schema: sayWordsSchema,
		defaults: capture,
		action: sayWordsAction,
		onDone: () => {
			setKept(true);
			router.refresh();
		},
	});
	return (
		<form {...form.formProps}>
			<Stack>
				{kept ? <Notice means="original" title="The words are kept." /> : null}
				<FormProblem problem={form.problem} />
				<TextArea label="Words" hint="What a stranger needs to know to understand it." {...form.field("words")} />
				<SelectField label="Part" optional none="no part" options={choices.parts} {...form.field("partId")} />
				<SelectField label="Position" optional none="no position" options={choices.positions} {...form.field("positionId")} />
				{choices.bags.length > 0 ? (
					<SelectField label="Bag" optional none="no bag" options={choices.bags} {...form.field("bagId")} />
				) : null}
				{choices.steps.length > 0 ? (
					<SelectField label="Step" optional none="no step" options={choices.steps} {...form.field("stepId")} />
				) : null}
				<Button type="submit" kind="main" pending={form.pending}>
					Keep the words
				</Button>
			</Stack>
		</form>
	);
}

export function WithdrawForm({ captureId }: { readonly captureId: string }) {
	const router = useRouter();
	const form = useActionForm({
		schema: withdrawCaptureSchema,
		defaults: { captureId, why: "" },
		action: withdrawCaptureAction,
		onDone: () => router.refresh(),
	});
	return (
		<form {...form.formProps}>
			<Stack>
				<FormProblem problem={form.problem} />
				<TextField label="Why" hint="It is kept in the book with this reason; only the lists leave it out." {...form.field("why")} />
				<Button type="submit" kind="danger" pending={form.pending}>
					Withdraw it
				</Button>
			</Stack>
		</form>
	);
}
