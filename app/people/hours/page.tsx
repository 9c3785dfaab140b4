import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { Badge } from "@/app/ui/badge";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { PageHead } from "@/app/ui/pageHead";
import { Table } from "@/app/ui/table";
import { allEquipment, daysOffFrom, hoursOfPeople } from "@/lib/calendar/queries";
import { dayHoursInWords, minutesOfWeek, storedWeek, weekInWords } from "@/lib/calendar/week";
import { systemClock } from "@/lib/core/clock";
import { day, dayOf, formatDayShort, formatWeekday } from "@/lib/core/days";
import { formatMinutes } from "@/lib/core/minutes";
import { shopStore } from "@/lib/db/shopStore";
import { theShop } from "@/lib/shop/queries";
import { ChangeEquipment, DayOffForm, EquipmentForm, HoursForm, InAfterAll } from "./forms";

export const metadata: Metadata = { title: "Hours and days off" };

export default async function HoursPage() {
	const { read } = await shopStore();
	const shop = await theShop(read);
	if (!shop) redirect("/welcome");
	const today = dayOf(systemClock(), shop.timeZone);
	const [people, off, equipment] = await Promise.all([hoursOfPeople(read), daysOffFrom(read, today), allEquipment(read)]);
	const rows = people.map((person) => ({ ...person, now: person.hours.find(({ fromDay }) => fromDay <= today) }));
	const later = people.flatMap(({ name, hours }) => hours.filter(({ fromDay }) => fromDay > today).map((row) => ({ ...row, name })));
	const options = people.map(({ id, name }) => ({ value: id, label: name }));
	return (
		<Stack>
			<PageHead
				title="Hours and days off"
				above={<Link href="/people">People</Link>}
				lead="Who is in when, and what there is only one or a few of. The plan counts with it."
			/>
			<Columns>
				<Stack>
					<Card title="Hours" flush>
						<Table
							caption="Hours by person"
							rows={rows}
							rowKey={({ id }) => id}
							empty={<Empty title="Nobody yet">Add people first.</Empty>}
							columns={[
								{ key: "who", head: "Who", main: true, cell: ({ name }) => name, sub: ({ skills }) => skills },
								{
									key: "hours",
									head: "Hours",
									cell: ({ now }) =>
										now === undefined ? <Badge means="wait">no hours: nothing can be planned</Badge> : weekInWords(storedWeek(now.week)),
									sub: ({ now }) => (now === undefined ? null : `from ${formatDayShort(day(now.fromDay))}`),
								},
								{
									key: "week",
									head: "A week",
									align: "right",
									cell: ({ now }) => (now === undefined ? null : formatMinutes(minutesOfWeek(storedWeek(now.week)))),
								},
							]}
						/>
						{later.map(({ id, name, fromDay, week }) => (
							<p key={id} className="px-4 pb-3 text-ink-2">
								{name}, from {formatDayShort(day(fromDay))}: {weekInWords(storedWeek(week))}.
							</p>
						))}
					</Card>
					<Card title="Days off" flush>
						<Table
							caption="Days off that are not over"
							rows={off}
							rowKey={({ id }) => id}
							empty={<Empty title="No days off ahead">Holidays and closed days: add them beside.</Empty>}
							columns={[
								{
									key: "days",
									head: "Days",
									main: true,
									cell: ({ fromDay, untilDay }) =>
										fromDay === untilDay
											? formatWeekday(day(fromDay))
											: `${formatWeekday(day(fromDay))} to ${formatWeekday(day(untilDay))}`,
									sub: ({ words }) => words,
								},
								{ key: "who", head: "Who", cell: ({ person }) => person?.name ?? "everybody: the shop is closed" },
								{
									key: "back",
									head: "In after all",
									hideHead: true,
									cell: ({ id, fromDay, person }) => <InAfterAll dayOffId={id} says={`${person?.name ?? "everybody"}, ${fromDay}`} />,
								},
							]}
						/>
					</Card>
					<Card title="Equipment" flush>
						<Table
							caption="Equipment"
							rows={equipment}
							rowKey={({ id }) => id}
							empty={<Empty title="No equipment named">A bench, a spray booth: what two steps cannot use at once.</Empty>}
							columns={[
								{ key: "name", head: "What", main: true, cell: ({ name }) => name },
								{ key: "count", head: "How many", align: "right", cell: ({ count, state }) => (state === "gone" ? "gone" : count) },
								{ key: "change", head: "Change", hideHead: true, cell: (one) => <ChangeEquipment equipment={one} /> },
							]}
						/>
					</Card>
				</Stack>
				<Stack>
					<Card title="Add days off">
						<DayOffForm people={options} today={today} />
					</Card>
					<Card title="Set hours">
						<HoursForm
							people={rows.map(({ id, name, now }) => ({
								value: id,
								label: name,
								week: now === undefined ? [] : storedWeek(now.week).map(dayHoursInWords),
							}))}
							today={today}
						/>
					</Card>
					<Card title="Add equipment">
						<EquipmentForm />
					</Card>
				</Stack>
			</Columns>
		</Stack>
	);
}
