import { Bench } from "@/app/ui/layouts";
import { TagChip } from "@/app/ui/tagChip";
import { MakeBagForm } from "./bagForms";

/** A label that hangs on nothing yet: a ready-made one, in front of a bag that needs it. */
export function FreeTag({
	tag,
	machine,
	isOfTheShop,
}: {
	tag: string;
	machine: { id: string; number: number; name: string } | null;
	isOfTheShop: boolean;
}) {
	return (
		<Bench>
			<p>
				<TagChip tag={tag} size="large" />
			</p>
			<h1>This tag is free</h1>
			{machine || isOfTheShop ? (
				<>
					<p>It hangs on nothing yet. Make a bag with it{machine ? ` for ${machine.number} ${machine.name}` : ", of the shop itself"}.</p>
					<MakeBagForm tag={tag} machineId={machine?.id ?? null} />
				</>
			) : (
				<p>Its number is right, but this shop has no machine of that number. It may come from another shop.</p>
			)}
		</Bench>
	);
}
