// What stands on a bag in big words. Pure.

/** The words of a bag; where they are the name of one of several parts in it, "left lamp and 2 more". */
export function titleOf(words: string, parts: readonly { readonly name: string }[]): string {
	const same = (name: string): boolean => name.toLowerCase() === words.toLowerCase();
	return parts.length > 1 && parts.some(({ name }) => same(name)) ? `${words} and ${parts.length - 1} more` : words;
}
