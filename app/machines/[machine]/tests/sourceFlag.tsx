import { Badge } from "@/app/ui/badge";
import { flagOfSource } from "@/lib/tests/setTest";

/** Where a limit comes from, with a flag where it was recalled and not read, or is a habit of the trade. */
export function Source({ source }: { readonly source: string }) {
	if (source === "") return null;
	const flag = flagOfSource(source);
	const words = source.replace(/\s*\((from memory|common practice, no source)\)$/i, "");
	return (
		<>
			{words}
			{flag ? (
				<>
					{" "}
					<Badge means="wait">{flag}</Badge>
				</>
			) : null}
		</>
	);
}
