import type { CSSProperties, ReactNode } from "react";
import { padsToDecimal } from "./decimals";
import { Link } from "./link";

type ColumnBase<Row> = {
	readonly key: string;
	/** Short; also the label of the value when rows are stacked on a phone. */
	readonly head: string;
	/** Keeps the head for screen readers only (a column of buttons, of boxes to tick). */
	readonly hideHead?: boolean;
	/** The column that names the row: bold, a row header, and the title of the stacked card. */
	readonly main?: boolean;
	/** A second, smaller line under the value. */
	readonly sub?: (row: Row) => ReactNode;
	/** Sorting lives in the address: where the head leads, and how this column is sorted now. */
	readonly sort?: { readonly href: string; readonly now?: "up" | "down" | undefined };
	readonly width?: string;
	/** The sum under the column. */
	readonly foot?: ReactNode;
};

/** "decimal" columns give the figure as text and are lined up on the decimal sign. */
export type Column<Row> =
	| (ColumnBase<Row> & { readonly align?: "left" | "right"; readonly cell: (row: Row) => ReactNode })
	| (ColumnBase<Row> & { readonly align: "decimal"; readonly cell: (row: Row) => string | null });

export type TableProps<Row> = {
	/** Says what the table lists; shown only with `showCaption`. */
	readonly caption: string;
	readonly showCaption?: boolean;
	readonly columns: readonly Column<Row>[];
	readonly rows: readonly Row[];
	readonly rowKey: (row: Row) => string;
	/** What stands in place of the table when there is no row. */
	readonly empty?: ReactNode;
	/** "narrow" (rows become short cards where the room is small) or "never". */
	readonly stack?: "narrow" | "never";
	readonly className?: string;
	readonly rowStyle?: (row: Row) => CSSProperties;
};

/** Dense and calm. Every list is bounded: hand in one page of rows, and a Pager under it. */
export function Table<Row>({
	caption,
	showCaption,
	columns,
	rows,
	rowKey,
	empty,
	stack = "narrow",
	className = "",
	rowStyle,
}: TableProps<Row>) {
	if (rows.length === 0 && empty) return empty;
	const pads = new Map(
		columns.flatMap((column) =>
			column.align === "decimal" ? [[column.key, padsToDecimal(rows.map((row) => column.cell(row) ?? ""))] as const] : [],
		),
	);
	const footed = columns.some((column) => column.foot !== undefined);
	return (
		<div className="af-tablewrap" data-columns={columns.length <= 3 ? "few" : columns.length <= 5 ? "some" : "many"}>
			<table className={`af-table ${className}`} data-stack={stack === "narrow" ? "" : undefined}>
				<caption className={showCaption ? undefined : "sr-only"}>{caption}</caption>
				<thead>
					<tr>
						{columns.map((column) => (
							<Head key={column.key} column={column} />
						))}
					</tr>
				</thead>
				<tbody>
					{rows.map((row, index) => (
						<tr key={rowKey(row)} style={rowStyle?.(row)}>
							{columns.map((column) => (
								<Cell key={column.key} column={column} row={row} pad={pads.get(column.key)?.[index]} />
							))}
						</tr>
					))}
				</tbody>
				{footed ? (
					<tfoot>
						<tr>
							{columns.map((column) => (
								<td
									key={column.key}
									data-align={column.align}
									data-label={column.main ? undefined : column.head}
									data-none={column.foot === undefined ? "" : undefined}
								>
									{column.foot}
								</td>
							))}
						</tr>
					</tfoot>
				) : null}
			</table>
		</div>
	);
}

function Head<Row>({ column }: { column: Column<Row> }) {
	const { sort } = column;
	return (
		<th
			scope="col"
			data-align={column.align}
			style={column.width ? { width: column.width } : undefined}
			aria-sort={sort?.now === "up" ? "ascending" : sort?.now === "down" ? "descending" : undefined}
		>
			{column.hideHead ? <span className="sr-only">{column.head}</span> : sort ? <Sorter head={column.head} sort={sort} /> : column.head}
		</th>
	);
}

function Sorter({ head, sort }: { head: string; sort: { readonly href: string; readonly now?: "up" | "down" | undefined } }) {
	return (
		<Link href={sort.href} scroll={false}>
			{head}
			<svg className="af-sortmark" viewBox="0 0 10 10" aria-hidden="true">
				{sort.now === "down" ? null : <path d="M1 4.2 5 0l4 4.2z" fill="currentColor" />}
				{sort.now === "up" ? null : <path d="M1 5.8 5 10l4-4.2z" fill="currentColor" />}
			</svg>
		</Link>
	);
}

function Cell<Row>({ column, row, pad }: { column: Column<Row>; row: Row; pad: string | undefined }) {
	const value = column.cell(row);
	const sub = column.sub?.(row);
	const nothing = (value === null || value === undefined || value === "") && !sub;
	const Tag = column.main ? "th" : "td";
	return (
		<Tag
			scope={column.main ? "row" : undefined}
			className={column.main ? "af-col-main" : undefined}
			data-align={column.align}
			data-label={column.main || column.hideHead ? undefined : column.head}
			data-bare={column.hideHead ? "" : undefined}
			data-none={nothing ? "" : undefined}
		>
			<div>
				{value}
				{pad ? <span className="af-pad" data-pad={pad} /> : null}
				{sub ? <span className="af-sub">{sub}</span> : null}
			</div>
		</Tag>
	);
}
