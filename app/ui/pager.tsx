import { ButtonLink } from "./buttonLink";

/** Which part of a long list is shown ("1 to 50 of 312"), and the ways on. */
export function Pager({
	shown,
	before,
	after,
}: {
	readonly shown: string;
	readonly before?: string | undefined;
	readonly after?: string | undefined;
}) {
	return (
		<nav className="af-pager" aria-label="Pages of this list">
			<span>{shown}</span>
			<span className="af-buttons">
				{before ? <ButtonLink href={before}>Earlier</ButtonLink> : null}
				{after ? <ButtonLink href={after}>More</ButtonLink> : null}
			</span>
		</nav>
	);
}
