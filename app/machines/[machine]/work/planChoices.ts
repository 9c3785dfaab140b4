import { day, formatDayShort } from "@/lib/core/days";
import type { Choices } from "@/lib/steps/queries";
import type { PlanChoices } from "./planForm";

/** Position as it is chosen: "k23 rubber coupling". */
export const positionOption = ({ id, mark, name }: { readonly id: string; readonly mark: string; readonly name: string }) => ({
	value: id,
	label: `${mark} ${name}`,
});
export const conversionOption = ({ id, number, name }: { readonly id: string; readonly number: number; readonly name: string }) => ({
	value: id,
	label: `C${number} ${name}`,
});
export const partOption = ({
	id,
	name,
	tag,
}: {
	readonly id: string;
	readonly name: string;
	readonly tag: { readonly id: string } | null;
}) => ({
	value: id,
	label: tag ? `${name} (${tag.id})` : name,
});
export const stepOption = ({ id, number, title }: { readonly id: string; readonly number: number; readonly title: string }) => ({
	value: id,
	label: `${number} ${title}`,
});

/** What the form of a step's plan offers; a step is not offered to itself. */
export const planChoices = (
	choices: Choices,
	people: readonly { readonly id: string; readonly name: string; readonly skills: string }[],
	waits: readonly string[],
	except: string | null,
	record: PlanChoices["record"],
): PlanChoices => ({
	steps: choices.steps.filter(({ id, state }) => id !== except && state !== "dropped").map(stepOption),
	people: people.map(({ id, name, skills }) => ({ value: id, label: name, ...(skills ? { hint: skills } : {}) })),
	positions: choices.positions.map(positionOption),
	conversions: choices.conversions.map(conversionOption),
	parts: choices.parts.map(partOption),
	waits,
	equipment: choices.equipment.map(({ id, name }) => ({ value: id, label: name })),
	parcels: choices.purchases.map(({ id, number, arrivedDay, lines }) => ({
		value: id,
		label: `purchase ${number}: ${lines.map(({ what }) => what).join(", ")}`,
		hint: arrivedDay === null ? "in the post" : `came ${formatDayShort(day(arrivedDay))}`,
	})),
	skills: choices.skills,
	record,
});
