"use client";

import { usePathname } from "next/navigation";
import { Link } from "./link";
import { isUnder, type NavEntry } from "./nav";

export function NavLinks({ entries }: { entries: readonly NavEntry[] }) {
	const path = usePathname();
	return (
		<ul>
			{entries.map((entry) => (
				<li key={entry.href}>
					<Link href={entry.href} aria-current={isUnder(entry, path) ? (path === entry.href ? "page" : "true") : undefined}>
						{entry.label}
					</Link>
				</li>
			))}
		</ul>
	);
}
