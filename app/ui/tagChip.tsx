import { Link } from "./link";

/** A tag as it hangs on the thing. `says` names what it hangs on, for those who hear the page. */
export function TagChip({
	tag,
	href,
	size = "plain",
	says,
	isVoid = false,
}: {
	/** "12-0147-K", or a machine's number alone. */
	readonly tag: string;
	readonly href?: string | undefined;
	readonly size?: "small" | "plain" | "large";
	readonly says?: string | undefined;
	/** Entered in error: struck through. */
	readonly isVoid?: boolean;
}) {
	const words = (
		<>
			{tag}
			{says ? <span className="sr-only">, {says}</span> : null}
			{isVoid ? <span className="sr-only">, entered in error</span> : null}
		</>
	);
	const look = { className: "af-tag", "data-size": size, "data-void": isVoid ? "" : undefined };
	return href ? (
		<Link {...look} href={href}>
			{words}
		</Link>
	) : (
		<span {...look}>{words}</span>
	);
}
