const decimalPart = /[.,](\d+)(?=\D*$)/;

/** What to add, unseen, after each figure so that the decimal signs stand under each other. Figures as shown, "1 234.50". */
export function padsToDecimal(figures: readonly string[]): string[] {
	const tails = figures.map((figure) => decimalPart.exec(figure)?.[0] ?? "");
	const longest = tails.reduce((best, tail) => (tail.length > best.length ? tail : best), "");
	return tails.map((tail) => (tail ? longest.slice(tail.length) : longest));
}
