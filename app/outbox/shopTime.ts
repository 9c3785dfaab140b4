// The shop's clock, as a phone knows it: what was done is kept with the shop's time, and phones run ahead or behind.

/** Milliseconds by which the phone is ahead of the shop; null until the shop's clock was heard. */
let ahead: number | null = null;

/** What is heard often is heard late by more or less: only a clock that was set is taken anew, so that no two deeds change places. */
const SET_ANEW_MS = 5000;

/** Tells the page what the shop's clock said, and when the phone heard it by its own. */
export function hearShopTime(now: string | null, heardAt: number = Date.now()): void {
	const millis = Date.parse(now ?? "");
	if (Number.isNaN(millis)) return;
	const heard = heardAt - millis;
	if (ahead === null || Math.abs(heard - ahead) > SET_ANEW_MS) ahead = heard;
}

/** The moment by the shop's clock: now, or another one that the phone's clock said. */
export const shopTime = (phoneMillis: number = Date.now()): string => new Date(phoneMillis - (ahead ?? 0)).toISOString();
