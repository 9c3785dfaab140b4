"use client";

import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { SureButton } from "@/app/ui/sureButton";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { sayFastSchema } from "@/lib/alterations/schema";
import { leaveSchema } from "@/lib/parts/schema";
import { finishReversalSchema, leaveOutSchema, madeSafeSchema, stopReversalSchema, takeUpSchema } from "@/lib/reversal/carryingOut/schema";
import { losePartAction } from "../../build/actions";
import { finishReversalAction, leaveOutAction, madeSafeAction, sayFastAction, stopReversalAction, takeUpAction } from "../actions";

/** Before hands go in: who proved it dead, with what, is kept with the time. */
export function MadeSafeForm({ reversalId }: { readonly reversalId: string }) {
	const form = useActionForm({ schema: madeSafeSchema, defaults: { reversalId, words: "" }, action: madeSafeAction });
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="Proved dead with" hint="The tester, and what was measured where" {...form.field("words")} />
			<Button type="submit" kind="main" wide pending={form.pending}>
				It is isolated and proved dead
			</Button>
		</form>
	);
}

/** A position stays as it is: by choice, or since nothing comes out of it. */
export function LeaveOutForm({
	reversalId,
	positionId,
	stuck,
}: {
	readonly reversalId: string;
	readonly positionId: string;
	readonly stuck: "yes" | "no";
}) {
	const form = useActionForm({ schema: leaveOutSchema, defaults: { reversalId, positionId, stuck, why: "" }, action: leaveOutAction });
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField
				label={stuck === "yes" ? "What holds it" : "Why it stays as it is"}
				hint={stuck === "yes" ? "seized, sheared, glued. The plan looks for another way." : undefined}
				{...form.field("why")}
			/>
			<Button type="submit" pending={form.pending}>
				{stuck === "yes" ? "It is stuck" : "Leave it as it is"}
			</Button>
		</form>
	);
}

/** What was left out is taken back after all. */
export function TakeUpForm({
	reversalId,
	positionId,
	name,
}: {
	readonly reversalId: string;
	readonly positionId: string;
	readonly name: string;
}) {
	const form = useActionForm({ schema: takeUpSchema, defaults: { reversalId, positionId }, action: takeUpAction });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<Button type="submit" kind="quiet" pending={form.pending}>
				Take {name} back after all
			</Button>
		</form>
	);
}

/** The bag was empty, or the thing is broken for good. */
export function NotThereForm({ partId, name, loses }: { readonly partId: string; readonly name: string; readonly loses: string | null }) {
	const form = useActionForm({ schema: leaveSchema, defaults: { partId, why: "" }, action: losePartAction });
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="Where it should have been, and who looked" {...form.field("why")} />
			{loses === null ? null : <p className="af-error">While it is lost: {loses}</p>}
			<SureButton
				type="submit"
				pending={form.pending}
				question={`Write off the ${name} as lost? When it turns up, its tag page brings it back.`}
				yes="It is lost"
			>
				It is not there
			</SureButton>
		</form>
	);
}

/** It was tried, and it cannot be undone. */
export function FastForm({ alterationId }: { readonly alterationId: string }) {
	const form = useActionForm({ schema: sayFastSchema, defaults: { alterationId, why: "" }, action: sayFastAction });
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="Why it cannot be undone" {...form.field("why")} />
			<SureButton
				type="submit"
				pending={form.pending}
				question="From now on the book says that this can never be undone."
				yes="It cannot be undone"
			>
				It cannot be undone
			</SureButton>
		</form>
	);
}

/** Nothing is left to do but to look. */
export function FinishForm({ reversalId }: { readonly reversalId: string }) {
	const form = useActionForm({ schema: finishReversalSchema, defaults: { reversalId, words: "" }, action: finishReversalAction });
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextArea label="What the checks showed" optional rows={3} {...form.field("words")} />
			<Button type="submit" kind="main" wide pending={form.pending}>
				The reversal is carried out
			</Button>
		</form>
	);
}

/** It ends where it stands. */
export function StopForm({ reversalId }: { readonly reversalId: string }) {
	const form = useActionForm({ schema: stopReversalSchema, defaults: { reversalId, words: "" }, action: stopReversalAction });
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="Why it stops here" hint="What is done stays done. Another one can be begun from here." {...form.field("words")} />
			<Button type="submit" pending={form.pending}>
				Stop here
			</Button>
		</form>
	);
}
