import type { ReactNode } from "react";

/** Nothing here yet: says what would be here, and offers the first one. */
export function Empty({ title, children, action }: { readonly title: string; readonly children?: ReactNode; readonly action?: ReactNode }) {
	return (
		<div className="af-empty">
			<p className="af-empty-title">{title}</p>
			{children ? <div className="af-empty-body">{children}</div> : null}
			{action ? <div className="af-empty-action">{action}</div> : null}
		</div>
	);
}
