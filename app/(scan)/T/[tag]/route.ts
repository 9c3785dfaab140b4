// A label's code is in capitals, so that it stays coarse enough to scan. In a folder of its own: on a disk that does not
// tell capitals from small letters, app/T and app/t would be one.

import { decoded } from "@/app/decoded";
import { readTag } from "@/lib/tags/readTag";

/** Leads a scanned code to the page of its part or bag. */
export async function GET(_: Request, { params }: { params: Promise<{ tag: string }> }): Promise<Response> {
	const { tag } = await params;
	const read = readTag(decoded(tag));
	const page = read.ok ? read.value.tag : encodeURIComponent(decoded(tag));
	return new Response(null, { status: 308, headers: { location: `/t/${page}` } });
}
