"use client";

import { useRouter } from "next/navigation";
import { tagPlacesAction } from "@/app/store/actions";
import { Button } from "@/app/ui/button";
import { FormProblem } from "@/app/ui/formProblem";
import { useActionForm } from "@/app/ui/useActionForm";
import { tagPlacesSchema } from "@/lib/store/schema";

/** Gives places their tags, so that their sheets have a code. */
export function TagShelvesForm({ locationIds }: { readonly locationIds: readonly string[] }) {
	const router = useRouter();
	const form = useActionForm({
		schema: tagPlacesSchema,
		defaults: { locationIds: [...locationIds] },
		action: tagPlacesAction,
		onDone: () => router.refresh(),
	});
	return (
		<form {...form.formProps}>
			<FormProblem problem={form.problem} />
			<Button type="submit" pending={form.pending}>
				{locationIds.length === 1 ? "Give it a tag" : `Give all ${locationIds.length} a tag`}
			</Button>
		</form>
	);
}
