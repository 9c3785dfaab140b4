// The guard at the door: only under names that are ours, and writes only from our own pages.
// The proxy calls it for every page; the upload route, which the proxy must not touch (it would cut the body), calls it itself.

/** Names besides addresses and localhost under which the shop may be called. */
const named = new Set(
	[...(process.env.ASFOUND_HOSTS ?? "").split(","), (process.env.ASFOUND_ADDRESS ?? "").replace(/:\d+$/, "")].flatMap(
		(name) => name.trim().toLowerCase() || [],
	),
);

const PLAIN_ADDRESS = /^(\d{1,3}\.){3}\d{1,3}$|^\[[0-9a-f:.]+\]$/;
const LOCAL_NAME = /^[a-z0-9-]+(\.local)?$/;

/**
 * Why a request may not pass, as a sentence that says what to do, or undefined.
 *
 * A page elsewhere must not write here: a browser names the page's origin with every write. And a name elsewhere must not
 * lead here (DNS rebinding): a plain address, localhost, a name without a dot and a `.local` name cannot be owned by a
 * stranger; any other name must have been set.
 */
export function refusalOf(request: Pick<Request, "method" | "headers">): string | undefined {
	const host = (request.headers.get("host") ?? "").toLowerCase();
	const name = host.replace(/:\d+$/, "");
	if (!(named.has(name) || PLAIN_ADDRESS.test(name) || LOCAL_NAME.test(name)))
		return `This shop does not answer under the name ${JSON.stringify(name)}. Add it to ASFOUND_HOSTS, or use the machine's address.`;
	if (request.method === "GET" || request.method === "HEAD") return;
	const site = request.headers.get("sec-fetch-site");
	const origin = request.headers.get("origin");
	const own = origin !== null && URL.canParse(origin) && new URL(origin).host === host;
	if (!own || (site && site !== "same-origin" && site !== "none"))
		return "Only the shop's own pages may change something in it. Open the page anew and try again.";
}
