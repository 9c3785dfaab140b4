"use client";

import { useState } from "react";
import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { Buttons } from "@/app/ui/layouts";
import { MoneyField } from "@/app/ui/moneyField";
import type { Option } from "@/app/ui/option";
import { SelectField } from "@/app/ui/selectField";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import type { CurrencyCode } from "@/lib/money/currency";
import { boughtSchema, changeWantedSchema, dropWantedSchema, wantAgainSchema, wantSchema } from "@/lib/wanted/schema";
import { boughtAction, changeWantedAction, dropWantedAction, wantAction, wantAgainAction } from "./actions";

type Shared = { readonly currency: CurrencyCode; readonly steps: readonly Option[] };

export function WantForm({ machineId, currency, steps, begun }: Shared & { readonly machineId: string; readonly begun: boolean }) {
	const form = useActionForm({
		schema: wantSchema(currency),
		defaults: { machineId, words: "", estimated: "", stepId: "", addedWhy: "" },
		action: wantAction,
		onDone: (_, { reset }) => reset(),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="What is wanted" {...form.field("words")} />
			<MoneyField label="Will cost" hint="Landed: with freight and tax" currency={currency} {...form.field("estimated")} />
			<SelectField label="For the step" none="no step in particular" options={steps} {...form.field("stepId")} />
			<TextField
				label="Why it was not in the plan"
				hint={begun ? "Work has begun: say what was found. Empty only if the plan had it." : "Empty while the plan is being made"}
				optional
				{...form.field("addedWhy")}
			/>
			<Button type="submit" pending={form.pending}>
				Put it on the list
			</Button>
		</form>
	);
}

type OpenWantedProps = Shared & {
	readonly lines: readonly Option[];
	readonly wanted: {
		readonly id: string;
		readonly entry: number;
		readonly words: string;
		readonly estimated: string;
		readonly stepId: string;
		readonly addedWhy: string;
	};
};

/** What becomes of something wanted: it was bought, it is not needed, or it was written down wrongly. */
export function OpenWanted({ wanted, lines, ...shared }: OpenWantedProps) {
	const [asking, setAsking] = useState<"bought" | "dropped" | "correct" | null>(null);
	const leave = () => setAsking(null);
	if (asking === "bought") return <BoughtForm wantedId={wanted.id} lines={lines} leave={leave} />;
	if (asking === "dropped") return <DropWantedForm wantedId={wanted.id} leave={leave} />;
	if (asking === "correct") return <ChangeWantedForm wanted={wanted} leave={leave} {...shared} />;
	return (
		<Buttons>
			{lines.length === 0 ? null : (
				<Button kind="quiet" onClick={() => setAsking("bought")} aria-label={`It is bought: ${wanted.words}`}>
					It is bought
				</Button>
			)}
			<Button kind="quiet" onClick={() => setAsking("dropped")} aria-label={`Not needed: ${wanted.words}`}>
				Not needed
			</Button>
			<Button kind="quiet" onClick={() => setAsking("correct")} aria-label={`Correct ${wanted.words}`}>
				Correct
			</Button>
		</Buttons>
	);
}

function ChangeWantedForm({ wanted, currency, steps, leave }: Omit<OpenWantedProps, "lines"> & { readonly leave: () => void }) {
	const { id, entry, ...said } = wanted;
	const form = useActionForm({
		schema: changeWantedSchema(currency),
		seen: entry,
		defaults: { wantedId: id, ...said },
		action: changeWantedAction,
		onDone: leave,
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="What is wanted" {...form.field("words")} />
			<MoneyField label="Will cost" hint="Landed: with freight and tax" currency={currency} {...form.field("estimated")} />
			<SelectField label="For the step" none="no step in particular" options={steps} {...form.field("stepId")} />
			<TextField label="Why it was not in the plan" optional {...form.field("addedWhy")} />
			<Buttons>
				<Button type="submit" pending={form.pending}>
					Keep the correction
				</Button>
				<Button kind="quiet" onClick={leave}>
					Leave it
				</Button>
			</Buttons>
		</form>
	);
}

type Leaving = { readonly wantedId: string; readonly leave: () => void };

function BoughtForm({ wantedId, lines, leave }: Leaving & { readonly lines: readonly Option[] }) {
	const form = useActionForm({ schema: boughtSchema, defaults: { wantedId, lineId: lines[0]?.value ?? "" }, action: boughtAction });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<SelectField label="Bought with" options={lines} {...form.field("lineId")} />
			<Buttons>
				<Button type="submit" pending={form.pending}>
					It was bought with this
				</Button>
				<Button kind="quiet" onClick={leave}>
					Leave it
				</Button>
			</Buttons>
		</form>
	);
}

function DropWantedForm({ wantedId, leave }: Leaving) {
	const form = useActionForm({ schema: dropWantedSchema, defaults: { wantedId, why: "" }, action: dropWantedAction });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="Why it is not needed" {...form.field("why")} />
			<Buttons>
				<Button type="submit" pending={form.pending}>
					Do not buy it
				</Button>
				<Button kind="quiet" onClick={leave}>
					Leave it
				</Button>
			</Buttons>
		</form>
	);
}

/** It is wanted after all: it was not bought, or is needed. */
export function WantAgainForm({ wantedId, words, label }: { readonly wantedId: string; readonly words: string; readonly label: string }) {
	const form = useActionForm({ schema: wantAgainSchema, defaults: { wantedId }, action: wantAgainAction });
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<Button type="submit" kind="quiet" pending={form.pending} aria-label={`${label}: ${words}`}>
				{label}
			</Button>
		</form>
	);
}
