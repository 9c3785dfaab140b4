import { Card } from "@/app/ui/card";
import { Link } from "@/app/ui/link";
import { Picture } from "@/app/ui/photoGrid";
import { dayOf, formatDayShort } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import type { Reader } from "@/lib/db/store";
import { type PinnedPhoto, photosPinnedAt, photosPinnedOf, photosWithPins, photosWithPinsCounted } from "@/lib/pins/queries";
import { requireShop } from "@/lib/shop/queries";
import { Disc, percent } from "./pinnedPicture";
import "./pins.css";

const FEW = 6;

/** The photos on which a position or a part is pinned, with its own pins alone; nothing when there are none. */
export async function PinnedPhotos({
	read,
	of,
}: {
	readonly read: Reader;
	readonly of: { readonly positionId: string } | { readonly partId: string };
}) {
	const [{ timeZone }, photos] = await Promise.all([
		requireShop(read),
		"positionId" in of ? photosPinnedAt(read, of.positionId, FEW) : photosPinnedOf(read, of.partId, FEW),
	]);
	if (photos.length === 0) return null;
	return (
		<Card title="Where it is on a photo">
			<Pictures photos={photos} timeZone={timeZone} />
		</Card>
	);
}

/** A machine's photos with pins: each a way in. Nothing when there are none. */
export async function FindOnPhoto({
	read,
	machineId,
	machine,
}: {
	readonly read: Reader;
	readonly machineId: string;
	readonly machine: number;
}) {
	const [{ timeZone }, photos, all] = await Promise.all([
		requireShop(read),
		photosWithPins(read, machineId, { take: FEW }),
		photosWithPinsCounted(read, machineId),
	]);
	if (photos.length === 0) return null;
	return (
		<Card
			title="Find it on a photo"
			aside={<Link href={`/machines/${machine}/papers/pins`}>{all > photos.length ? `all ${all}, to print` : "to print"}</Link>}
		>
			<Pictures photos={photos} timeZone={timeZone} />
		</Card>
	);
}

function Pictures({ photos, timeZone }: { readonly photos: readonly PinnedPhoto[]; readonly timeZone: string }) {
	return (
		<div className="af-photos af-pinned-photos">
			{photos.map(({ id, machine, sha, words, takenAt, pins }) => (
				<figure key={id}>
					<Link href={`/machines/${machine}/papers/photo/${id}`}>
						<span className="af-pinned-small">
							<Picture
								src={`/files/${sha}/small`}
								alt={`${words || "A photo without words yet"}, pins ${pins.map((pin) => pin.number).join(", ")}`}
							/>
							{pins.map(({ id: pin, number, x, y }) => (
								<span key={pin} className="af-pin" aria-hidden="true" style={{ left: percent(x), top: percent(y) }}>
									<Disc number={number} />
								</span>
							))}
						</span>
					</Link>
					<figcaption>
						<span>{words || "no words yet"}</span>
						<span>{formatDayShort(dayOf(instant(takenAt), timeZone))}</span>
					</figcaption>
				</figure>
			))}
		</div>
	);
}
