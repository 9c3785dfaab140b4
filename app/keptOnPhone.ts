// What a person has scanned and not yet sent stays in this browser, through a reload or an empty battery.

/** What was kept under this name; null when there is nothing, or the browser keeps nothing. */
export function keptWords(name: string): readonly string[] | null {
	try {
		const kept: unknown = JSON.parse(localStorage.getItem(`asfound-${name}`) ?? "null");
		return Array.isArray(kept) ? kept.filter((word): word is string => typeof word === "string") : null;
	} catch {
		return null;
	}
}

/** Keeps words under a name; none at all are forgotten. */
export function keepWords(name: string, words: readonly string[]): void {
	try {
		if (words.length === 0) localStorage.removeItem(`asfound-${name}`);
		else localStorage.setItem(`asfound-${name}`, JSON.stringify(words));
	} catch {
		// A browser that keeps nothing only forgets it with the page.
	}
}
