/** A print-out as the answer to a request: opened in the browser, kept nowhere on the way. */
export const pdfAnswer = (pdf: Buffer, name: string, headers: Readonly<Record<string, string>> = {}): Response =>
	new Response(new Uint8Array(pdf), {
		headers: {
			"content-type": "application/pdf",
			"content-disposition": `inline; filename="${name}.pdf"`,
			"cache-control": "no-store",
			...headers,
		},
	});

/** A sentence in place of a print-out. */
export const words = (status: number, say: string): Response =>
	new Response(`${say}\n`, { status, headers: { "content-type": "text/plain; charset=utf-8", "cache-control": "no-store" } });
