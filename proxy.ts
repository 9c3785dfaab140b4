// The guard at the door: only under names that are ours, writes only from our own pages, and a policy for what a page may load.

import { type NextRequest, NextResponse } from "next/server";

/** Names besides addresses and localhost under which the shop may be called: `ASFOUND_HOSTS=shop.example,bench.example`. */
const named = new Set((process.env.ASFOUND_HOSTS ?? "").split(",").flatMap((name) => name.trim().toLowerCase() || []));

/**
 * Why a request may not pass, as a sentence that says what to do, or undefined.
 *
 * A page elsewhere must not write here: a browser names the page's origin with every write. And a name elsewhere must not
 * lead here (DNS rebinding): a plain address, localhost, a name without a dot and a `.local` name cannot be owned by a
 * stranger; any other name must have been set. The upload route, which this proxy must not touch, calls this itself.
 */
export function refusalOf(request: Pick<Request, "method" | "headers">): string | undefined {
	const host = (request.headers.get("host") ?? "").toLowerCase();
	const name = host.replace(/:\d+$/, "");
	const ours =
		named.has(name) || /^(\d{1,3}\.){3}\d{1,3}$/.test(name) || /^\[[0-9a-f:.]+\]$/.test(name) || /^[a-z0-9-]+(\.local)?$/.test(name);
	if (!ours)
		return `This shop does not answer under the name ${JSON.stringify(name)}. Add it to ASFOUND_HOSTS, or use the machine's address.`;
	if (request.method === "GET" || request.method === "HEAD") return;
	const site = request.headers.get("sec-fetch-site");
	const origin = request.headers.get("origin");
	const own = origin !== null && URL.canParse(origin) && new URL(origin).host === host;
	if (!own || (site && site !== "same-origin" && site !== "none"))
		return "Only the shop's own pages may change something in it. Open the page anew and try again.";
}

export function proxy(request: NextRequest) {
	const refusal = refusalOf(request);
	if (refusal) return new NextResponse(`${refusal}\n`, { status: 403, headers: { "content-type": "text/plain; charset=utf-8" } });
	if (request.nextUrl.pathname.startsWith("/api/")) return NextResponse.next();

	const nonce = btoa(crypto.randomUUID());
	const dev = process.env.NODE_ENV === "development";
	const policy = [
		"default-src 'self'",
		`script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${dev ? " 'unsafe-eval'" : ""}`,
		`style-src 'self' ${dev ? "'unsafe-inline'" : `'nonce-${nonce}'`}`,
		"style-src-attr 'unsafe-inline'", // bars and spots are placed by style attributes
		"img-src 'self' blob: data:",
		"font-src 'self'",
		"object-src 'none'",
		"base-uri 'none'",
		"form-action 'self'",
		"frame-ancestors 'none'",
	].join("; ");
	const headers = new Headers(request.headers);
	headers.set("x-nonce", nonce);
	headers.set("content-security-policy", policy); // Next reads the nonce for its own scripts from here
	const response = NextResponse.next({ request: { headers } });
	response.headers.set("content-security-policy", policy);
	response.headers.set("x-content-type-options", "nosniff");
	response.headers.set("referrer-policy", "same-origin");
	return response;
}

// A body that passes through here is cut at 10 MB, so uploads do not.
export const config = { matcher: ["/((?!_next/static|_next/image|api/upload).*)"] };
