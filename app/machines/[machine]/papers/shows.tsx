import { Fragment, type ReactNode } from "react";
import { Link } from "@/app/ui/link";
import { TagChip } from "@/app/ui/tagChip";
import type { CaptureRow } from "@/lib/captures/queries";

/** What a photo or a paper shows, each with the way to it. */
export function Shows({ row, base }: { readonly row: CaptureRow; readonly base: string }) {
	const things: ReactNode[] = [
		...(row.part
			? [
					row.part.tag ? (
						<TagChip key="part" tag={row.part.tag} size="small" says={row.part.name} href={`/t/${row.part.tag}`} />
					) : (
						row.part.name
					),
				]
			: []),
		...(row.position
			? [
					<Link key="position" href={`${base}/build/${encodeURIComponent(row.position.mark)}`}>
						{row.position.name}
					</Link>,
				]
			: []),
		...(row.bag
			? [row.bag.tag ? <TagChip key="bag" tag={row.bag.tag} size="small" says={row.bag.words} href={`/t/${row.bag.tag}`} /> : row.bag.words]
			: []),
		...(row.step
			? [
					<Link key="step" href={`${base}/work/${row.step.number}`}>
						step {row.step.number}
					</Link>,
				]
			: []),
	];
	return (
		<>
			{things.map((thing, at) => (
				// biome-ignore lint/suspicious/noArrayIndexKey: at most four things, always in this order
				<Fragment key={at}>
					{at > 0 ? " " : ""}
					{thing}
				</Fragment>
			))}
		</>
	);
}

/** What it shows in words alone, for those who do not see the picture. */
export const showsInWords = ({ words, part, position, bag, step, kind }: CaptureRow): string =>
	words ||
	[part?.name, position?.name, bag && `bag ${bag.tag ?? bag.words}`, step && `step ${step.number}, ${step.title}`]
		.filter(Boolean)
		.join(", ") ||
	`A ${kind} without words yet`;
