import type { ReactNode } from "react";
import { Link } from "./link";

export type Photo = {
	readonly id: string;
	/** The smaller picture. */
	readonly src: string;
	/** Where the whole picture is. */
	readonly href?: string;
	/** What it shows, for those who do not see it. */
	readonly alt: string;
	readonly caption?: ReactNode;
};

/** Photos of one thing, one page of them at a time; each is fetched only when it comes into sight. */
export function PhotoGrid({ photos, empty }: { readonly photos: readonly Photo[]; readonly empty?: ReactNode }) {
	if (photos.length === 0) return empty ?? null;
	return (
		<div className="af-photos">
			{photos.map((photo) => (
				<figure key={photo.id}>
					{photo.href ? (
						<Link href={photo.href}>
							<Picture src={photo.src} alt={photo.alt} />
						</Link>
					) : (
						<Picture src={photo.src} alt={photo.alt} />
					)}
					{photo.caption ? <figcaption>{photo.caption}</figcaption> : null}
				</figure>
			))}
		</div>
	);
}

/** One picture from the shop's own files, which are already made small. */
export function Picture({ src, alt, eager = false }: { readonly src: string; readonly alt: string; readonly eager?: boolean }) {
	// biome-ignore lint/performance/noImgElement: the smaller pictures are already derived and kept; a second resizer would only make copies
	return <img src={src} alt={alt} loading={eager ? "eager" : "lazy"} decoding="async" />;
}
