/** A piece of an address as it was meant; one that is no text (a broken percent sign) as it stands, so that the page can say it knows no such thing. */
export function decoded(piece: string): string {
	try {
		return decodeURIComponent(piece);
	} catch (error) {
		if (error instanceof URIError) return piece;
		throw error;
	}
}
