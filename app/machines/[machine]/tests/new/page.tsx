import type { Metadata } from "next";
import { Card } from "@/app/ui/card";
import { Stack } from "@/app/ui/layouts";
import { shopStore } from "@/lib/db/shopStore";
import { choicesOfMachine } from "@/lib/steps/queries";
import { thisMachine } from "../../thisMachine";
import { conversionOption, partOption, positionOption, stepOption } from "../../work/planChoices";
import { SetTestForm } from "../setTestForm";
import { TestCaution } from "../testCaution";

export const metadata: Metadata = { title: "Set a test" };

export default async function NewTestPage({ params }: { params: Promise<{ machine: string }> }) {
	const machine = await thisMachine((await params).machine);
	const choices = await choicesOfMachine((await shopStore()).read, machine.id);
	return (
		<Stack>
			<TestCaution />
			<div className="max-w-3xl">
				<Card title="Set a test">
					<SetTestForm
						machineId={machine.id}
						testsHref={`/machines/${machine.number}/tests`}
						positions={choices.positions.map(positionOption)}
						parts={choices.parts.map(partOption)}
						steps={choices.steps.map(stepOption)}
						conversions={choices.conversions.map(conversionOption)}
					/>
				</Card>
			</div>
		</Stack>
	);
}
