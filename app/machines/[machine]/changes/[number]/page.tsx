import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Card } from "@/app/ui/card";
import { Facts } from "@/app/ui/facts";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { alterationOf } from "@/lib/alterations/queries";
import { formatInstant } from "@/lib/core/days";
import { instant } from "@/lib/core/instants";
import { shopStore } from "@/lib/db/shopStore";
import { requireShop } from "@/lib/shop/queries";
import { thisMachine } from "../../thisMachine";
import { numberInAddress } from "../../work/numberInAddress";
import { MarkUndoneForm, VoidAlterationForm } from "../alterationForms";
import { UndoBadge } from "../undoBadge";
import { undoTime } from "../undoWords";
import { Where } from "../where";

type Props = { readonly params: Promise<{ machine: string; number: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
	return { title: `Alteration a${(await params).number}` };
}

export default async function AlterationPage({ params }: Props) {
	const { machine: inAddress, number } = await params;
	const machine = await thisMachine(inAddress);
	const { read } = await shopStore();
	const alteration = await alterationOf(read, machine.id, numberInAddress(number));
	if (!alteration) notFound();
	const { timeZone } = await requireShop(read);
	const base = `/machines/${machine.number}`;
	const time = undoTime(alteration);
	const at = (when: string | null) => (when === null ? null : formatInstant(instant(when), timeZone));
	const standing = alteration.state === "done";
	return (
		<Stack>
			<div>
				<p className="text-ink-2">
					<Link href={`${base}/changes`}>Changes</Link> · alteration a{alteration.number}
				</p>
				<h2 className="text-2xl">{alteration.what}</h2>
				<p className="mt-1">
					<UndoBadge undo={alteration.undo} state={alteration.state} />
				</p>
			</div>
			{standing && alteration.undo === "never" ? (
				<Notice means="stop" live="off">
					No reversal can undo it: it is listed under what stays different, whatever is put back.
				</Notice>
			) : null}
			<Columns>
				<Card title="What is known of it">
					<Facts
						facts={[
							{ label: "Where", value: <Where of={alteration} base={base} /> },
							{ label: "How it is undone", value: alteration.undoHow },
							{ label: "Undoing takes", value: time ? `${time.likely} (${time.more})` : null },
							{ label: "Reason", value: alteration.reason },
							{ label: "Agreed", value: alteration.agreedBy },
							{ label: "Done", value: at(alteration.doneAt) },
							{ label: "Undone", value: at(alteration.undoneAt) },
							{
								label: "Step",
								value: alteration.step ? (
									<Link href={`${base}/work/${alteration.step.number}`}>{`${alteration.step.number} ${alteration.step.title}`}</Link>
								) : null,
							},
							{
								label: "Conversion",
								value: alteration.conversion ? (
									<Link href={`${base}/changes/conversions/${alteration.conversion.number}`}>
										{`C${alteration.conversion.number} ${alteration.conversion.name}`}
									</Link>
								) : null,
							},
						]}
					/>
				</Card>
				{standing ? (
					<Stack>
						{alteration.undo === "never" ? null : (
							<Card title="It was undone">
								<MarkUndoneForm alterationId={alteration.id} leavesTrace={alteration.undo === "trace"} />
							</Card>
						)}
						<Card title="Entered in error">
							<VoidAlterationForm alterationId={alteration.id} />
						</Card>
					</Stack>
				) : null}
			</Columns>
		</Stack>
	);
}
