// Hands out a table as a file. The proxy has let the request in already (lib/http/guard.ts), as it does for every page.

import { type CsvTable, csvOf } from "@/lib/core/csv";

/** The answer with the table. `name` is of letters, figures and dashes. */
export const serveCsv = (table: CsvTable, name: string): Response =>
	new Response(csvOf(table), {
		headers: {
			"content-type": "text/csv; charset=utf-8",
			"content-disposition": `attachment; filename="${name}.csv"`,
			"x-content-type-options": "nosniff",
			"cross-origin-resource-policy": "same-origin",
			"cache-control": "no-store",
		},
	});

/** In place of a table that cannot be made: what to do. */
export const saidInWords = (status: number, say: string): Response =>
	new Response(`${say}\n`, { status, headers: { "content-type": "text/plain; charset=utf-8", "cache-control": "no-store" } });
