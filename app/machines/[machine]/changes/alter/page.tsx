import type { Metadata } from "next";
import { Card } from "@/app/ui/card";
import { shopStore } from "@/lib/db/shopStore";
import { choicesOfMachine } from "@/lib/steps/queries";
import { thisMachine } from "../../thisMachine";
import { conversionOption, partOption, positionOption, stepOption } from "../../work/planChoices";
import { AlterForm } from "../alterForm";
import { stepNamed } from "../stepNamed";

export const metadata: Metadata = { title: "Record an alteration" };

type Props = {
	readonly params: Promise<{ machine: string }>;
	readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
};

export default async function AlterPage({ params, searchParams }: Props) {
	const machine = await thisMachine((await params).machine);
	const choices = await choicesOfMachine((await shopStore()).read, machine.id);
	return (
		<div className="max-w-3xl">
			<Card title="Record an alteration">
				<AlterForm
					machineId={machine.id}
					changesHref={`/machines/${machine.number}/changes`}
					stepId={stepNamed(choices.steps, (await searchParams).step)}
					positions={choices.positions.map((position) => ({
						...positionOption(position),
						original: position.part?.origin === "original",
					}))}
					parts={choices.parts.map((part) => ({ ...partOption(part), original: part.origin === "original" }))}
					steps={choices.steps.map(stepOption)}
					conversions={choices.conversions.map(conversionOption)}
				/>
			</Card>
		</div>
	);
}
