"use client";

import { useRouter } from "next/navigation";
import { useEffect } from "react";
import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { FormRow } from "@/app/ui/layouts";
import { TextField } from "@/app/ui/textField";
import { useActionForm } from "@/app/ui/useActionForm";
import { openShopSchema } from "@/lib/shop/schema";
import { openShopAction } from "./actions";

export function OpenShopForm() {
	const router = useRouter();
	const form = useActionForm({
		schema: openShopSchema,
		defaults: { name: "", currency: "", timeZone: "", address: "", personName: "", initials: "", skills: "" },
		action: openShopAction,
		onDone: () => router.push("/"),
	});
	const { getValues, setValue } = form.form;
	useEffect(() => {
		// The browser knows its zone; a person rarely knows how theirs is spelled.
		if (!getValues("timeZone")) setValue("timeZone", Intl.DateTimeFormat().resolvedOptions().timeZone);
	}, [getValues, setValue]);
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<TextField label="Name of the shop" hint="Yours, if you work alone" {...form.field("name")} />
			<FormRow>
				<TextField label="Currency" hint="Three letters, like EUR. It stays." mono {...form.field("currency")} />
				<TextField label="Time zone" hint="Days on paper are days here." {...form.field("timeZone")} />
			</FormRow>
			<FormRow>
				<TextField label="Your name" {...form.field("personName")} />
				<TextField label="Your initials" hint="They stand on labels." {...form.field("initials")} />
			</FormRow>
			<TextField label="What you do" optional {...form.field("skills")} />
			<TextField
				label="Address on labels"
				optional
				mono
				hint="By which phones reach this computer, like shop.local:3200. It can be set later, under People."
				{...form.field("address")}
			/>
			<Button type="submit" kind="main" pending={form.pending}>
				Open the book
			</Button>
		</form>
	);
}
