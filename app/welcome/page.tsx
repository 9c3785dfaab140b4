import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { Card } from "@/app/ui/card";
import { Stack } from "@/app/ui/layouts";
import { PageHead } from "@/app/ui/pageHead";
import { shopStore } from "@/lib/db/shopStore";
import { theShop } from "@/lib/shop/queries";
import { OpenShopForm } from "./openShopForm";

export const metadata: Metadata = { title: "Open the book" };

export default async function WelcomePage() {
	const { read } = await shopStore();
	if (await theShop(read)) redirect("/");
	return (
		<Stack>
			<PageHead
				title="Open the shop's book"
				lead="Asfound keeps the whole job of restoring a coin-operated machine: what was found, what came out and where it lies, what went in, what it cost, and the way back. The book is empty; these few answers open it."
			/>
			<Card>
				<OpenShopForm />
			</Card>
		</Stack>
	);
}
