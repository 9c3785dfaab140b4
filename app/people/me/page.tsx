import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Stack } from "@/app/ui/layouts";
import { PageHead } from "@/app/ui/pageHead";
import { shopStore } from "@/lib/db/shopStore";
import { currentPerson } from "@/lib/people/current";
import { peopleHere } from "@/lib/people/queries";
import { theShop } from "@/lib/shop/queries";
import { ChoosePerson } from "./choosePerson";

export const metadata: Metadata = { title: "Who is this?" };

export default async function WhoPage() {
	const { read } = await shopStore();
	if (!(await theShop(read))) redirect("/welcome");
	const [here, me] = [await peopleHere(read), await currentPerson()];
	return (
		<Stack>
			<PageHead
				title="Who is this?"
				lead="Every entry in the book says who made it. This phone or computer remembers you; there is no password, so lend it with care."
			/>
			<ChoosePerson people={here} me={me?.id ?? null} />
			<ButtonLink href="/people">All people, rates and the shop</ButtonLink>
		</Stack>
	);
}
