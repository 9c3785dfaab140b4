import type { ReactNode } from "react";
import { Link } from "@/app/ui/link";
import { Picture } from "@/app/ui/photoGrid";
import "./pins.css";

export type Spot = {
	readonly id: string;
	readonly number: number;
	/** Ten-thousandths of the picture's width and height. */
	readonly x: number;
	readonly y: number;
	/** What is there, for those who hear the page; the number is said before it. */
	readonly says?: string;
	/** Where the pin leads; left out, it only marks. */
	readonly href?: string;
	readonly gone?: boolean;
};

export const percent = (part: number): string => `${part / 100}%`;

/** A photo with its pins on it. Each is a link of its own where it leads somewhere. */
export function PinnedPicture({
	src,
	alt,
	spots,
	eager = false,
	children,
}: {
	readonly src: string;
	readonly alt: string;
	readonly spots: readonly Spot[];
	readonly eager?: boolean;
	readonly children?: ReactNode;
}) {
	return (
		<figure className="af-pinned">
			<Picture src={src} alt={alt} eager={eager} />
			<Spots spots={spots} />
			{children}
		</figure>
	);
}

/** The pins alone, to lay over a picture. */
export function Spots({ spots }: { readonly spots: readonly Spot[] }) {
	return spots.map(({ id, number, x, y, says, href, gone }) => {
		const look = { className: "af-pin", style: { left: percent(x), top: percent(y) }, "data-gone": gone ? "" : undefined };
		return href ? (
			<Link key={id} {...look} href={href}>
				<Disc number={number} />
				{says ? <span className="sr-only">: {says}</span> : null}
			</Link>
		) : (
			<span key={id} {...look}>
				<Disc number={number} />
			</span>
		);
	});
}

export const Disc = ({ number }: { readonly number: number }) => <span className="af-pin-disc">{number}</span>;
