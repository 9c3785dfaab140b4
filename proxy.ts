// The guard at the door: only under names that are ours, writes only from our own pages, and a policy for what a page may load.

import { type NextRequest, NextResponse } from "next/server";
import { refusalOf } from "@/lib/http/guard";

export function proxy(request: NextRequest) {
	const refusal = refusalOf(request);
	if (refusal) return new NextResponse(`${refusal}\n`, { status: 403, headers: { "content-type": "text/plain; charset=utf-8" } });
	// Answers of a program, and files that people brought: the files carry a stricter policy of their own.
	if (/^\/(api|files)\//.test(request.nextUrl.pathname)) return NextResponse.next();

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
