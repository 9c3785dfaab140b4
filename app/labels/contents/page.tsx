import type { Metadata } from "next";
import { cookies } from "next/headers";
import { redirect } from "next/navigation";
import { Button } from "@/app/ui/button";
import { Card } from "@/app/ui/card";
import { Empty } from "@/app/ui/empty";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { PageHead } from "@/app/ui/pageHead";
import { SelectField } from "@/app/ui/selectField";
import { systemClock } from "@/lib/core/clock";
import { dayOf } from "@/lib/core/days";
import { shopStore } from "@/lib/db/shopStore";
import { LONGEST_LIST, listStrip } from "@/lib/labels/contentsList";
import { bagContents, listTools, MOST_LISTS, paperFor } from "@/lib/labels/contentsQueries";
import { addressOnLabels, stockOrFirst } from "@/lib/labels/printQueries";
import { bagTagsOf } from "@/lib/labels/queries";
import { listAddressSchema } from "@/lib/labels/schema";
import { currentPerson } from "@/lib/people/current";
import { requireShop } from "@/lib/shop/queries";
import "../labels.css";
import { LabelPaper } from "../labelPaper";
import { STOCK_COOKIE } from "../stockInUse";

export const metadata: Metadata = { title: "What is in the bags" };

type Search = Promise<Record<string, string | string[] | undefined>>;
const one = (value: string | string[] | undefined): string | undefined => (Array.isArray(value) ? value[0] : value);

/** A column of a page, for lists that do not go on a roll. */
const COLUMN = 89;

/** Lists of what is in one bag or in all of a machine, as they will lie in them. */
export default async function ContentsPage({ searchParams }: { searchParams: Search }) {
	const asked = await searchParams;
	if (one(asked.bags) !== undefined) redirect(await addressOf(Number(one(asked.bags))));
	const said = listAddressSchema.safeParse({ tags: one(asked.tags) ?? "", paper: one(asked.paper) });
	if (!said.success) {
		return (
			<Stack>
				<PageHead title="What is in the bags" />
				<Empty title="No bags here">
					<Link href="/labels">Choose a machine</Link> that has bags, or come here from the page of a bag.
				</Empty>
			</Stack>
		);
	}
	const { tags } = said.data;
	const { read } = await shopStore();
	const [shop, stock, person] = await Promise.all([
		requireShop(read),
		stockOrFirst(read, one(asked.stock) ?? (await cookies()).get(STOCK_COOKIE)?.value),
		currentPerson(),
	]);
	const bags = await bagContents(read, tags);
	const paper = said.data.paper === "roll" && stock.kind !== "continuous" ? "a4" : (said.data.paper ?? paperFor(stock));
	const tools = listTools(addressOnLabels(shop.address));
	const made = { day: dayOf(systemClock(), shop.timeZone), initials: person?.initials ?? "" };
	const strips = bags.map((bag) => ({ tag: bag.tag, drawing: listStrip(bag, paper === "roll" ? stock.width : COLUMN, made, tools) }));
	const long = paper === "roll" ? strips.filter(({ drawing }) => drawing.height > LONGEST_LIST).map(({ tag }) => tag) : [];
	const papers = [
		...(stock.kind === "continuous" ? [{ value: "roll", label: `${stock.name}, cut to length` }] : []),
		{ value: "a4", label: "A4" },
		{ value: "letter", label: "US Letter" },
	];
	const pdf = `/labels/pdf/contents?${new URLSearchParams({ tags: tags.join(","), paper })}`;
	return (
		<Stack>
			<PageHead
				title={bags.length === 1 ? `What is in ${bags[0]?.tag}` : `What is in ${bags.length} bags`}
				lead="To lie in the bag, or to be ticked off when it is emptied."
				actions={
					bags.length > 0 && long.length === 0 ? (
						<a className="af-button" data-kind="main" href={pdf} target="_blank" rel="noopener">
							{bags.length === 1 ? "Print the list" : `Print ${bags.length} lists`}
						</a>
					) : null
				}
			/>
			{long.length > 0 ? (
				<Notice means="stop" title="Longer than a roll is cut">
					{long.join(", ")}: choose A4 or US Letter.
				</Notice>
			) : null}
			{tags.length > MOST_LISTS ? (
				<Notice means="wait" live="off" title={`The first ${MOST_LISTS} of ${tags.length}`}>
					Print the others from the pages of their bags.
				</Notice>
			) : null}
			<Columns>
				<Card title="As they will be">
					<ul className="flex flex-wrap gap-4">
						{strips.map(({ tag, drawing }) => (
							<li key={tag} className="min-w-0 max-w-full">
								<LabelPaper drawing={drawing} size="actual" />
								<p className="af-sub">
									<Link href={`/t/${tag}`}>{tag}</Link>
								</p>
							</li>
						))}
					</ul>
					{bags.length === 0 ? <Empty title="None of these tags hangs on a bag">A list is printed of what is in a bag.</Empty> : null}
				</Card>
				<Card title="On which paper">
					<form action="/labels/contents" className="flex flex-col gap-2">
						<input type="hidden" name="tags" value={tags.join(",")} />
						<SelectField label="Paper" name="paper" defaultValue={paper} options={papers} />
						<Button type="submit">Show it so</Button>
					</form>
					<p className="af-sub pt-3">On a page, short lists share it. A continuous roll is offered when labels were last printed on one.</p>
				</Card>
			</Columns>
		</Stack>
	);
}

/** All bags of a machine that are in use, or the shop's own, as a list of tags in the address. */
async function addressOf(number: number): Promise<string> {
	const { read } = await shopStore();
	const machine =
		Number.isInteger(number) && number > 0 ? await read.machine.findUnique({ where: { number }, select: { id: true } }) : null;
	if (number !== 0 && !machine) return "/labels";
	const bags = await bagTagsOf(read, machine?.id ?? null);
	return `/labels/contents?${new URLSearchParams({ tags: bags.map(({ tag }) => tag).join(",") })}`;
}
