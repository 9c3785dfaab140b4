import type { Metadata } from "next";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Facts } from "@/app/ui/facts";
import { Stack } from "@/app/ui/layouts";
import { TagChip } from "@/app/ui/tagChip";
import { partsOf } from "@/lib/captures/choices";
import { shopStore } from "@/lib/db/shopStore";
import { type DigitalRow, digitalItemsOf } from "@/lib/digital/queries";
import { sizeInWords } from "@/lib/files/sizeInWords";
import { thisMachine } from "../../thisMachine";
import { ProgramForm } from "./programForm";

export const metadata: Metadata = { title: "Programs" };

/** More than any machine needs; a list that is longer is cut. */
const MOST = 100;

export default async function ProgramsPage({ params }: { readonly params: Promise<{ machine: string }> }) {
	const machine = await thisMachine((await params).machine);
	const { read } = await shopStore();
	const [items, devices] = await Promise.all([digitalItemsOf(read, machine.id, MOST), partsOf(read, machine.id)]);
	return (
		<Stack>
			{items.length === 0 ? (
				<Empty title="No programs or sounds kept yet">
					A board that is programmed, a sound card, a set of settings: without its file the machine cannot be serviced once it has left the
					shop.
				</Empty>
			) : (
				items.map((item) => <Item key={item.id} item={item} />)
			)}
			<Card title="Keep a program, a sound or settings">
				{devices.length === 0 ? (
					<p>First enter the part that needs it, on the build page.</p>
				) : (
					<ProgramForm machineId={machine.id} machine={machine.number} devices={devices} />
				)}
			</Card>
		</Stack>
	);
}

function Item({ item: { name, version, pins, loading, file, part } }: { readonly item: DigitalRow }) {
	return (
		<Card
			title={`${name}, ${version}`}
			aside={part.tag ? <TagChip tag={part.tag.id} says={part.name} size="small" href={`/t/${part.tag.id}`} /> : null}
		>
			<Facts
				facts={[
					{ label: "For", value: part.name },
					{
						label: "File",
						value: (
							<a href={`/files/${file.id}`} download={file.name}>
								{file.name}, {sizeInWords(file.bytes)}
							</a>
						),
					},
					{ label: "SHA-256", value: <code className="break-all">{file.id}</code> },
					{ label: "Pins", value: pins === "" ? null : <span className="whitespace-pre-wrap">{pins}</span> },
					{ label: "How it is loaded", value: <span className="whitespace-pre-wrap">{loading}</span> },
				]}
			/>
		</Card>
	);
}
