import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Buttons, Stack } from "@/app/ui/layouts";
import { systemClock } from "@/lib/core/clock";
import { dayOf } from "@/lib/core/days";
import { shopStore } from "@/lib/db/shopStore";
import { ownerBook } from "@/lib/owner/queries";
import { requireShop } from "@/lib/shop/queries";
import { thisMachine } from "../thisMachine";
import { noOwner } from "./owner/noOwner";
import { OwnerFigures, OwnerNotices } from "./owner/standing";

/** Where a customer's machine stands with its owner. Nothing for the shop's own machines. `machine` is its number. */
export async function OwnerCard({ machine: number }: { readonly machine: number }) {
	const machine = await thisMachine(String(number));
	if (machine.ownership !== "customer") return null;
	const base = `/machines/${machine.number}`;
	const nobody = noOwner(machine);
	if (nobody) return <Card title="The owner">{nobody}</Card>;
	const { read } = await shopStore();
	const { currency, timeZone } = await requireShop(read);
	const { account } = await ownerBook(read, machine.id, dayOf(systemClock(), timeZone));
	return (
		<Card title="The owner" aside={currency}>
			<Stack>
				<OwnerNotices account={account} currency={currency} base={base} />
				<OwnerFigures account={account} currency={currency} />
				<Buttons>
					<ButtonLink href={`${base}/money/owner`}>Quotes, payments, statement</ButtonLink>
				</Buttons>
			</Stack>
		</Card>
	);
}
