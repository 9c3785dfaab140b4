// Rows as SQL. Table and column names come from the code, values are always bound.

export type Statement = { readonly sql: string; readonly values: readonly (string | number | null)[] };
type Row = Readonly<Record<string, string | number | null>>;

/** SQLite takes 32,766 bound values a statement; the adapter fewer. */
const MOST_VALUES = 900;

const named = (name: string): string => `"${name}"`;

/** Inserts rows of one table, all with the same columns; several statements where there are too many values for one. */
export function insertStatements(table: string, rows: readonly Row[]): Statement[] {
	const columns = Object.keys(rows[0] ?? {});
	const most = Math.max(1, Math.floor(MOST_VALUES / columns.length));
	const statements: Statement[] = [];
	for (let start = 0; start < rows.length; start += most) {
		const part = rows.slice(start, start + most);
		const tuple = `(${columns.map(() => "?").join(",")})`;
		statements.push({
			sql: `INSERT INTO ${named(table)} (${columns.map(named).join(",")}) VALUES ${part.map(() => tuple).join(",")}`,
			values: part.flatMap((row) => columns.map((column) => row[column] ?? null)),
		});
	}
	return statements;
}

/** Writes the whole row again, by its id. */
export function updateStatement(table: string, row: Row): Statement {
	const columns = Object.keys(row).filter((column) => column !== "id");
	return {
		sql: `UPDATE ${named(table)} SET ${columns.map((column) => `${named(column)}=?`).join(",")} WHERE "id"=?`,
		values: [...columns.map((column) => row[column] ?? null), row.id ?? null],
	};
}
