import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { Stack } from "@/app/ui/layouts";
import { PageHead } from "@/app/ui/pageHead";
import { systemClock } from "@/lib/core/clock";
import { dayOf } from "@/lib/core/days";
import { shopStore } from "@/lib/db/shopStore";
import { currenciesToChoose, currencyName } from "@/lib/money/currency";
import { parties } from "@/lib/parties/queries";
import { currenciesBoughtIn } from "@/lib/purchases/queries";
import { theShop } from "@/lib/shop/queries";
import { BuyForm } from "./buyForm";

export const metadata: Metadata = { title: "Enter a purchase" };

export default async function NewPurchasePage() {
	const { read } = await shopStore();
	const shop = await theShop(read);
	if (!shop) redirect("/welcome");
	const [suppliers, used] = await Promise.all([parties(read, ["supplier"]), currenciesBoughtIn(read)]);
	return (
		<Stack>
			<PageHead
				title="Enter a purchase"
				lead="As it stands on the paper. Discount, freight, duty and tax are spread over the lines, so that the lines add up to what was paid."
			/>
			<BuyForm
				home={shop.currency}
				today={dayOf(systemClock(), shop.timeZone)}
				suppliers={suppliers.map(({ id, name }) => ({ value: id, label: name }))}
				currencies={currenciesToChoose(shop.currency, used).map((code) => ({ value: code, label: `${code}, ${currencyName(code)}` }))}
			/>
		</Stack>
	);
}
