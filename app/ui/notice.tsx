import type { ReactNode } from "react";
import type { Means } from "./means";

/**
 * Something to know. What has just happened is announced: `live` is "status" (or "alert" for "stop") unless told otherwise.
 * Standing words, such as a caution on a paper, are `live="off"`.
 */
export function Notice({
	means = "plain",
	live = means === "stop" ? "alert" : "status",
	title,
	children,
}: {
	readonly means?: Means;
	readonly live?: "status" | "alert" | "off";
	readonly title?: ReactNode;
	readonly children?: ReactNode;
}) {
	return (
		<div className="af-notice" data-means={means} role={live === "off" ? "note" : live}>
			{title ? <p className="af-notice-title">{title}</p> : null}
			{children}
		</div>
	);
}
