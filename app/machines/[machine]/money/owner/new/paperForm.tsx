"use client";

import { useRouter } from "next/navigation";
import { type KeyboardEvent, useState } from "react";
import { useFieldArray, useWatch } from "react-hook-form";
import { Button } from "@/app/ui/button";
import { Card } from "@/app/ui/card";
import { ChoiceField } from "@/app/ui/choiceField";
import { DayField } from "@/app/ui/dayField";
import { FormProblem } from "@/app/ui/formProblem";
import { Columns, FormRow, Stack } from "@/app/ui/layouts";
import { MoneyField } from "@/app/ui/moneyField";
import { Notice } from "@/app/ui/notice";
import { SureButton } from "@/app/ui/sureButton";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import type { CurrencyCode } from "@/lib/money/currency";
import { decimalAmount, formatAmount, type MinorUnits, minor } from "@/lib/money/money";
import type { PaperKind } from "@/lib/owner/account";
import { parsePercent } from "@/lib/owner/percent";
import { type Basis, type Grouping, proposedLines } from "@/lib/owner/proposal";
import { givePaperSchema } from "@/lib/owner/schema";
import { givePaperAction } from "../actions";
import { SumList, sumLines } from "../totalsList";
import { typedTotals } from "./typedTotals";

const GIVING: Readonly<Record<PaperKind, { readonly title: string; readonly deed: string; readonly yes: string }>> = {
	quote: { title: "The quote", deed: "Give the quote", yes: "Give it" },
	more: { title: "What is asked", deed: "Ask the owner", yes: "Ask" },
	statement: { title: "The statement", deed: "Give the statement", yes: "Give it" },
};

/** A line as the form holds it. */
type FormLine = { words: string; net: string; tax: string; about: string };

const linesOf = (basis: Basis, layout: Parameters<typeof proposedLines>[1], tax: string, currency: CurrencyCode): FormLine[] => {
	const lines = proposedLines(basis, layout).map(({ words, net, about }) => ({
		words: words.slice(0, 200),
		net: net === null ? "" : decimalAmount(net, currency),
		tax,
		about: about ?? "",
	}));
	return lines.length > 0 ? lines : [{ words: "", net: "", tax, about: "" }];
};

export function PaperForm({
	machineId,
	kind,
	currency,
	basis,
	here,
	agreedNet,
	limit,
	paid,
	takesIn,
	untilLabel,
	defaults,
}: {
	readonly machineId: string;
	readonly kind: PaperKind;
	readonly currency: CurrencyCode;
	readonly basis: Basis;
	/** Where the owner's pages begin. */
	readonly here: string;
	/** What was agreed so far, before tax; null when nothing was. */
	readonly agreedNet: MinorUnits | null;
	/** The limit that is in force. */
	readonly limit: MinorUnits | null;
	readonly paid: MinorUnits;
	/** The agreed papers that the proposed lines take in. */
	readonly takesIn: readonly string[];
	readonly untilLabel: string;
	readonly defaults: {
		readonly day: string;
		readonly untilDay: string;
		readonly terms: string;
		readonly handling: string;
		readonly tax: string;
	};
}) {
	const router = useRouter();
	const [by, setBy] = useState<Grouping>("kind");
	const [tax, setTax] = useState(defaults.tax);
	const [contingency, setContingency] = useState("");
	const [contingencyWrong, setContingencyWrong] = useState("");
	const { tax: _, ...held } = defaults;
	const form = useActionForm({
		schema: givePaperSchema(currency),
		defaults: {
			machineId,
			kind,
			why: "",
			limit: "",
			takesIn: [...takesIn],
			...held,
			lines: linesOf(basis, { by: "kind", handling: defaults.handling, contingency: "" }, defaults.tax, currency),
		},
		action: givePaperAction,
		onDone: ({ paperId }) => router.push(`${here}/${paperId}`),
	});
	const { control, setValue, setError, clearErrors, getValues, setFocus } = form.form;
	const lines = useFieldArray({ control, name: "lines" });
	const typed = useWatch({ control });
	const totals = typedTotals(typed.lines ?? [], currency);
	const empty = (): FormLine => ({ words: "", net: "", tax, about: "" });

	// The lines as the book has them, with the percentages as they stand now; what was changed by hand in them is gone.
	const layOut = (grouping: Grouping = by) => {
		const [handled, extra] = [parsePercent(getValues("handling") ?? ""), parsePercent(contingency)];
		setContingencyWrong(extra.ok ? "" : extra.error.say);
		if (handled.ok) clearErrors("handling");
		else setError("handling", { message: handled.error.say });
		if (handled.ok && extra.ok)
			lines.replace(linesOf(basis, { by: grouping, handling: handled.value, contingency: extra.value }, tax, currency));
	};
	const taxAll = (text: string) => {
		setTax(text);
		for (const index of lines.fields.keys()) setValue(`lines.${index}.tax`, text, { shouldDirty: true });
	};
	// Enter in a line goes on with the next one, and does not give the paper by mistake.
	const nextLine = (index: number) => (event: KeyboardEvent) => {
		if (event.key !== "Enter") return;
		event.preventDefault();
		if (index === lines.fields.length - 1) lines.append(empty());
		else setFocus(`lines.${index + 1}.words`);
	};
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<Columns>
				<Stack>
					{kind === "more" ? (
						<Card title="What was found">
							<TextArea label="What was found, and why it has to be done" {...form.field("why")} />
						</Card>
					) : null}
					<Card title="Lines" aside={`${currency}, before tax`}>
						{lines.fields.map((line, index) => (
							<fieldset key={line.id} className="af-line">
								<legend className="af-label">Line {index + 1}</legend>
								<div className="grid grid-cols-[minmax(0,3fr)_minmax(0,2fr)] gap-x-4 sm:grid-cols-[minmax(0,1fr)_11rem_8rem_auto]">
									<div className="col-span-2 sm:col-span-1">
										<TextField label="What for" onKeyDown={nextLine(index)} {...form.field(`lines.${index}.words`)} />
									</div>
									<MoneyField label="Before tax" currency={currency} onKeyDown={nextLine(index)} {...form.field(`lines.${index}.net`)} />
									<TextField label="Tax, %" inputMode="decimal" onKeyDown={nextLine(index)} {...form.field(`lines.${index}.tax`)} />
									{lines.fields.length > 1 ? (
										<div className="col-span-2 sm:col-span-1 sm:pt-6">
											<Button kind="quiet" onClick={() => lines.remove(index)}>
												Leave out<span className="sr-only"> line {index + 1}</span>
											</Button>
										</div>
									) : null}
								</div>
							</fieldset>
						))}
						<Button onClick={() => lines.append(empty())}>Add a line</Button>
						<p className="af-hint mt-3">
							A discount is a line below nought, like -50.00. Where the tax is left empty, none is charged on the line.
						</p>
					</Card>
				</Stack>
				<Stack>
					<Card title="Proposed from the book">
						<TextField
							label="Tax on all lines, %"
							hint="Changes every line. Empty: the shop charges none."
							optional
							name="taxOfAll"
							inputMode="decimal"
							className="af-short"
							value={tax}
							onChange={(event) => taxAll(event.currentTarget.value)}
						/>
						{kind === "more" ? null : (
							<ChoiceField
								label="Labour, a line for each"
								name="by"
								defaultValue={by}
								onChange={(event) => setBy(event.currentTarget.value === "person" ? "person" : "kind")}
								options={[
									{ value: "kind", label: "kind of step" },
									{ value: "person", label: "person" },
								]}
							/>
						)}
						<TextField
							label="Handling on parts, %"
							hint="On what they cost landed"
							optional
							inputMode="decimal"
							className="af-short"
							{...form.field("handling")}
						/>
						{kind === "statement" ? null : (
							<TextField
								label="Contingency, %"
								hint="A line of its own, on all the others"
								optional
								name="contingency"
								inputMode="decimal"
								className="af-short"
								value={contingency}
								error={contingencyWrong || undefined}
								onChange={(event) => setContingency(event.currentTarget.value)}
							/>
						)}
						<Button onClick={() => layOut()}>Lay the lines out anew</Button>
						<p className="af-hint mt-3">What you changed in the lines is then replaced.</p>
					</Card>
					<Card title={GIVING[kind].title}>
						<FormRow>
							<DayField label="Given on" {...form.field("day")} />
							<DayField label={untilLabel} optional {...form.field("untilDay")} />
						</FormRow>
						{kind === "statement" ? null : (
							<MoneyField
								label={kind === "more" ? "New limit, before tax" : "Limit, before tax"}
								hint={
									limit === null
										? "The owner is asked before the work comes to more"
										: `It is ${formatAmount(limit, currency)} now. Empty: it stays so`
								}
								optional
								currency={currency}
								{...form.field("limit")}
							/>
						)}
						<TextArea label="Terms, in plain words" optional {...form.field("terms")} />
						<div aria-live="polite">
							{totals ? (
								<>
									<SumList
										caption="What it comes to"
										lines={sumLines(totals, currency)}
										total={{ what: "In all", amount: totals.total }}
										currency={currency}
									/>
									{kind === "statement" ? <AgainstAgreed net={totals.net} agreed={agreedNet} currency={currency} /> : null}
									{kind === "statement" ? (
										<p className="mt-3">
											Less {formatAmount(paid, currency)} paid: <strong>{formatAmount(minor(totals.total - paid), currency)}</strong>{" "}
											{currency} due.
										</p>
									) : null}
								</>
							) : (
								<p className="text-ink-2">The sum stands here once every line has an amount that can be read.</p>
							)}
						</div>
						<div className="mt-4">
							<SureButton
								type="submit"
								kind="main"
								pending={form.pending}
								question={`${GIVING[kind].deed}? What it says can then not be changed; it can be taken back until it is answered.`}
								yes={GIVING[kind].yes}
							>
								{GIVING[kind].deed}
							</SureButton>
						</div>
					</Card>
				</Stack>
			</Columns>
		</form>
	);
}

/** More than was agreed is said before the statement is given, not after. */
function AgainstAgreed({ net, agreed, currency }: { net: MinorUnits; agreed: MinorUnits | null; currency: CurrencyCode }) {
	if (agreed === null)
		return (
			<div className="mt-3">
				<Notice means="wait" live="off">
					The owner has agreed to nothing: there is no paper to hold this statement against.
				</Notice>
			</div>
		);
	const more = minor(net - agreed);
	if (more > 0)
		return (
			<div className="mt-3">
				<Notice means="stop" live="off" title="More than was agreed">
					{formatAmount(more, currency)} {currency} more before tax than the {formatAmount(agreed, currency)} that were agreed. Speak with
					the owner before you give it.
				</Notice>
			</div>
		);
	return (
		<p className="mt-3">
			Agreed were {formatAmount(agreed, currency)} before tax{more < 0 ? `: this is ${formatAmount(minor(-more), currency)} less` : ""}.
		</p>
	);
}
