// A purchase of so many lines, for tests of what becomes of it.

import { buy } from "@/lib/purchases/changes";
import { buySchema } from "@/lib/purchases/schema";
import { done } from "@/tests/steps/aCrew";
import type { FreshShop } from "@/tests/support/freshShop";

export type Line = { readonly what: string; readonly count: string; readonly net: string; readonly unit?: string };

/** Bought on 2 March 2026; here already if `arrivedDay` is given. */
export const aPurchase = async (shop: FreshShop, lines: readonly Line[], more: object = {}) =>
	done(await buy(buySchema("EUR").parse({ supplierName: "A dealer", orderedDay: "2026-03-02", lines, ...more }), shop.env()));

export const HERE = { arrivedDay: "2026-03-05" } as const;
