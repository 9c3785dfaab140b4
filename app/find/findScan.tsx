"use client";

import { useRouter } from "next/navigation";
import { type ScanAnswer, ScanField } from "@/app/ui/scanField";
import { readTag } from "@/lib/tags/readTag";

/** Goes to what a label hangs on, from its photo or its tag; any other word is looked for. */
export function FindScan({ label = "A tag, a name or a word" }: { readonly label?: string }) {
	const router = useRouter();
	const find = async (text: string): Promise<ScanAnswer> => {
		const tag = readTag(text);
		router.push(tag.ok ? `/t/${tag.value.tag}` : `/find?${new URLSearchParams({ q: text })}`);
		return { ok: true, say: tag.ok ? tag.value.tag : text };
	};
	return (
		<search>
			<ScanField label={label} hint="12-0147-K, drive motor, 4BA" deed="Find it" onScan={find} />
		</search>
	);
}
