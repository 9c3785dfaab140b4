"use client";

import { useRouter } from "next/navigation";
import { Button } from "@/app/ui/button";
import { CheckField } from "@/app/ui/checkField";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { Notice } from "@/app/ui/notice";
import type { Option } from "@/app/ui/option";
import { SelectField } from "@/app/ui/selectField";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { limitInWords } from "@/lib/tests/limits";
import { LIMIT_KINDS, LIMITS_BY_FIGURE, type LimitKind, setTestSchema, sourceWithBacking, usualLimit } from "@/lib/tests/setTest";
import { USUAL_LIMITS } from "@/lib/tests/usualLimits";
import { setTestAction } from "./actions";

const UNITS = ["\u03a9", "M\u03a9", "V", "A", "mA", "rpm", "s", "N m", "mm", "\u00b0C"];

/** Sets a test with its limit before anything is measured. */
export function SetTestForm({
	machineId,
	testsHref,
	positions,
	parts,
	steps,
	conversions,
}: {
	readonly machineId: string;
	readonly testsHref: string;
	readonly positions: readonly Option[];
	readonly parts: readonly Option[];
	readonly steps: readonly Option[];
	readonly conversions: readonly Option[];
}) {
	const router = useRouter();
	const form = useActionForm({
		schema: setTestSchema,
		defaults: {
			machineId,
			name: "",
			usual: "",
			figure: "",
			kind: "at most",
			value: "",
			low: "",
			high: "",
			tolerance: "",
			words: "",
			good: "",
			tries: "",
			unit: "",
			limitSource: "",
			fromMemory: false,
			positionId: "",
			partId: "",
			stepId: "",
			conversionId: "",
		},
		action: setTestAction,
		onDone: ({ number }) => router.push(`${testsHref}/${number}`),
	});
	const { watch, setValue, getValues } = form.form;
	const usual = watch("usual") ?? "";
	const figure = watch("figure") ?? "";
	const byFigure = LIMITS_BY_FIGURE[usual];
	const limit = usual === "" ? null : usualLimit(usual, figure);
	const chooses = form.field("usual", {
		onChange: () => {
			const chosen = USUAL_LIMITS.find(({ id }) => id === getValues("usual"));
			const named = chosen?.test ?? LIMITS_BY_FIGURE[getValues("usual") ?? ""]?.label;
			const names = [...USUAL_LIMITS.map(({ test }) => test), ...Object.values(LIMITS_BY_FIGURE).map(({ label }) => label), ""];
			// A name that a person typed is not written over.
			if (named && names.includes(getValues("name"))) setValue("name", named);
		},
	});
	return (
		<form className="af-form" {...form.formProps}>
			<FormProblem problem={form.problem} />
			<SelectField
				label="Limit"
				none="a limit of our own"
				groups={[
					{ label: "From one figure", options: Object.entries(LIMITS_BY_FIGURE).map(([value, { label }]) => ({ value, label })) },
					{
						label: "Usual limits",
						options: USUAL_LIMITS.map(({ id, test, limit: one, backing }) => ({
							value: id,
							label: `${test}: ${limitInWords(one)} (${backing})`,
						})),
					},
				]}
				{...chooses}
			/>
			{byFigure ? (
				<TextField label={`${byFigure.asks}, ${byFigure.unit}`} inputMode="decimal" className="af-short" {...form.field("figure")} />
			) : null}
			{limit?.ok ? (
				<div className="mb-3">
					<Notice live="off" title={limitInWords(limit.value.limit)}>
						<p>{sourceWithBacking(limit.value)}</p>
						{limit.value.note ? <p className="af-sub">{limit.value.note}</p> : null}
					</Notice>
				</div>
			) : null}
			<TextField label="What is tested" hint="protective earth, plug pin to coin door" {...form.field("name")} />
			{usual === "" ? <OwnLimit form={form} kind={watch("kind") ?? "at most"} /> : null}
			<FormRow>
				<SelectField label="Position" optional none="none" options={positions} {...form.field("positionId")} />
				<SelectField label="Part" optional none="none" options={parts} {...form.field("partId")} />
				<SelectField label="Step" optional none="none" options={steps} {...form.field("stepId")} />
				<SelectField label="Conversion" optional none="none" options={conversions} {...form.field("conversionId")} />
			</FormRow>
			<Button type="submit" kind="main" className="sm:self-start" pending={form.pending}>
				Set the test
			</Button>
		</form>
	);
}

type SetTest = ReturnType<typeof useActionForm<import("zod").input<typeof setTestSchema>, unknown, unknown>>;

/** The shop's own limit: its kind, its figures, and where it comes from. */
function OwnLimit({ form, kind }: { readonly form: SetTest; readonly kind: LimitKind }) {
	const number = { inputMode: "decimal" as const, className: "af-short" };
	const unit = <TextField label="Unit" suggest={UNITS} className="af-short" optional {...form.field("unit")} />;
	return (
		<>
			<SelectField
				label="Kind of limit"
				options={(Object.keys(LIMIT_KINDS) as LimitKind[]).map((value) => ({ value, label: LIMIT_KINDS[value] }))}
				{...form.field("kind")}
			/>
			<FormRow>
				{kind === "at most" || kind === "at least" ? (
					<TextField label={kind === "at most" ? "At most" : "At least"} {...number} {...form.field("value")} />
				) : null}
				{kind === "rise" ? <TextField label="At most, K above the air around" {...number} {...form.field("value")} /> : null}
				{kind === "between" ? (
					<>
						<TextField label="From" {...number} {...form.field("low")} />
						<TextField label="To" {...number} {...form.field("high")} />
					</>
				) : null}
				{kind === "nominal" ? (
					<>
						<TextField label="Value" {...number} {...form.field("value")} />
						<TextField label="Give or take" {...number} {...form.field("tolerance")} />
					</>
				) : null}
				{kind === "words" ? (
					<TextField label="Words that keep it" hint="right; or several: free or no tight spot" {...form.field("words")} />
				) : null}
				{kind === "count" ? (
					<>
						<TextField label="Good ones, at least" {...number} inputMode="numeric" {...form.field("good")} />
						<TextField label="Of so many tries" {...number} inputMode="numeric" {...form.field("tries")} />
					</>
				) : null}
				{kind === "at most" || kind === "at least" || kind === "between" || kind === "nominal" || kind === "none" ? unit : null}
			</FormRow>
			{kind === "none" ? null : (
				<>
					<TextField
						label="Where the limit comes from"
						hint="A standard and its date, the maker, or: own limit"
						suggest={["own limit", "the machine's own drawing", "the maker"]}
						{...form.field("limitSource")}
					/>
					<CheckField
						label="Recalled, not read"
						hint="It is then marked as from memory, here and on paper."
						{...form.field("fromMemory")}
					/>
				</>
			)}
		</>
	);
}
