import type { Metadata } from "next";
import { Card } from "@/app/ui/card";
import { shopStore } from "@/lib/db/shopStore";
import { requireShop } from "@/lib/shop/queries";
import { choicesOfMachine } from "@/lib/steps/queries";
import { thisMachine } from "../../thisMachine";
import { partOption, positionOption, stepOption } from "../../work/planChoices";
import { DecideForm } from "../decideForm";
import { stepNamed } from "../stepNamed";

export const metadata: Metadata = { title: "Record a decision" };

type Props = {
	readonly params: Promise<{ machine: string }>;
	readonly searchParams: Promise<Record<string, string | string[] | undefined>>;
};

const thing =
	(kind: "position" | "part") =>
	({ value, label }: { readonly value: string; readonly label: string }) => ({ value: `${kind}:${value}`, label });

export default async function DecidePage({ params, searchParams }: Props) {
	const machine = await thisMachine((await params).machine);
	const { read } = await shopStore();
	const [shop, { steps, positions, parts }] = await Promise.all([requireShop(read), choicesOfMachine(read, machine.id)]);
	return (
		<div className="max-w-7xl">
			<Card title="Record a decision">
				<DecideForm
					machineId={machine.id}
					changesHref={`/machines/${machine.number}/changes`}
					currency={shop.currency}
					stepId={stepNamed(steps, (await searchParams).step)}
					steps={steps.map(stepOption)}
					things={{
						positions: positions.map(positionOption).map(thing("position")),
						parts: parts.map(partOption).map(thing("part")),
					}}
				/>
			</Card>
		</div>
	);
}
