import { Link } from "@/app/ui/link";
import type { Content, contentsOf } from "@/lib/store/contents";

/** All that is at a place: a bag with what is in it under it, and so on inwards. */
export function Contents({ whole }: { readonly whole: Awaited<ReturnType<typeof contentsOf>> }) {
	if (whole.places.length === 0) return <p className="af-sub">Nothing.</p>;
	return (
		<>
			{whole.places.map((place) => (
				<section key={place.locationId} aria-label={place.way || "Right here"}>
					{place.way ? (
						<h3>
							<Link href={`/store/${place.locationId}`}>{place.way}</Link>
						</h3>
					) : null}
					<Inside things={place.things} />
				</section>
			))}
			{whole.more ? <p className="af-sub">There is more than this page lists: look at the places in it one by one.</p> : null}
		</>
	);
}

function Inside({ things }: { readonly things: readonly Content[] }) {
	return (
		<ul className="ps-4">
			{things.map((thing) => (
				<li key={thing.id} className="py-1">
					{thing.tag ? (
						<Link className="inline-block py-1" href={`/t/${thing.tag}`}>
							{thing.tag} {thing.words}
						</Link>
					) : (
						thing.words
					)}
					{thing.kind === "bag" && thing.inIt.length === 0 ? " (empty)" : null}
					{thing.inIt.length > 0 ? <Inside things={thing.inIt} /> : null}
				</li>
			))}
		</ul>
	);
}
