import type { Metadata } from "next";
import { Card } from "@/app/ui/card";
import { thisMachine } from "../../../thisMachine";
import { NameConversionForm } from "../conversionForms";

export const metadata: Metadata = { title: "Name a conversion" };

export default async function NewConversionPage({ params }: { params: Promise<{ machine: string }> }) {
	const machine = await thisMachine((await params).machine);
	return (
		<div className="max-w-3xl">
			<Card title="Name a conversion">
				<NameConversionForm machineId={machine.id} conversionsHref={`/machines/${machine.number}/changes/conversions`} />
			</Card>
		</div>
	);
}
