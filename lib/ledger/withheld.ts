// Which columns an entry keeps out of its open part: prices, the names and addresses of people outside the shop, and free
// words in which such things are written all the same.

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
	/** In the seller's words stands what they kept for restocking. */
	Credit: ["amountMinor", "words"],
	Wanted: ["estimatedMinor"],
	/** How an answer came says who gave it: "on the phone, the daughter". */
	OwnerPaper: ["limitMinor", "agreedBy", "answerHow"],
	OwnerPaperLine: ["netMinor"],
	/** How it was paid, and by whom. */
	Payment: ["amountMinor", "words"],
	/** Why somebody is not in is nobody's business. */
	DayOff: ["words"],
};
