import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Facts } from "@/app/ui/facts";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { shownChoices } from "@/lib/captures/choices";
import { captureById, mayHaveComeOut } from "@/lib/captures/queries";
import { formatInstant } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { isPicture, isShown } from "@/lib/files/mediaTypes";
import { sizeInWords } from "@/lib/files/sizeInWords";
import { thingChoices } from "@/lib/pins/choices";
import { pinsOf } from "@/lib/pins/queries";
import { requireShop } from "@/lib/shop/queries";
import { thisMachine } from "../../../thisMachine";
import { Shows, showsInWords } from "../../shows";
import { WithdrawForm, WordsForm } from "./captureForms";
import { PinBoard } from "./pinBoard";

export const metadata: Metadata = { title: "Photo or paper" };

const WORDS = { photo: "Photo", drawing: "Drawing", paper: "Paper", tag: "Scanned tag" } as const;

export default async function CapturePage({ params }: { readonly params: Promise<{ machine: string; capture: string }> }) {
	const { machine: number, capture: id } = await params;
	const machine = await thisMachine(number);
	const { read } = await shopStore();
	const [{ timeZone }, row] = await Promise.all([requireShop(read), captureById(read, id)]);
	if (!row || row.machineId !== machine.id) notFound();
	const shows = { positionId: row.position?.id ?? null, partId: row.part?.id ?? null };
	const [choices, pins, groups, out] = await Promise.all([
		shownChoices(read, machine.id),
		pinsOf(read, row, timeZone),
		thingChoices(read, machine.id, shows),
		mayHaveComeOut(read, shows),
	]);
	const base = `/machines/${machine.number}`;
	const { file } = row;
	const standing = row.stands === "yes";
	return (
		<Columns>
			<Stack>
				{standing ? null : (
					<Notice means="stop" live="off" title="Withdrawn">
						<p>It stays in the book and on the disk; the lists leave it out. The history says why.</p>
					</Notice>
				)}
				<Card
					title={WORDS[row.kind]}
					aside={<Link href={row.kind === "paper" ? `${base}/papers/documents` : `${base}/papers`}>All of them</Link>}
				>
					<Stack>
						{file && isPicture(file.mediaType) ? (
							<PinBoard
								captureId={row.id}
								src={`/files/${file.id}/small`}
								alt={showsInWords(row)}
								pins={pins}
								groups={groups}
								base={base}
								mayPin={standing}
							/>
						) : null}
						{row.words === "" ? null : <p className="whitespace-pre-wrap">{row.words}</p>}
						{standing && row.kind === "photo" && out ? (
							<div className="no-print">
								<ButtonLink href={`${base}/take-out/${encodeURIComponent(out.mark)}?capture=${row.id}`}>
									{`This is ${out.name} coming out`}
								</ButtonLink>
							</div>
						) : null}
						<Facts
							facts={[
								{
									label: "Shows",
									value: row.part || row.position || row.bag || row.step ? <Shows row={row} base={base} /> : "the whole machine",
								},
								{ label: "Taken", value: formatInstant(instant(row.takenAt), timeZone) },
								{ label: "Words said", value: row.wordsAt === null ? "none yet" : formatInstant(instant(row.wordsAt), timeZone) },
								{
									label: "File",
									value: file && (
										<a href={`/files/${file.id}`} download={isShown(file.mediaType) ? undefined : file.name}>
											{file.name}, {sizeInWords(file.bytes)}
										</a>
									),
								},
								{ label: "SHA-256", value: file && <code className="break-all">{file.id}</code> },
							]}
						/>
					</Stack>
				</Card>
			</Stack>
			{standing ? (
				<div className="no-print">
					<Stack>
						<Card title={row.words === "" ? "Say what it shows" : "Better the words"}>
							<WordsForm
								capture={{
									captureId: row.id,
									words: row.words,
									positionId: row.position?.id ?? "",
									partId: row.part?.id ?? "",
									bagId: row.bag?.id ?? "",
									stepId: row.step?.id ?? "",
								}}
								choices={choices}
							/>
						</Card>
						<details className="af-details">
							<summary>It should not be here</summary>
							<WithdrawForm captureId={row.id} />
						</details>
					</Stack>
				</div>
			) : null}
		</Columns>
	);
}
