// Rows as SQL. Table and column names come from the code, values are always bound.

type Value = string | number | null;
export type Statement = { readonly sql: string; readonly values: readonly Value[] };
type Row = Readonly<Record<string, Value>>;

const named = (name: string): string => `"${name}"`;

/** Adds a row. The text is the same for every row of a table, so that it is prepared once. */
export function insertStatement(table: string, row: Row): Statement {
	const columns = Object.keys(row);
	return {
		sql: `INSERT INTO ${named(table)} (${columns.map(named).join(",")}) VALUES (${columns.map(() => "?").join(",")})`,
		values: columns.map((column) => row[column] ?? null),
	};
}

/** Writes the whole row again, by its id. */
export function updateStatement(table: string, row: Row): Statement {
	const columns = Object.keys(row).filter((column) => column !== "id");
	return {
		sql: `UPDATE ${named(table)} SET ${columns.map((column) => `${named(column)}=?`).join(",")} WHERE "id"=?`,
		values: [...columns.map((column) => row[column] ?? null), row.id ?? null],
	};
}
