import type { Metadata } from "next";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Pager } from "@/app/ui/pager";
import { type Column, Table } from "@/app/ui/table";
import { type CaptureRow, capturesCounted, papersOf } from "@/lib/captures/queries";
import { dayOf, formatDayShort } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { sizeInWords } from "@/lib/files/sizeInWords";
import { requireShop } from "@/lib/shop/queries";
import { thisMachine } from "../../thisMachine";
import { SendFiles } from "../sendFiles";
import { Shows } from "../shows";

export const metadata: Metadata = { title: "Papers" };

type Props = {
	readonly params: Promise<{ machine: string }>;
	readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
};

const A_PAGE = 50;

export default async function DocumentsPage({ params, searchParams }: Props) {
	const machine = await thisMachine((await params).machine);
	const after = [(await searchParams).after].flat()[0];
	const { read } = await shopStore();
	const [{ timeZone }, counts, rows] = await Promise.all([
		requireShop(read),
		capturesCounted(read, machine.id),
		papersOf(read, { machineId: machine.id }, { take: A_PAGE + 1, ...(after ? { after } : {}) }),
	]);
	const base = `/machines/${machine.number}`;
	const here = `${base}/papers/documents`;
	const shown = rows.slice(0, A_PAGE);
	const last = shown.at(-1)?.id;
	return (
		<Stack>
			<Card title="Papers">
				<Stack>
					<SendFiles machine={machine.number} kind="paper" />
					<Table
						caption={`Papers of machine ${machine.number}`}
						columns={columns(base, timeZone)}
						rows={shown}
						rowKey={({ id }) => id}
						empty={
							<Empty title="No papers yet">
								Bills, manuals, letters, a diagram from the back door: as a PDF, a text, or a photo of the page.
							</Empty>
						}
					/>
					{after || rows.length > A_PAGE ? (
						<Pager
							shown={`${shown.length} of ${counts.papers}, newest first`}
							before={after ? here : undefined}
							after={rows.length > A_PAGE && last ? `${here}?after=${last}` : undefined}
						/>
					) : null}
				</Stack>
			</Card>
		</Stack>
	);
}

const columns = (base: string, timeZone: string): Column<CaptureRow>[] => [
	{
		key: "name",
		head: "Paper",
		main: true,
		cell: (row) => <Link href={`${base}/papers/photo/${row.id}`}>{row.words === "" ? (row.file?.name ?? "A paper") : row.words}</Link>,
		sub: (row) => (row.words === "" ? "No words yet" : row.file?.name),
	},
	{
		key: "shows",
		head: "About",
		cell: (row) => (row.part || row.position || row.bag || row.step ? <Shows row={row} base={base} /> : "the whole machine"),
	},
	{ key: "size", head: "Size", align: "right", cell: (row) => (row.file ? sizeInWords(row.file.bytes) : null) },
	{ key: "day", head: "Came on", align: "right", cell: (row) => formatDayShort(dayOf(instant(row.takenAt), timeZone)) },
];
