import type { Metadata } from "next";
import { Bench } from "@/app/ui/layouts";
import { PageHead } from "@/app/ui/pageHead";
import { WaitingList } from "./waitingList";

export const metadata: Metadata = { title: "On this phone" };

/** What this phone keeps for the shop: waiting, refused, and labels asked for. */
export default function PhonePage() {
	return (
		<Bench>
			<PageHead
				title="On this phone"
				lead="What was done at the bench and is not in the shop's book yet. It goes by itself, in order, once."
			/>
			<WaitingList />
		</Bench>
	);
}
