import { Card } from "@/app/ui/card";
import { Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { PhotoGrid } from "@/app/ui/photoGrid";
import { isPicture } from "@/lib/files/mediaTypes";
import type { PositionPage } from "@/lib/positions/positionQueries";

/** What shows this position or a part of it: pictures as pictures, papers by name. */
export function Shown({
	captures,
	name,
	base,
}: {
	readonly captures: PositionPage["captures"];
	readonly name: string;
	readonly base: string;
}) {
	const filed = captures.flatMap(({ id, words, file }) => (file ? [{ id, words, file }] : []));
	if (filed.length === 0) return null;
	const papers = filed.filter(({ file }) => !isPicture(file.mediaType));
	return (
		<Card title="Photos and papers" aside={<Link href={`${base}/papers`}>all of the machine</Link>}>
			<Stack>
				<PhotoGrid
					photos={filed
						.filter(({ file }) => isPicture(file.mediaType))
						.map(({ id, words, file }) => ({
							id,
							src: `/files/${file.id}/small`,
							href: `/files/${file.id}`,
							alt: words || `${name}, without words yet`,
							caption: words || "no words yet",
						}))}
				/>
				{papers.length > 0 ? (
					<ul>
						{papers.map(({ id, words, file }) => (
							<li key={id}>
								<a className="inline-block py-1" href={`/files/${file.id}`}>
									{words || file.name}
								</a>
							</li>
						))}
					</ul>
				) : null}
			</Stack>
		</Card>
	);
}
