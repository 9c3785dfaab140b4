import type { ReactNode } from "react";
import { Badge } from "@/app/ui/badge";
import type { Means } from "@/app/ui/means";
import type { Verdict } from "@/lib/tests/limits";

const VERDICTS: Readonly<Record<Verdict, { readonly words: string; readonly means: Means; readonly shape: ReactNode }>> = {
	pass: {
		words: "limit kept",
		means: "original",
		shape: <path d="M2 8.5 6.2 12.7 14 3.6" fill="none" stroke="currentColor" strokeWidth={2.6} />,
	},
	fail: {
		words: "limit not kept",
		means: "stop",
		shape: <path d="M2.5 2.5 13.5 13.5M13.5 2.5 2.5 13.5" fill="none" stroke="currentColor" strokeWidth={2.6} />,
	},
	unjudged: {
		words: "not judged",
		means: "plain",
		shape: <circle cx={8} cy={8} r={5.6} fill="none" stroke="currentColor" strokeWidth={2} />,
	},
};

/** A verdict as a shape with its word: a tick, a cross, an open ring. Never more than whether a limit was kept. */
export function VerdictMark({ verdict }: { readonly verdict: Verdict }) {
	const { words, means, shape } = VERDICTS[verdict];
	return (
		<span className="whitespace-nowrap">
			<Badge means={means}>
				<svg className="mr-1.5 inline-block size-[0.8em]" viewBox="0 0 16 16" aria-hidden="true">
					{shape}
				</svg>
				{words}
			</Badge>
		</span>
	);
}
