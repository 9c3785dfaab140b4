import { Link } from "./link";

/** Ways to see the same page, kept in the address: "Now", "As found", "A day". `current` is the href shown. */
export function Segments({
	label,
	options,
	current,
}: {
	readonly label: string;
	readonly options: readonly { readonly href: string; readonly label: string }[];
	readonly current: string;
}) {
	return (
		<nav aria-label={label}>
			<ul className="af-segments">
				{options.map((option) => (
					<li key={option.href}>
						<Link href={option.href} scroll={false} aria-current={option.href === current ? "true" : undefined}>
							{option.label}
						</Link>
					</li>
				))}
			</ul>
		</nav>
	);
}
