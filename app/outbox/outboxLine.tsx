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
	return (
		<p className="af-outbox" role="status">
			<Link href="/phone">{words.join(" · ")}</Link>
		</p>
	);
}
