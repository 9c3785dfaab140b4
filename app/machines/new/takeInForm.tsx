"use client";

import { useRouter } from "next/navigation";
import { useMemo } from "react";
import { useWatch } from "react-hook-form";
import { Button } from "@/app/ui/button";
import { Card } from "@/app/ui/card";
import { FormProblem } from "@/app/ui/formProblem";
import { Stack } from "@/app/ui/layouts";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { takeInMachineSchema } from "@/lib/machines/schema";
import type { CurrencyCode } from "@/lib/money/currency";
import { takeInMachineAction } from "../actions";
import { MachineFields, type MachineInput, type PartyChoice, WATCHED } from "../machineFields";

export function TakeInForm({
	nextNumber,
	today,
	currency,
	parties,
	used,
}: {
	readonly nextNumber: number;
	readonly today: string;
	readonly currency: CurrencyCode;
	readonly parties: readonly PartyChoice[];
	readonly used: { readonly kinds: readonly string[]; readonly makers: readonly string[] };
}) {
	const router = useRouter();
	const schema = useMemo(() => takeInMachineSchema(currency), [currency]);
	const form = useActionForm({
		schema,
		defaults: {
			number: "",
			name: "",
			kind: "",
			maker: "",
			model: "",
			serial: "",
			made: "",
			ownership: "shop",
			carried: "",
			condition: "",
			hazards: "",
			sellerId: "",
			sellerName: "",
			ownerId: "",
			ownerName: "",
			price: "",
			carriage: "",
			receivedDay: today,
		} satisfies MachineInput,
		action: takeInMachineAction,
		onDone: (machine) => router.push(`/machines/${machine.number}/build`),
	});
	const watched = useWatch({ control: form.form.control, name: WATCHED });
	return (
		<form {...form.formProps}>
			<Stack>
				<FormProblem problem={form.problem} />
				<MachineFields
					field={form.field}
					watched={watched}
					onTakeMade={(edtf) => form.form.setValue("made", edtf, { shouldDirty: true, shouldValidate: form.form.formState.isSubmitted })}
					parties={parties}
					currency={currency}
					used={used}
				>
					<Card title="Its number">
						<TextField
							label="Number"
							optional
							inputMode="numeric"
							mono
							className="af-short"
							placeholder={String(nextNumber)}
							hint={`It stands on every tag of this machine. Left empty it is ${nextNumber}, the next free one.`}
							{...form.field("number")}
						/>
					</Card>
					<Button type="submit" kind="main" wide pending={form.pending}>
						Take in the machine
					</Button>
				</MachineFields>
			</Stack>
		</form>
	);
}
