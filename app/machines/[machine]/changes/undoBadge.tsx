import { Badge } from "@/app/ui/badge";
import type { Means } from "@/app/ui/means";
import { UNDO_WORDS } from "@/lib/alterations/schema";

const MEANS: Readonly<Record<keyof typeof UNDO_WORDS, Means>> = { clean: "original", trace: "wait", never: "stop" };

/** How far an alteration can be undone, in words; what does not stand any more says that instead. */
export function UndoBadge({
	undo,
	state = "done",
}: {
	readonly undo: keyof typeof UNDO_WORDS;
	readonly state?: "done" | "undone" | "void";
}) {
	if (state === "void") return <Badge>entered in error</Badge>;
	if (state === "undone") return <Badge>{undo === "trace" ? "undone, left a trace" : "undone"}</Badge>;
	return <Badge means={MEANS[undo]}>{UNDO_WORDS[undo]}</Badge>;
}
