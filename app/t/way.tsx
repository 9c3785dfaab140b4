import { Fragment } from "react";
import { Badge } from "@/app/ui/badge";
import { Link } from "@/app/ui/link";
import { TagChip } from "@/app/ui/tagChip";
import type { Whereabouts } from "@/lib/bags/queries";

/** A count of its place did not see it, or the bag around it. */
export const NotSeen = ({ day }: { readonly day: string }) => <Badge means="stop">not seen at the count of {day}</Badge>;

/** Where a thing lies, from the inside out, each bag and each place a link: in 12-0210-1, in 12-0208-Q, Back room, rack B. */
export function Way({ where }: { readonly where: Whereabouts }) {
	return (
		<>
			{where.bags.map((bag) => (
				<Fragment key={bag}>
					in <TagChip tag={bag} href={`/t/${bag}`} size="small" says="a bag around it" />{" "}
				</Fragment>
			))}
			{where.bags.length > 0 ? <span aria-hidden="true">· </span> : null}
			{where.places.length === 0 ? where.last : null}
			{where.places.map((place, at) => (
				<Fragment key={place.id}>
					{at > 0 ? " · " : ""}
					<Link className="inline-block py-1" href={`/store/${place.id}`}>
						{place.name}
					</Link>
				</Fragment>
			))}
		</>
	);
}
