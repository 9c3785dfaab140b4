import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Bench } from "@/app/ui/layouts";
import { shopStore } from "@/lib/db/shopStore";
import { benchLines } from "@/lib/fittings/benchLines";
import { machineNumbered } from "@/lib/fittings/queries";
import { currentPerson } from "@/lib/people/current";
import { BenchRun } from "./benchRun";
import { Hazards } from "./hazards";
import "../bench.css";

type Params = Promise<{ machine: string }>;

export async function generateMetadata({ params }: { params: Params }): Promise<Metadata> {
	return { title: `At the bench, machine ${Number((await params).machine) || ""}` };
}

/** A run of take-outs on one machine, without leaving the page: the phone goes on when the network does not. */
export default async function BenchPage({ params }: { params: Params }) {
	const { read } = await shopStore();
	const [machine, person] = await Promise.all([machineNumbered(read, Number((await params).machine) || 0), currentPerson()]);
	if (!machine) notFound();
	const first = await benchLines(read, machine.id);
	return (
		<Bench>
			{machine.hazards === "" ? null : <Hazards machine={machine.number} words={machine.hazards} />}
			<BenchRun machine={{ id: machine.id, number: machine.number, name: machine.name }} person={person?.id ?? null} first={first} />
		</Bench>
	);
}
