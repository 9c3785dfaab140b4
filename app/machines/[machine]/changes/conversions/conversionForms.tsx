"use client";

import { useRouter } from "next/navigation";
import { useState } from "react";
import { Button } from "@/app/ui/button";
import { ChoiceField } from "@/app/ui/choiceField";
import { FormProblem } from "@/app/ui/formProblem";
import { Notice } from "@/app/ui/notice";
import type { Option } from "@/app/ui/option";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { nameConversionSchema, tickMembersSchema } from "@/lib/conversions/schema";
import { TickList } from "../../work/tickList";
import { joinConversionAction, nameConversionAction } from "../actions";
import { MEMBER_KINDS, type MemberKind } from "./memberKinds";

export function NameConversionForm({ machineId, conversionsHref }: { readonly machineId: string; readonly conversionsHref: string }) {
	const router = useRouter();
	const form = useActionForm({
		schema: nameConversionSchema,
		defaults: { machineId, name: "", words: "" },
		action: nameConversionAction,
		onDone: ({ number }) => router.push(`${conversionsHref}/${number}`),
	});
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="What it is called" hint="LED light, low-voltage drive" {...form.field("name")} />
			<ChoiceField
				label="Purpose"
				options={[
					{ value: "ordinary", label: "ordinary" },
					{ value: "safety", label: "safety", hint: "fuse, earth, flex: a reversal leaves it unless it is named" },
				]}
				{...form.field("purpose")}
			/>
			<TextArea label="What it is for" optional {...form.field("words")} />
			<Button type="submit" kind="main" className="sm:self-start" pending={form.pending}>
				Name it
			</Button>
		</form>
	);
}

export type Members = Readonly<Record<MemberKind, { readonly options: readonly Option[]; readonly chosen: readonly string[] }>>;
const KINDS = Object.keys(MEMBER_KINDS) as MemberKind[];

/** Ticks what belongs to a conversion; what is not ticked does not belong to it. */
export function MembersForm({ conversionId, members }: { readonly conversionId: string; readonly members: Members }) {
	const [done, setDone] = useState("");
	const form = useActionForm({
		schema: tickMembersSchema,
		defaults: {
			conversionId,
			fittingsIn: [...members.fittingsIn.chosen],
			fittingsOut: [...members.fittingsOut.chosen],
			connections: [...members.connections.chosen],
			alterations: [...members.alterations.chosen],
			steps: [...members.steps.chosen],
			tests: [...members.tests.chosen],
		},
		// Only what was ticked or unticked here is sent, so that what somebody else ticks meanwhile is kept.
		action: ({ deed, ...ticked }) => {
			const among = (pick: (kind: MemberKind) => readonly string[]) => Object.fromEntries(KINDS.map((kind) => [kind, pick(kind)]));
			return joinConversionAction({
				deed,
				conversionId,
				...among((kind) => (ticked[kind] ?? []).filter((id) => !members[kind].chosen.includes(id))),
				leave: among((kind) => members[kind].chosen.filter((id) => !ticked[kind]?.includes(id))),
			});
		},
		onDone: ({ joined, left }) =>
			setDone([joined > 0 ? `${joined} joined` : "", left > 0 ? `${left} left` : ""].filter(Boolean).join(", ")),
	});
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			{KINDS.map((kind) => {
				const { options } = members[kind];
				if (options.length === 0) return null;
				return (
					<TickList
						key={kind}
						label={MEMBER_KINDS[kind]}
						name={kind}
						options={options}
						chosen={form.form.watch(kind) ?? []}
						onChoose={(chosen) => form.form.setValue(kind, chosen, { shouldDirty: true })}
						error={form.errorOf(kind)}
					/>
				);
			})}
			{KINDS.every((kind) => members[kind].options.length === 0) ? (
				<p className="text-ink-2">The machine has no fittings, alterations, connections, steps or tests yet that could belong to it.</p>
			) : (
				<Button type="submit" kind="main" className="sm:self-start" pending={form.pending}>
					These belong to it
				</Button>
			)}
			{done ? <Notice means="original">{`Kept: ${done}.`}</Notice> : null}
		</form>
	);
}
