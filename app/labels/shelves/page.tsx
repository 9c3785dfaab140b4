import type { Metadata } from "next";
import { Button } from "@/app/ui/button";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { PageHead } from "@/app/ui/pageHead";
import { SelectField } from "@/app/ui/selectField";
import { shopStore } from "@/lib/db/shopStore";
import { labelFonts } from "@/lib/labels/labelFonts";
import { shelvesAddressSchema } from "@/lib/labels/schema";
import { MOST_SHEETS, shelvesOf } from "@/lib/labels/shelfQueries";
import { shelfSheet } from "@/lib/labels/shelfSheet";
import { A4, LETTER } from "@/lib/labels/stock";
import { requireShop } from "@/lib/shop/queries";
import { placesInOrder, tagsOfPlaces } from "@/lib/store/queries";
import "../labels.css";
import { LabelPaper } from "../labelPaper";
import { TagShelvesForm } from "./tagShelvesForm";

export const metadata: Metadata = { title: "Sheets for shelves" };

type Search = Promise<Record<string, string | string[] | undefined>>;
const PAPERS = [
	{ value: "a4", label: "A4" },
	{ value: "letter", label: "US Letter" },
];
/** Sheets that are shown; all are printed. */
const MOST_SHOWN = 12;

/** Choose places, see their sheets, print them. */
export default async function ShelvesPage({ searchParams }: { searchParams: Search }) {
	const asked = await searchParams;
	const chosen = [asked.place ?? []].flat();
	const { read } = await shopStore();
	await requireShop(read);
	const [places, tags] = await Promise.all([placesInOrder(read), tagsOfPlaces(read)]);
	const said = shelvesAddressSchema.safeParse({ places: chosen, paper: asked.paper });
	const isTooMany = chosen.length > MOST_SHEETS;
	const paper = said.success ? said.data.paper : "a4";
	const shelves = said.success ? await shelvesOf(read, said.data.places) : [];
	const type = labelFonts();
	const untagged = said.success ? said.data.places.filter((id) => !tags.has(id) && places.some((place) => place.id === id)) : [];
	const pdf = `/labels/pdf/shelves?${new URLSearchParams([...chosen.map((id) => ["place", id]), ["paper", paper]])}`;
	return (
		<Stack>
			<PageHead
				title="Sheets for shelves"
				lead="The name in letters as large as fit, to be read from across the room."
				actions={
					shelves.length > 0 ? (
						<a className="af-button" data-kind="main" href={pdf} target="_blank" rel="noopener">
							{shelves.length === 1 ? "Print the sheet" : `Print ${shelves.length} sheets`}
						</a>
					) : null
				}
			/>
			{isTooMany ? (
				<Notice means="stop" title="Too many">
					Print at most {MOST_SHEETS} sheets at a time: choose fewer.
				</Notice>
			) : null}
			{untagged.length > 0 ? (
				<Notice
					means="wait"
					live="off"
					title={untagged.length === 1 ? "One of them has no tag yet" : `${untagged.length} of them have no tag yet`}
				>
					<p>Without a tag its sheet has no code, and a phone cannot open the shelf from it.</p>
					<TagShelvesForm key={untagged.join()} locationIds={untagged} />
				</Notice>
			) : null}
			<Columns>
				<Card title="As they will be">
					{shelves.length === 0 ? <Empty title="No place is chosen">Tick the places beside, and show their sheets.</Empty> : null}
					<ul className="flex flex-col gap-4">
						{shelves.slice(0, MOST_SHOWN).map((shelf) => (
							<li key={[...shelf.way, shelf.name].join("/")}>
								<LabelPaper drawing={shelfSheet(shelf, paper === "letter" ? LETTER : A4, type)} size="whole-page" />
							</li>
						))}
					</ul>
					{shelves.length > MOST_SHOWN ? (
						<p className="af-sub pt-3">And {shelves.length - MOST_SHOWN} more, which are printed, too.</p>
					) : null}
				</Card>
				<Card title="Which places">
					{places.length === 0 ? (
						<Empty title="No places yet">
							<Link href="/store">Name the rooms, racks and shelves</Link> first.
						</Empty>
					) : (
						<form action="/labels/shelves" className="flex flex-col gap-2">
							<fieldset className="af-field">
								<legend className="af-label">Places</legend>
								{places.map((place) => (
									<label key={place.id} className="af-check" style={{ paddingInlineStart: `${place.depth * 1.25}rem` }}>
										<input type="checkbox" name="place" value={place.id} defaultChecked={chosen.includes(place.id)} />
										<span>
											{place.name} <span className="af-sub">{tags.get(place.id) ?? "no tag"}</span>
										</span>
									</label>
								))}
							</fieldset>
							<SelectField label="Paper" name="paper" defaultValue={paper} options={PAPERS} />
							<Button type="submit">Show their sheets</Button>
						</form>
					)}
				</Card>
			</Columns>
		</Stack>
	);
}
