import { ButtonLink } from "@/app/ui/buttonLink";
import { Empty } from "@/app/ui/empty";
import type { MachineHead } from "@/lib/machines/queries";
import { mayDealWithOwner } from "@/lib/owner/rules";

/** What stands in place of the owner's pages while the machine has no owner to deal with; null when it has one. */
export function noOwner(machine: Pick<MachineHead, "number" | "name" | "ownership" | "ownerId">) {
	const may = mayDealWithOwner(machine);
	if (may.ok) return null;
	const base = `/machines/${machine.number}`;
	if (may.error.code === "no-owner")
		return (
			<Empty title="No owner is named" action={<ButtonLink href={`${base}/about`}>Name the owner</ButtonLink>}>
				{machine.name} is a customer's machine. Quotes, payments and the statement begin once the book knows whose.
			</Empty>
		);
	return (
		<Empty title="This machine is not a customer's" action={<ButtonLink href={`${base}/money`}>Back to its money</ButtonLink>}>
			Quotes, payments and statements are for machines that somebody else owns. If {machine.name} is one, say so under About.
		</Empty>
	);
}
