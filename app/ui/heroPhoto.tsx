import { Picture } from "./photoGrid";

/** The bench's picture: edge to edge on a phone, its words at the foot, numbered spots in per cent of its width and height. */
export function HeroPhoto({
	src,
	alt,
	caption,
	spots = [],
}: {
	readonly src: string;
	readonly alt: string;
	readonly caption?: string;
	readonly spots?: readonly { readonly x: number; readonly y: number; readonly label: string }[];
}) {
	return (
		<figure className="af-hero">
			<Picture src={src} alt={alt} eager />
			{spots.map((spot) => (
				<span key={spot.label} className="af-spot" style={{ left: `${spot.x}%`, top: `${spot.y}%` }}>
					{spot.label}
				</span>
			))}
			{caption ? <figcaption>{caption}</figcaption> : null}
		</figure>
	);
}
