"use client";

import { useEffect, useRef } from "react";
import { Link } from "@/app/ui/link";
import { useOutbox } from "./outbox";
import { hearShopTime } from "./shopTime";

/** On every page while something waits on this phone: how much, and why. Sends it from whichever page is open. */
export function OutboxLine({ now }: { readonly now: string }) {
	// The page's own time, and when it began to come: what is done on it is kept by the shop's clock.
	const made = useRef(now);
	useEffect(() => {
		const [page] = performance.getEntriesByType("navigation");
		if (page instanceof PerformanceNavigationTiming) hearShopTime(made.current, performance.timeOrigin + page.responseStart);
	}, []);
	const { waiting, done, held, keeps, isRead } = useOutbox();
	const labels = [...done.values()].reduce((sum, one) => sum + one.labels.length, 0);
	const refused = waiting.filter((item) => item.refused).length;
	if (!isRead || (waiting.length === 0 && labels === 0)) return null;
	const words = [
		waiting.length > refused ? `${waiting.length - refused} on this phone, ${held === null ? "being sent" : "not sent yet"}` : null,
		refused > 0 ? `${refused} not recorded` : null,
		labels > 0 ? `${labels === 1 ? "1 label" : `${labels} labels`} to print` : null,
		keeps ? null : "this browser keeps nothing: leave the page open",
	].filter((part) => part !== null);
	// Spread out on the page that is open: while the network is gone no other page can be had.
	return (
		<details className="af-outbox">
			<summary>
				<span role="status">{words.join(" · ")}</span>
			</summary>
			<ol>
				{waiting.slice(0, MOST_SHOWN).map((item) => (
					<li key={item.deed}>
						{item.words}
						{item.refused ? `: not recorded. ${item.refused.say}` : ""}
					</li>
				))}
			</ol>
			{waiting.length > MOST_SHOWN ? <p>and {waiting.length - MOST_SHOWN} more</p> : null}
			<p>
				{held === null ? null : `${held} `}
				<Link href="/phone">What to do with each</Link>
			</p>
		</details>
	);
}
const MOST_SHOWN = 40;
