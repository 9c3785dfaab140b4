/** One entry of the bar at the top. A longer address under it keeps the entry marked. */
export type NavEntry = {
	readonly href: string;
	readonly label: string /** Other addresses that belong to this entry. */;
	readonly also?: readonly string[];
};

export const nav: readonly NavEntry[] = [
	{ href: "/", label: "Shop", also: ["/machines"] },
	{ href: "/plan", label: "Plan" },
	{ href: "/store", label: "Store", also: ["/bags", "/parts", "/locations"] },
	{ href: "/buying", label: "Buying" },
	{ href: "/people", label: "People" },
];

/** True when `path` is the entry's own page or lies under it; "/" owns only itself and its `also`. */
export function isUnder(entry: NavEntry, path: string): boolean {
	return [entry.href, ...(entry.also ?? [])].some((href) => path === href || (href !== "/" && path.startsWith(`${href}/`)));
}
