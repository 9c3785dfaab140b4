import type { Metadata } from "next";
import { Bench } from "@/app/ui/layouts";
import { shopStore } from "@/lib/db/shopStore";
import { locationPath, pathsOf, placesInOrder } from "@/lib/store/queries";
import { type Scanned, scannedThing } from "@/lib/store/scanned";
import "@/app/machines/[machine]/bench.css";
import "../store.css";
import { MoveRun } from "./moveRun";

export const metadata: Metadata = { title: "Put away" };

const MOST_ASKED = 50;

/** Things one after the other, then the place: `?tags=12-0208-Q,12-0210-1` lays them in the list, `?to=ID` names the place. */
export default async function MovePage({ searchParams }: { searchParams: Promise<{ tags?: string | string[]; to?: string | string[] }> }) {
	const { tags, to } = await searchParams;
	const { read } = await shopStore();
	const asked = typeof tags === "string" ? tags.split(",").filter(Boolean).slice(0, MOST_ASKED) : [];
	const [found, places, path] = await Promise.all([
		Promise.all(asked.map((tag) => scannedThing(read, tag))),
		placesInOrder(read),
		typeof to === "string" ? locationPath(read, to) : null,
	]);
	return (
		<Bench>
			<header>
				<h1>Put away</h1>
				<p className="af-lead">Scan what it is, one after the other, then the place or the bag where it goes.</p>
			</header>
			<MoveRun
				first={found.flatMap((one): Scanned[] => (one.ok ? [one.value] : []))}
				places={pathsOf(places)}
				to={typeof to === "string" && path !== null ? { kind: "location", id: to, words: path } : null}
			/>
		</Bench>
	);
}
