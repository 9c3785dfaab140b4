// The shop's clock, as a phone knows it: what was done is kept with the shop's time, and phones run ahead or behind.

let ahead = 0;

/** Tells the page what the shop's clock said when the page was made. */
export function hearShopTime(now: string): void {
	const millis = Date.parse(now);
	if (!Number.isNaN(millis)) ahead = Date.now() - millis;
}

/** The moment by the shop's clock: now, or another one that the phone's clock said. */
export const shopTime = (phoneMillis: number = Date.now()): string => new Date(phoneMillis - ahead).toISOString();
