"use client";

import { useState } from "react";
import { type BagChoice, Into, type IntoChoice, intoOf, unsaidIn } from "@/app/t/into";
import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { Notice } from "@/app/ui/notice";
import { typesOf, useActionForm } from "@/app/ui/useActionForm";
import type { movePartSchema } from "@/lib/bags/schema";
import { refuse } from "@/lib/core/result";
import { movePartAction } from "./actions";

type Choices = { readonly bags: readonly BagChoice[]; readonly places: readonly { readonly id: string; readonly path: string }[] };

/** Lays a loose part somewhere else. */
export function MovePartForm({
	part,
	machineNumber,
	bags,
	places,
}: Choices & { part: { id: string; name: string; isOriginal: boolean; material: string }; machineNumber: number }) {
	const [into, setInto] = useState<IntoChoice>({
		kind: bags.length > 0 ? "bag" : places.length > 0 ? "location" : "new-bag",
		role: part.isOriginal ? "keeping" : "holding",
		bagId: "",
		locationId: "",
		words: "",
		caution: "",
		tag: "",
	});
	const [done, setDone] = useState("");
	const form = useActionForm({
		schema: typesOf<typeof movePartSchema>(),
		defaults: { partId: part.id, to: { kind: "bench" } },
		action: async (typed) => {
			const unsaid = unsaidIn(into, null);
			return unsaid === null ? movePartAction({ ...typed, to: intoOf(into) }) : refuse("say-where", unsaid);
		},
		onDone: ({ words }) => setDone(`It lies ${words} now.`),
	});
	return (
		<form {...form.formProps} className="flex flex-col gap-2">
			<FormProblem problem={form.problem} />
			<Into
				choice={into}
				onChange={setInto}
				bags={bags}
				places={places}
				machineNumber={machineNumber}
				partName={part.name}
				isOriginal={part.isOriginal}
				material={part.material}
			/>
			<Button type="submit" kind="main" wide pending={form.pending}>
				Lay it there
			</Button>
			{done ? <Notice means="original">{done}</Notice> : null}
		</form>
	);
}
