import Link from "next/link";
import type { CSSProperties, ReactNode } from "react";
import { type MarkState, markWords, OriginalityMark } from "./originalityMark";
import { type Column, Table } from "./table";

export type TreeRow = {
	readonly id: string;
	readonly name: string;
	/** 0 for what the machine itself hosts, 1 for what sits on that, and so on. */
	readonly depth: number;
	readonly mark?: MarkState;
	readonly href?: string;
	/** Hosts others: its name is bold. */
	readonly hosts?: boolean;
};

/** Positions under their hosts, in building order, with the given columns beside them. Rows come in the order shown. */
export function Tree<Row extends TreeRow>({
	caption,
	head = "Position",
	rows,
	columns,
	empty,
}: {
	readonly caption: string;
	readonly head?: string;
	readonly rows: readonly Row[];
	readonly columns: readonly Column<Row>[];
	readonly empty?: ReactNode;
}) {
	const first: Column<Row> = {
		key: "tree-position",
		head,
		main: true,
		cell: (row) => (
			<span className="af-treecell" data-host={row.hosts ? "" : undefined}>
				{row.mark ? <OriginalityMark state={row.mark} says={markWords[row.mark]} /> : null}
				<span>
					{row.depth > 0 ? <span className="sr-only">level {row.depth + 1}: </span> : null}
					{row.href ? <Link href={row.href}>{row.name}</Link> : row.name}
				</span>
			</span>
		),
	};
	return (
		<Table
			className="af-tree"
			caption={caption}
			columns={[first, ...columns]}
			rows={rows}
			rowKey={(row) => row.id}
			rowStyle={(row) => ({ "--depth": Math.min(row.depth, 6) }) as CSSProperties}
			empty={empty}
		/>
	);
}
