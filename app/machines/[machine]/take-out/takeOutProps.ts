import type { takeOutSheet } from "@/lib/fittings/queries";
import type { TakeOutFormProps } from "./[mark]/takeOutForm";

type Sheet = NonNullable<Awaited<ReturnType<typeof takeOutSheet>>>;
type Fitting = NonNullable<Sheet["fitting"]>;

/** What the form of a take-out is fed with, from the sheet of its position. */
export const takeOutProps = (
	{ id, number, name }: { readonly id: string; readonly number: number; readonly name: string },
	person: { readonly id: string } | null,
	{ position, behind, came, bags, places, steps, conversions, offers }: Sheet,
	{ part, wayRound, fixings, connections, settings }: Fitting,
): TakeOutFormProps => ({
	machine: { id, number, name },
	person: person?.id ?? null,
	position: { id: position.id, mark: position.mark, name: position.name },
	part,
	wayRound,
	fixings,
	wires: connections,
	settings,
	behind: behind !== "",
	came,
	bags,
	places,
	steps,
	conversions,
	offers,
});
