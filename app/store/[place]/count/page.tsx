import type { Metadata } from "next";
import { notFound, redirect } from "next/navigation";
import { Bench } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { systemClock } from "@/lib/core/clock";
import { addDays, dayOf, formatDay } from "@/lib/core/days";
import { shopStore } from "@/lib/db/shopStore";
import { theShop } from "@/lib/shop/queries";
import { lyingFor } from "@/lib/store/counting";
import { locationPath, pathsOf, placesInOrder } from "@/lib/store/queries";
import "@/app/machines/[machine]/bench.css";
import "../../store.css";
import { CountRun } from "./countRun";

type Params = Promise<{ place: string }>;

export const metadata: Metadata = { title: "Count" };

/** Ticks of a count that was broken off are good for so many days. */
const DAYS_GOOD = 2;

/** What lies at a place, and with `?inside=yes` in the places in it, held against the book: tick or scan what is there. */
export default async function CountPage({
	params,
	searchParams,
}: {
	params: Params;
	searchParams: Promise<{ inside?: string | string[] }>;
}) {
	const { place: id } = await params;
	const inside = (await searchParams).inside === "yes";
	const { read } = await shopStore();
	const path = await locationPath(read, id);
	if (path === null) notFound();
	const shop = await theShop(read);
	if (!shop) redirect("/welcome");
	const [expected, places, rooms] = await Promise.all([
		lyingFor(read, id, inside),
		placesInOrder(read),
		read.location.count({ where: { parentId: id } }),
	]);
	const today = dayOf(systemClock(), shop.timeZone);
	const days = { today, words: formatDay(today), stillGood: addDays(today, -DAYS_GOOD) };
	const name = path.split(" · ").at(-1) ?? path;
	return (
		<Bench>
			{/* Not the frame's page head, which a phone leaves out on a bench page: here it says what is counted. */}
			<header>
				<p className="af-sub">
					<Link href={`/store/${id}`}>{path}</Link>
				</p>
				<h1>Count {name}</h1>
				<p className="af-lead">
					{inside ? "What lies in the places in it counts, too." : "Scan or tick what lies right on it."} A bag counts as one thing.
				</p>
				{rooms === 0 ? null : (
					<Link className="af-button" href={inside ? `/store/${id}/count` : `/store/${id}/count?inside=yes`}>
						{inside ? "Only what lies right on it" : "With the places in it"}
					</Link>
				)}
			</header>
			{expected === null ? (
				<Notice means="wait" live="off">
					More lies here than one count holds. Count the places in it one by one.
				</Notice>
			) : (
				<CountRun
					key={inside ? "inside" : "right on it"}
					place={{ id, name, inside }}
					expected={expected}
					places={pathsOf(places)}
					days={days}
				/>
			)}
		</Bench>
	);
}
