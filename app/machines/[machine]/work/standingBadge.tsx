import { Badge } from "@/app/ui/badge";
import type { Means } from "@/app/ui/means";
import type { Instant } from "@/lib/core/instants";
import { hindranceWords, STANDING_WORDS, type Standing } from "@/lib/steps/progress";
import type { Hindrance } from "@/lib/steps/rules";

const MEANS: Readonly<Record<Standing, Means>> = {
	running: "original",
	begun: "plain",
	ready: "original",
	waits: "wait",
	needs: "plain",
	done: "plain",
	dropped: "plain",
};

/** Where a step stands, in words: "clock runs", "filler sets until 15:40", "needs step 12". */
export function StandingBadge({
	standing,
	hindered,
	soon,
}: {
	readonly standing: Standing;
	readonly hindered: readonly Hindrance[];
	readonly soon: (at: Instant) => string;
}) {
	const words = standing === "waits" || standing === "needs" ? hindranceWords(hindered, soon) : [STANDING_WORDS[standing]];
	if (standing === "done" || standing === "dropped" || standing === "needs") return <span className="text-ink-2">{words.join("; ")}</span>;
	return <Badge means={MEANS[standing]}>{words.join("; ")}</Badge>;
}
