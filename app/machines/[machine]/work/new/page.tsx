import type { Metadata } from "next";
import { Card } from "@/app/ui/card";
import { Stack } from "@/app/ui/layouts";
import { shopStore } from "@/lib/db/shopStore";
import { peopleHere } from "@/lib/people/queries";
import { overrunsOfShop } from "@/lib/schedule/shopQueries";
import { choicesOfMachine, waitsNamed } from "@/lib/steps/queries";
import { thisMachine } from "../../thisMachine";
import { planChoices } from "../planChoices";
import { PlanForm } from "../planForm";

export const metadata: Metadata = { title: "Plan a step" };

export default async function NewStepPage({ params }: { params: Promise<{ machine: string }> }) {
	const machine = await thisMachine((await params).machine);
	const { read } = await shopStore();
	const [choices, people, waits, record] = await Promise.all([
		choicesOfMachine(read, machine.id),
		peopleHere(read),
		waitsNamed(read),
		overrunsOfShop(read),
	]);
	return (
		<Stack>
			<div className="max-w-3xl">
				<Card title="Plan a step">
					<PlanForm
						machineId={machine.id}
						stepId={null}
						workHref={`/machines/${machine.number}/work`}
						choices={planChoices(choices, people, waits, null, record)}
						began={choices.steps.some(({ state }) => state !== "planned")}
						defaults={{
							kind: "repair",
							title: "",
							minutes: { low: "", likely: "", high: "" },
							wait: "",
							waitWhy: "",
							caution: "",
							addedWhy: "",
							conversionId: "",
							positionId: "",
							partId: "",
							needs: [],
							crew: [],
							waitLow: "",
							waitHigh: "",
							skill: "",
							equipment: [],
							keepsThroughWait: "no",
							parcels: [],
						}}
					/>
				</Card>
			</div>
		</Stack>
	);
}
