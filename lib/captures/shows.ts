// What a capture shows, as one choice of a list: "positionId=ID&partId=ID". Pure.

const KINDS = ["positionId", "partId", "bagId", "stepId"] as const;
type Shows = { readonly [Kind in (typeof KINDS)[number]]?: string };

export const writeShows = (shows: Shows): string => KINDS.flatMap((kind) => (shows[kind] ? [`${kind}=${shows[kind]}`] : [])).join("&");

/** The kinds that are named; null when it is no such choice. */
export function readShows(text: string): Shows | null {
	if (text === "") return {};
	const named: Record<string, string> = {};
	for (const piece of text.split("&")) {
		const [kind = "", id = "", ...more] = piece.split("=");
		if (!KINDS.some((known) => known === kind) || id === "" || id.length > 64 || more.length > 0 || kind in named) return null;
		named[kind] = id;
	}
	return named;
}
