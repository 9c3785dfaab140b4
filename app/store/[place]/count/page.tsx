import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Bench } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { PageHead } from "@/app/ui/pageHead";
import { shopStore } from "@/lib/db/shopStore";
import { locationPath, whatLiesAt } from "@/lib/store/queries";
import "@/app/machines/[machine]/bench.css";
import { CountRun } from "./countRun";

type Params = Promise<{ place: string }>;

export const metadata: Metadata = { title: "Count" };

/** What lies right at a place, held against the book: tick or scan what is there. */
export default async function CountPage({ params }: { params: Params }) {
	const { place: id } = await params;
	const { read } = await shopStore();
	const [path, here] = await Promise.all([locationPath(read, id), whatLiesAt(read, id)]);
	if (path === null) notFound();
	const expected = [
		...here.bags.map((bag) => ({ id: bag.id, tag: bag.tag, name: bag.words })),
		...here.parts.map((part) => ({ id: part.id, tag: part.tag, name: part.name })),
	];
	return (
		<Bench>
			<PageHead
				title={`Count ${path.split(" · ").at(-1)}`}
				above={<Link href={`/store/${id}`}>{path}</Link>}
				lead="Scan or tick what is there. A bag counts as one; what is in it is on its own page."
			/>
			<CountRun place={{ id, path }} expected={expected} />
		</Bench>
	);
}
