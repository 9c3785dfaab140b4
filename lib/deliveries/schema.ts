import { z } from "zod";
import { dayField } from "@/lib/core/dayFields";
import { chosen, line, optionalChosen, optionalLine } from "@/lib/core/words";
import { countOrNone } from "@/lib/purchases/fields";

/** So much of these lines came on a day, to a place. Lines of which nothing came may be left empty. */
export const deliverSchema = z.object({
	purchaseId: chosen("the purchase"),
	day: dayField("it came"),
	locationId: optionalChosen,
	words: optionalLine("the note", 200),
	lines: z.array(z.object({ lineId: chosen("the line"), count: countOrNone })).max(200, "At most 200 lines a purchase."),
});

/** All that is still in the post came. */
export const arriveSchema = z.object({
	purchaseId: chosen("the purchase"),
	arrivedDay: dayField("it arrived"),
	locationId: optionalChosen,
});

export const voidDeliverySchema = z.object({ deliveryId: chosen("the delivery"), why: line("why it was entered in error", 200) });

export type Deliver = z.output<typeof deliverSchema>;
export type Arrive = z.output<typeof arriveSchema>;
export type VoidDelivery = z.output<typeof voidDeliverySchema>;
