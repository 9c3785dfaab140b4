import type { ReactNode } from "react";
import { Link } from "./link";

export type Tab = { readonly href: string; readonly label: string; readonly count?: ReactNode };

/** The pages of one thing, as links. `current` is the href of the page shown; `label` names the thing. */
export function Tabs({ label, tabs, current }: { readonly label: string; readonly tabs: readonly Tab[]; readonly current: string }) {
	return (
		<nav className="af-tabs" aria-label={label}>
			<ul>
				{tabs.map((tab) => (
					<li key={tab.href}>
						<Link href={tab.href} aria-current={tab.href === current ? "page" : undefined}>
							{tab.label}
							{tab.count === undefined ? null : <span className="af-tabs-count">{tab.count}</span>}
						</Link>
					</li>
				))}
			</ul>
		</nav>
	);
}
