import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { Badge } from "@/app/ui/badge";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Columns, Stack } from "@/app/ui/layouts";
import { PageHead } from "@/app/ui/pageHead";
import { type Column, Table } from "@/app/ui/table";
import { systemClock } from "@/lib/core/clock";
import { day, dayOf, formatDay } from "@/lib/core/days";
import { shopStore } from "@/lib/db/shopStore";
import { formatAmount, minor } from "@/lib/money/money";
import { people } from "@/lib/people/queries";
import { theShop } from "@/lib/shop/queries";
import { AddPersonForm, PersonStateButton, RateForm, ShopForm } from "./forms";

export const metadata: Metadata = { title: "People" };

export default async function PeoplePage() {
	const { read } = await shopStore();
	const shop = await theShop(read);
	if (!shop) redirect("/welcome");
	const everybody = await people(read);
	const today = dayOf(systemClock(), shop.timeZone);
	type Person = (typeof everybody)[number];
	const columns: Column<Person>[] = [
		{
			key: "name",
			head: "Name",
			main: true,
			cell: (person) => person.name,
			sub: (person) => person.skills,
		},
		{ key: "initials", head: "Initials", cell: (person) => person.initials },
		{
			key: "from",
			head: "Rate from",
			cell: (person) => (person.rates[0] ? formatDay(day(person.rates[0].fromDay)) : <Badge means="wait">no rate yet</Badge>),
			sub: (person) => (person.rates.length > 1 ? `${person.rates.length - 1} earlier` : null),
		},
		{
			key: "cost",
			head: `Costs an hour, ${shop.currency}`,
			align: "decimal",
			cell: (person) => (person.rates[0] ? formatAmount(minor(person.rates[0].costMinor), shop.currency) : null),
		},
		{
			key: "charge",
			head: `Charged an hour, ${shop.currency}`,
			align: "decimal",
			cell: (person) => (person.rates[0] ? formatAmount(minor(person.rates[0].chargeMinor), shop.currency) : null),
		},
		{ key: "state", head: "Here", hideHead: true, cell: (person) => <PersonStateButton person={person} /> },
	];
	return (
		<Stack>
			<PageHead
				title="People"
				lead={`Who works at ${shop.name}, and what an hour of theirs costs.`}
				actions={<ButtonLink href="/people/hours">Hours and days off</ButtonLink>}
			/>
			<Columns>
				<Stack>
					<Card flush>
						<Table
							caption="People"
							columns={columns}
							rows={everybody}
							rowKey={(person) => person.id}
							empty={<Empty title="Nobody yet">Add the first person beside.</Empty>}
						/>
					</Card>
					<Card title="The shop">
						<ShopForm
							seen={shop.entry}
							defaults={{ name: shop.name, timeZone: shop.timeZone, address: shop.address ?? "" }}
							currency={shop.currency}
						/>
					</Card>
				</Stack>
				<Stack>
					<Card title="Add somebody">
						<AddPersonForm />
					</Card>
					<Card title="Set a rate">
						<RateForm
							currency={shop.currency}
							today={today}
							people={everybody.filter(({ state }) => state === "here").map(({ id, name }) => ({ value: id, label: name }))}
						/>
					</Card>
				</Stack>
			</Columns>
		</Stack>
	);
}
