import type { ReactNode } from "react";
import type { ButtonKind } from "./button";
import { Link } from "./link";

/** A way to another page that looks like a deed ("Take in a machine"). */
export function ButtonLink({
	href,
	kind = "plain",
	wide,
	children,
}: {
	readonly href: string;
	readonly kind?: ButtonKind;
	readonly wide?: boolean;
	readonly children: ReactNode;
}) {
	return (
		<Link className="af-button" data-kind={kind} data-wide={wide ? "" : undefined} href={href}>
			{children}
		</Link>
	);
}
