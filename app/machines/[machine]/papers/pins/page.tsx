import type { Metadata } from "next";
import { Button } from "@/app/ui/button";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { CheckField } from "@/app/ui/checkField";
import { Empty } from "@/app/ui/empty";
import { Buttons, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Pager } from "@/app/ui/pager";
import { PrintButton } from "@/app/ui/printButton";
import { formatInstant } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { photosWithPins, photosWithPinsCounted, pinsOf } from "@/lib/pins/queries";
import { requireShop } from "@/lib/shop/queries";
import { thisMachine } from "../../thisMachine";
import { PinLegend } from "../pinLegend";
import { PinnedPicture } from "../pinnedPicture";
import { pinHref, pinInWords } from "../pinWords";

export const metadata: Metadata = { title: "Photos with pins" };

type Props = {
	readonly params: Promise<{ machine: string }>;
	readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
};

/** Printed, a photo with its legend fills about a page. */
const A_PAGE = 12;
const MOST_CHOSEN = 40;

export default async function PinsPage({ params, searchParams }: Props) {
	const machine = await thisMachine((await params).machine);
	const asked = await searchParams;
	const only = [asked.photo].flat().flatMap((id) => (id ? [id] : []));
	const page = Math.max(1, Math.floor(Number([asked.page].flat()[0])) || 1);
	const { read } = await shopStore();
	const [{ timeZone }, all, photos] = await Promise.all([
		requireShop(read),
		photosWithPinsCounted(read, machine.id),
		only.length > 0
			? photosWithPins(read, machine.id, { take: MOST_CHOSEN, only: only.slice(0, MOST_CHOSEN) })
			: photosWithPins(read, machine.id, { take: A_PAGE, skip: (page - 1) * A_PAGE }),
	]);
	const sheets = await Promise.all(photos.map(async (photo) => ({ photo, pins: await pinsOf(read, photo, timeZone) })));
	const base = `/machines/${machine.number}`;
	const here = `${base}/papers/pins`;
	if (sheets.length === 0)
		return (
			<Card title="Photos with pins">
				<Empty title="No photo has pins yet" action={<ButtonLink href={`${base}/papers`}>Choose a photo</ButtonLink>}>
					Open a photo and tap it where something is: the photo then leads to the part, and prints with numbers and a legend.
				</Empty>
			</Card>
		);
	return (
		<Stack>
			<div className="no-print">
				<Card title="Photos with pins">
					<Stack>
						<p>Each prints large with its numbers and what they mean, one photo a sheet.</p>
						<Buttons>
							<PrintButton kind="main">{`Print ${sheets.length === 1 ? "it" : `these ${sheets.length}`}`}</PrintButton>
							{only.length > 0 ? <ButtonLink href={here}>All of them</ButtonLink> : null}
						</Buttons>
						{only.length === 0 && sheets.length > 1 ? (
							<details className="af-details">
								<summary>Choose which</summary>
								<form method="get">
									{sheets.map(({ photo, pins }) => (
										<CheckField
											key={photo.id}
											name="photo"
											value={photo.id}
											label={photo.words || "without words yet"}
											hint={`${formatInstant(instant(photo.takenAt), timeZone)}, pins ${pins.map(({ number }) => number).join(", ")}`}
										/>
									))}
									<Button type="submit">Show these alone</Button>
								</form>
							</details>
						) : null}
						{only.length === 0 && all > A_PAGE ? (
							<Pager
								shown={`${(page - 1) * A_PAGE + 1} to ${(page - 1) * A_PAGE + sheets.length} of ${all}, newest first`}
								before={page > 1 ? `${here}?page=${page - 1}` : undefined}
								after={page * A_PAGE < all ? `${here}?page=${page + 1}` : undefined}
							/>
						) : null}
					</Stack>
				</Card>
			</div>
			{sheets.map(({ photo, pins }) => (
				<section key={photo.id} className="af-pin-sheet">
					<Stack>
						<h2>
							<Link href={`${base}/papers/photo/${photo.id}`}>{photo.words || "A photo without words yet"}</Link>
						</h2>
						<PinnedPicture
							src={`/files/${photo.sha}/small`}
							alt={photo.words || "A photo without words yet"}
							eager
							spots={pins.map((pin) => {
								const href = pinHref(pin, base);
								return {
									id: pin.id,
									number: pin.number,
									x: pin.x,
									y: pin.y,
									says: pinInWords(pin),
									gone: pin.gone,
									...(href ? { href } : {}),
								};
							})}
						>
							<figcaption>
								Machine {machine.number}, {machine.name}. Taken {formatInstant(instant(photo.takenAt), timeZone)}.
							</figcaption>
						</PinnedPicture>
						<PinLegend pins={pins} base={base} caption={`What the numbers mark: ${photo.words || "a photo without words yet"}`} />
					</Stack>
				</section>
			))}
		</Stack>
	);
}
