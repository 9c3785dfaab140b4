import type { Metadata } from "next";
import { Card } from "@/app/ui/card";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { systemClock } from "@/lib/core/clock";
import { dayOf } from "@/lib/core/days";
import { shopStore } from "@/lib/db/shopStore";
import { leftBehind } from "@/lib/machines/changes";
import { photosOf, wordsUsed } from "@/lib/machines/queries";
import { counted } from "@/lib/machines/rules";
import { decimalAmount, minor } from "@/lib/money/money";
import { parties } from "@/lib/parties/queries";
import { requireShop } from "@/lib/shop/queries";
import { thisMachine } from "../thisMachine";
import { DescribeForm, HandOverForm, PortraitForm, StateForm } from "./aboutForms";

export const metadata: Metadata = { title: "About" };

export default async function AboutPage({ params }: { readonly params: Promise<{ machine: string }> }) {
	const machine = await thisMachine((await params).machine);
	const { read } = await shopStore();
	const [shop, people, used, photos, left] = await Promise.all([
		requireShop(read),
		parties(read),
		wordsUsed(read),
		photosOf(read, machine.id),
		leftBehind(read, machine.id),
	]);
	const known = people.map(({ id, name }) => ({ id, name }));
	const amount = (minorUnits: number | null) => (minorUnits === null ? "" : decimalAmount(minor(minorUnits), shop.currency));
	return (
		<Stack>
			<Columns even>
				<Card title="How far it is">
					{machine.state === "intake" ? (
						<p>
							It is being taken in. <Link href={`/machines/${machine.number}/build`}>Stamp as found</Link> to close the intake; work begins
							after it.
						</p>
					) : (
						<StateForm machineId={machine.id} state={machine.state} />
					)}
				</Card>
				{machine.state === "intake" || machine.state === "left" ? null : (
					<Card title="Hand it over">
						<HandOverForm
							machineId={machine.id}
							today={dayOf(systemClock(), shop.timeZone)}
							currency={shop.currency}
							parties={known}
							behind={[
								left.holdingBagsNotEmpty > 0
									? counted(left.holdingBagsNotEmpty, "bag that should be empty is not", "bags that should be empty are not")
									: "",
								left.partsOutside > 0 ? counted(left.partsOutside, "part is outside the shop", "parts are outside the shop") : "",
							].filter(Boolean)}
						/>
					</Card>
				)}
			</Columns>
			<h2>Correct what is said of it</h2>
			<DescribeForm
				seen={machine.entry}
				number={machine.number}
				currency={shop.currency}
				parties={known}
				used={used}
				machine={{
					machineId: machine.id,
					name: machine.name,
					kind: machine.kind,
					maker: machine.maker,
					model: machine.model,
					serial: machine.serial,
					made: machine.made ?? "",
					ownership: machine.ownership,
					carried: machine.carried,
					condition: machine.condition,
					hazards: machine.hazards,
					sellerId: machine.sellerId ?? "",
					sellerName: "",
					ownerId: machine.ownerId ?? "",
					ownerName: "",
					price: amount(machine.priceMinor),
					carriage: amount(machine.carriageMinor),
					receivedDay: machine.receivedDay,
				}}
			/>
			{photos.length === 0 ? null : (
				<Card title="Portrait">
					<PortraitForm machineId={machine.id} shown={machine.portraitSha} photos={photos} />
				</Card>
			)}
		</Stack>
	);
}
