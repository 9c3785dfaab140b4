/** 1st, 2nd, 3rd, 4th, 11th. Requires a whole number from 1. */
export function ordinal(count: number): string {
	const teen = count % 100 >= 11 && count % 100 <= 13;
	const ending = teen ? "th" : (["th", "st", "nd", "rd"][count % 10] ?? "th");
	return `${count}${ending}`;
}
