import { Badge } from "@/app/ui/badge";
import { Card } from "@/app/ui/card";
import { Columns } from "@/app/ui/layouts";
import type { Option } from "@/app/ui/option";
import { Table } from "@/app/ui/table";
import { type Day, day, formatDay } from "@/lib/core/days";
import { counted } from "@/lib/purchases/counted";
import { leadOf, postWords } from "@/lib/purchases/lead";
import type { PurchasePage } from "@/lib/purchases/queries";
import { DeliverForm, LeadForm, VoidDeliveryForm } from "./deliveryForms";

type Line = PurchasePage["lines"][number] & { readonly came: number };

/** What has not come yet: when it is to be expected, and the form that says that it is here. */
export function InThePost({
	purchase,
	lines,
	today,
	places,
}: {
	readonly purchase: PurchasePage;
	readonly lines: readonly Line[];
	readonly today: Day;
	readonly places: readonly Option[];
}) {
	const lead = leadOf(purchase);
	const { words, late } = postWords(day(purchase.orderedDay), lead, today);
	const still = lines.filter((line) => line.came < line.count);
	return (
		<Card title="In the post" aside={lead === null ? undefined : <Badge means={late ? "stop" : "wait"}>{words}</Badge>}>
			<Columns>
				<DeliverForm
					key={still.map((line) => line.came).join()}
					purchaseId={purchase.id}
					today={today}
					places={places}
					lines={still.map((line) => ({
						lineId: line.id,
						what: line.what,
						unit: line.unit,
						count: line.count,
						still: line.count - line.came,
					}))}
				/>
				<LeadForm
					purchaseId={purchase.id}
					entry={purchase.entry}
					lead={{ low: String(lead?.low ?? ""), likely: String(lead?.likely ?? ""), high: String(lead?.high ?? "") }}
				/>
			</Columns>
		</Card>
	);
}

/** Every delivery, with those that were taken back. */
export function Deliveries({ lines }: { readonly lines: readonly Line[] }) {
	const rows = lines
		.flatMap((line) => line.deliveries.map((delivery) => ({ ...delivery, line })))
		.sort((a, b) => (a.day === b.day ? a.line.number - b.line.number : a.day < b.day ? -1 : 1));
	if (rows.length === 0) return null;
	return (
		<Card title="What came" flush>
			<Table
				caption="What came of this purchase"
				rows={rows}
				rowKey={(delivery) => delivery.id}
				columns={[
					{
						key: "what",
						head: "What",
						main: true,
						cell: ({ count, line }) => counted({ ...line, count }),
						sub: ({ words }) => words,
					},
					{ key: "day", head: "Came", cell: (delivery) => formatDay(day(delivery.day)) },
					{ key: "place", head: "Put at", cell: ({ location }) => location?.name ?? "" },
					{
						key: "back",
						head: "Take back",
						hideHead: true,
						cell: ({ id, stands, line }) =>
							stands === "no" ? <Badge>taken back</Badge> : <VoidDeliveryForm deliveryId={id} what={line.what} />,
					},
				]}
			/>
		</Card>
	);
}
