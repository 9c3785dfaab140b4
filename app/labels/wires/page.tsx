import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { TakeOutCautions } from "@/app/machines/[machine]/take-out/cautions";
import { Button } from "@/app/ui/button";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { PageHead } from "@/app/ui/pageHead";
import { SelectField } from "@/app/ui/selectField";
import { shopStore } from "@/lib/db/shopStore";
import { layoutFlag } from "@/lib/labels/flagLayout";
import { labelFonts } from "@/lib/labels/labelFonts";
import { wiresAddressSchema } from "@/lib/labels/schema";
import { FLAG_ROLL, labelsPerPage } from "@/lib/labels/stock";
import { flagStocks, positionsWithWires, wiresOf } from "@/lib/labels/wireQueries";
import { requireShop } from "@/lib/shop/queries";
import "../labels.css";
import { PrintChoices, PrintLink } from "../choices";
import { LabelPaper } from "../labelPaper";
import { StartAt } from "../startAt";

export const metadata: Metadata = { title: "Flags for wires" };

type Search = Promise<Record<string, string | string[] | undefined>>;
const one = (value: string | string[] | undefined): string | undefined => (Array.isArray(value) ? value[0] : value);

/** Flags that are shown; all are printed. */
const MOST_SHOWN = 40;

/** The flags of a machine's wires, or of one position's: both ends of each, as they will be. */
export default async function WiresPage({ searchParams }: { searchParams: Search }) {
	const asked = await searchParams;
	const said = wiresAddressSchema.safeParse({
		machine: one(asked.machine),
		position: one(asked.position),
		stock: one(asked.stock),
		start: one(asked.start),
	});
	if (!said.success) notFound();
	const { machine: number, position, start } = said.data;
	const { read } = await shopStore();
	await requireShop(read);
	const machine = await read.machine.findUnique({ where: { number }, select: { id: true, name: true } });
	if (!machine) notFound();
	const [wires, positions, stocks] = await Promise.all([
		wiresOf(read, machine.id, position),
		positionsWithWires(read, machine.id),
		flagStocks(read),
	]);
	const stock = stocks.find(({ id }) => id === said.data.stock) ?? FLAG_ROLL;
	const type = labelFonts();
	const flags = wires.flatMap((wire) => wire.ends.map((end, at) => ({ id: `${wire.id}-${at}`, end, laid: layoutFlag(end, stock, type) })));
	const refused = flags.flatMap(({ laid }) => (laid.ok ? [] : [laid.error.say]));
	const shortened = flags.flatMap(({ end, laid }) =>
		laid.ok && laid.value.shortened.length > 0 ? [`${end.terminal || end.device}: ${laid.value.shortened.join(", ")}`] : [],
	);
	const perSheet = labelsPerPage(stock);
	const shown = new URLSearchParams({
		machine: String(number),
		position: position ?? "",
		stock: stock.id,
		start: String(start),
	}).toString();
	return (
		<Stack>
			<PageHead
				title={`${flags.length} ${flags.length === 1 ? "flag" : "flags"} for wires`}
				lead={`${number} ${machine.name}: two for each wire, one at either end. Tag both before the first is undone.`}
				actions={
					flags.length > 0 && refused.length === 0 ? (
						<PrintLink key={shown} path="/labels/pdf/wires" shown={shown}>
							{`Print ${flags.length} flags`}
						</PrintLink>
					) : null
				}
			/>
			{flags.length > 0 ? <TakeOutCautions words="" hasWires /> : null}
			{refused.length > 0 ? (
				<Notice means="stop" title="Not on this stock">
					{[...new Set(refused)].slice(0, 3).join(" ")}
				</Notice>
			) : null}
			{shortened.length > 0 ? (
				<Notice means="wait" live="off" title="Shortened to fit">
					{shortened.slice(0, 12).join("; ")}
					{shortened.length > 12 ? `; and ${shortened.length - 12} more` : ""}
				</Notice>
			) : null}
			<Columns>
				<Card title="As they will be">
					{flags.length === 0 ? (
						<Empty title="No wires on record">
							What is connected is said on the page of its position: <Link href={`/machines/${number}/build`}>the build</Link>.
						</Empty>
					) : null}
					<ul className="flex flex-wrap gap-4">
						{flags.slice(0, MOST_SHOWN).map(({ id, laid }) => (
							<li key={id} className="min-w-0 max-w-full">
								{laid.ok ? <LabelPaper drawing={laid.value} /> : null}
							</li>
						))}
					</ul>
					{flags.length > MOST_SHOWN ? <p className="af-sub pt-3">And {flags.length - MOST_SHOWN} more, which are printed, too.</p> : null}
				</Card>
				<Card title="Which, and on what">
					<PrintChoices action="/labels/wires" stock={stock.id}>
						<input type="hidden" name="machine" value={number} />
						<SelectField
							label="Wires of"
							name="position"
							none="the whole machine"
							defaultValue={position ?? ""}
							options={positions.map(({ mark, name, wires: count }) => ({ value: mark, label: `${mark} ${name} (${count})` }))}
						/>
						<SelectField
							label="In the printer"
							name="stock"
							defaultValue={stock.id}
							options={stocks.map((known) => ({ value: known.id, label: known.name }))}
						/>
						{perSheet > 1 ? (
							<StartAt key={stock.id} perSheet={perSheet} columns={stock.kind === "sheet" ? stock.columns : 1} start={start} />
						) : null}
						<Button type="submit">Show it so</Button>
					</PrintChoices>
					<p className="af-sub pt-3">
						Fold on the dashed line round the wire and press the halves together: both sides say the same.{" "}
						<Link href={`/labels/stock/${stock.id}`}>Nudge the prints</Link> if they are off.
					</p>
				</Card>
			</Columns>
		</Stack>
	);
}
