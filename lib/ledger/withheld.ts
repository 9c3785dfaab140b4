// Which columns an entry keeps out of its open part: prices, and the names and addresses of people outside the shop.

/** Table to withheld columns. A table that is not named here withholds nothing. */
export const WITHHELD: Readonly<Record<string, readonly string[]>> = {
	Party: ["name", "contact"],
	Rate: ["costMinor", "chargeMinor"],
	Machine: ["priceMinor", "carriageMinor", "soldMinor"],
	Evidence: ["whoSaid"],
	Note: ["whoSaid"],
	Alteration: ["agreedBy"],
	Decision: ["agreedBy"],
	DecisionOption: ["costMinor"],
	Purchase: ["discountMinor", "freightMinor", "dutyMinor", "handlingMinor", "taxMinor", "paidMinor"],
	PurchaseLine: ["netMinor", "landedMinor"],
	LineUse: ["amountMinor"],
	CostLine: ["estimatedMinor", "spentMinor"],
	Credit: ["amountMinor"],
	Wanted: ["estimatedMinor"],
	OwnerPaper: ["limitMinor", "agreedBy"],
	OwnerPaperLine: ["netMinor"],
	Payment: ["amountMinor"],
};
