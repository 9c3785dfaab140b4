import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Card } from "@/app/ui/card";
import { systemClock } from "@/lib/core/clock";
import { formatMinutes, formatWait } from "@/lib/core/minutes";
import { shopStore } from "@/lib/db/shopStore";
import { peopleHere } from "@/lib/people/queries";
import { overrunsOfShop } from "@/lib/schedule/shopQueries";
import { choicesOfMachine, stepOfMachine, waitsNamed } from "@/lib/steps/queries";
import { thisMachine } from "../../../thisMachine";
import { numberInAddress } from "../../numberInAddress";
import { planChoices } from "../../planChoices";
import { PlanForm } from "../../planForm";

export const metadata: Metadata = { title: "Change a step's plan" };

export default async function ChangePlanPage({ params }: { params: Promise<{ machine: string; number: string }> }) {
	const { machine: inAddress, number } = await params;
	const machine = await thisMachine(inAddress);
	const { read } = await shopStore();
	const step = await stepOfMachine(read, machine.id, numberInAddress(number), systemClock());
	if (!step) notFound();
	const [offered, people, waits, record] = await Promise.all([
		choicesOfMachine(read, machine.id),
		peopleHere(read),
		waitsNamed(read),
		overrunsOfShop(read),
	]);
	const crew = step.crew.map(({ person }) => person);
	// Who was planned and has left since stays on the list, so that keeping the plan does not take them off it.
	const everybody = [
		...people,
		...crew.filter(({ id }) => !people.some((person) => person.id === id)).map((person) => ({ ...person, skills: "" })),
	];
	// So does what it holds or waits for and is offered to no new step any more.
	const choices = {
		...offered,
		equipment: withOwn(
			offered.equipment,
			step.equipment.map(({ equipment }) => equipment),
		),
		purchases: withOwn(
			offered.purchases,
			step.parcels.map(({ purchase }) => purchase),
		),
	};
	return (
		<div className="max-w-3xl">
			<Card title={`Change the plan of step ${step.number}`} aside="What was done stays">
				<PlanForm
					machineId={machine.id}
					stepId={step.id}
					seen={step.entry}
					workHref={`/machines/${machine.number}/work`}
					choices={planChoices(choices, everybody, waits, step.id, record)}
					began={step.state !== "planned"}
					defaults={{
						kind: step.kind,
						title: step.title,
						minutes: {
							low: formatMinutes(step.lowMinutes),
							likely: formatMinutes(step.likelyMinutes),
							high: formatMinutes(step.highMinutes),
						},
						wait: step.waitMinutes === 0 ? "" : formatWait(step.waitMinutes),
						waitWhy: step.waitWhy,
						caution: step.caution,
						addedWhy: step.addedWhy,
						conversionId: step.conversionId ?? "",
						positionId: step.positionId ?? "",
						partId: step.partId ?? "",
						needs: step.needs.map(({ needs }) => needs.id),
						crew: crew.map(({ id }) => id),
						waitLow: step.waitLowMinutes === null ? "" : formatWait(step.waitLowMinutes),
						waitHigh: step.waitHighMinutes === null ? "" : formatWait(step.waitHighMinutes),
						skill: step.skill ?? "",
						equipment: step.equipment.map(({ equipment }) => equipment.id),
						keepsThroughWait: step.equipment.some(({ until }) => until === "wait") ? "yes" : "no",
						parcels: step.parcels.map(({ purchase }) => purchase.id),
					}}
				/>
			</Card>
		</div>
	);
}

const withOwn = <Thing extends { readonly id: string }>(offered: readonly Thing[], own: readonly Thing[]): Thing[] => [
	...offered,
	...own.filter(({ id }) => !offered.some((thing) => thing.id === id)),
];
