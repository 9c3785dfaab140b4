import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { Stack } from "@/app/ui/layouts";
import { PageHead } from "@/app/ui/pageHead";
import { systemClock } from "@/lib/core/clock";
import { dayOf } from "@/lib/core/days";
import { shopStore } from "@/lib/db/shopStore";
import { nextMachineNumber, wordsUsed } from "@/lib/machines/queries";
import { parties } from "@/lib/parties/queries";
import { theShop } from "@/lib/shop/queries";
import { TakeInForm } from "./takeInForm";

export const metadata: Metadata = { title: "Take in a machine" };

export default async function TakeInPage() {
	const { read } = await shopStore();
	const shop = await theShop(read);
	if (!shop) redirect("/welcome");
	const [next, known, used] = await Promise.all([nextMachineNumber(read), parties(read), wordsUsed(read)]);
	return (
		<Stack>
			<PageHead
				title="Take in a machine"
				lead="What is known at the door. All of it can be corrected later; then come the positions, as they are found."
			/>
			<TakeInForm
				nextNumber={next}
				today={dayOf(systemClock(), shop.timeZone)}
				currency={shop.currency}
				parties={known.map(({ id, name }) => ({ id, name }))}
				used={used}
			/>
		</Stack>
	);
}
