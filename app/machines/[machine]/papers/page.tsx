import type { Metadata } from "next";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { Pager } from "@/app/ui/pager";
import { type Photo, PhotoGrid } from "@/app/ui/photoGrid";
import { type CaptureRow, capturesCounted, photosOf } from "@/lib/captures/queries";
import { dayOf, formatDayShort } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { isPicture } from "@/lib/files/mediaTypes";
import { counted } from "@/lib/machines/rules";
import { photosWithPinsCounted } from "@/lib/pins/queries";
import { requireShop } from "@/lib/shop/queries";
import { thisMachine } from "../thisMachine";
import { SendFiles } from "./sendFiles";
import { Shows, showsInWords } from "./shows";

export const metadata: Metadata = { title: "Photos" };

type Props = {
	readonly params: Promise<{ machine: string }>;
	readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
};

const A_PAGE = 40;

export default async function PhotosPage({ params, searchParams }: Props) {
	const machine = await thisMachine((await params).machine);
	const asked = await searchParams;
	const after = [asked.after].flat()[0];
	const { read } = await shopStore();
	const [{ timeZone }, counts, pinned, rows] = await Promise.all([
		requireShop(read),
		capturesCounted(read, machine.id),
		photosWithPinsCounted(read, machine.id),
		photosOf(read, { machineId: machine.id }, { take: A_PAGE + 1, ...(after ? { after } : {}) }),
	]);
	const base = `/machines/${machine.number}`;
	const here = `${base}/papers`;
	const shown = rows.slice(0, A_PAGE);
	const last = shown.at(-1)?.id;
	return (
		<Stack>
			<Card title="Photos">
				<Stack>
					<SendFiles machine={machine.number} kind="photo" />
					{counts.withoutWords > 0 ? (
						<Notice means="wait" live="off">
							<p>
								<Link href={`/later?machine=${machine.number}`}>
									{counted(counts.withoutWords, "photo or scan has", "photos and scans have")} no words yet
								</Link>
								. Say what they show while it is fresh.
							</p>
						</Notice>
					) : null}
					{pinned > 0 ? (
						<p>
							<Link href={`${here}/pins`}>{counted(pinned, "photo has pins", "photos have pins")}</Link>: to find a part by, and to print
							with their numbers.
						</p>
					) : null}
					<PhotoGrid
						photos={shown.flatMap((row) => (row.file && isPicture(row.file.mediaType) ? [asPhoto(row, row.file.id, base, timeZone)] : []))}
						empty={<Empty title="No photos yet">Take the first one now: the whole machine, as it came in, from each side.</Empty>}
					/>
					<Documents rows={shown.filter((row) => !row.file || !isPicture(row.file.mediaType))} base={base} />
					{after || rows.length > A_PAGE ? (
						<Pager
							shown={`${shown.length} of ${counts.photos}, newest first`}
							before={after ? here : undefined}
							after={rows.length > A_PAGE && last ? `${here}?after=${last}` : undefined}
						/>
					) : null}
				</Stack>
			</Card>
		</Stack>
	);
}

/** What waits for words and is no picture. */
function Documents({ rows, base }: { readonly rows: readonly CaptureRow[]; readonly base: string }) {
	if (rows.length === 0) return null;
	return (
		<ul className="flex flex-col gap-2">
			{rows.map((row) => (
				<li key={row.id}>
					<Link href={`${base}/papers/photo/${row.id}`}>{row.file?.name ?? row.tag}</Link>
				</li>
			))}
		</ul>
	);
}

const asPhoto = (row: CaptureRow, sha: string, base: string, timeZone: string): Photo => ({
	id: row.id,
	src: `/files/${sha}/small`,
	href: `${base}/papers/photo/${row.id}`,
	alt: showsInWords(row),
	caption: (
		<>
			<span>{row.words === "" ? "No words yet" : row.words}</span>
			<Shows row={row} base={base} />
			<span className="tabular-nums">{formatDayShort(dayOf(instant(row.takenAt), timeZone))}</span>
		</>
	),
});
