import type { Metadata } from "next";
import { cookies } from "next/headers";
import { redirect } from "next/navigation";
import { Button } from "@/app/ui/button";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Card } from "@/app/ui/card";
import { Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { PageHead } from "@/app/ui/pageHead";
import { SelectField } from "@/app/ui/selectField";
import { StepperField } from "@/app/ui/stepperField";
import { ordinal } from "@/lib/core/ordinal";
import { shopStore } from "@/lib/db/shopStore";
import { labelFonts } from "@/lib/labels/labelFonts";
import { layoutLabel } from "@/lib/labels/labelLayout";
import { nudgeInWords } from "@/lib/labels/ownStock";
import { isPrinterSet } from "@/lib/labels/printer";
import { addressOnLabels, labelsToPrint, stockOrFirst } from "@/lib/labels/printQueries";
import { qrModules } from "@/lib/labels/qrModules";
import { bagTagsOf, readyTags } from "@/lib/labels/queries";
import { printAddressSchema } from "@/lib/labels/schema";
import { labelsPerPage } from "@/lib/labels/stock";
import { nudges, stocksToUse } from "@/lib/labels/stockQueries";
import { machineChoices } from "@/lib/machines/queries";
import { requireShop } from "@/lib/shop/queries";
import "./labels.css";
import { PrintChoices } from "./choices";
import { LabelPaper } from "./labelPaper";
import { PrintButtons } from "./printButtons";
import { StartAt } from "./startAt";
import { STOCK_COOKIE } from "./stockInUse";

export const metadata: Metadata = { title: "Labels" };

type Search = Promise<Record<string, string | string[] | undefined>>;
const one = (value: string | string[] | undefined): string | undefined => (Array.isArray(value) ? value[0] : value);

/** Which labels, on which stock, from which place of the sheet: seen before they are printed. */
export default async function LabelsPage({ searchParams }: { searchParams: Search }) {
	const asked = await searchParams;
	if (one(asked.ready) !== undefined || one(asked.bags) !== undefined) redirect(await addressOf(asked));
	if (!one(asked.tags)) return <ChooseLabels />;

	const said = printAddressSchema.safeParse({
		tags: one(asked.tags),
		stock: one(asked.stock),
		start: one(asked.start),
		copies: one(asked.copies),
		outlines: one(asked.outlines),
	});
	if (!said.success) {
		return (
			<Stack>
				<PageHead title="Labels" />
				<Notice means="stop" title="These labels cannot be printed">
					<ul>
						{[...new Set(said.error.issues.map((issue) => issue.message))].map((message) => (
							<li key={message}>{message}</li>
						))}
					</ul>
				</Notice>
				<p>
					<Link href="/labels">Choose labels anew</Link>
				</p>
			</Stack>
		);
	}
	const { tags, start, copies, outlines } = said.data;
	const { read } = await shopStore();
	const stock = await stockOrFirst(read, said.data.stock ?? (await cookies()).get(STOCK_COOKIE)?.value);
	const shop = await requireShop(read);
	const address = addressOnLabels(shop.address);
	const [contents, stocks, moved] = await Promise.all([labelsToPrint(read, tags, null), stocksToUse(read), nudges(read)]);
	const nudge = moved.get(stock.id) ?? { right: 0, down: 0 };
	const type = labelFonts();
	const labels = contents.map((content) => ({
		content,
		laid: layoutLabel(content, stock, { type, modulesOf: qrModules, address }),
		before: (content.print ?? 1) - 1,
	}));
	const refused = labels.flatMap(({ content, laid }) => (laid.ok ? [] : [`${content.tag}: ${laid.error.say}`]));
	const shortened = labels.flatMap(({ content, laid }) =>
		laid.ok && laid.value.shortened.length > 0 ? [`${content.tag}: ${laid.value.shortened.join(", ")}`] : [],
	);
	const perSheet = labelsPerPage(stock);
	const pdf = new URLSearchParams({
		tags: tags.join(","),
		stock: stock.id,
		start: String(start),
		copies: String(copies),
		...(outlines ? { outlines } : {}),
	});
	const count = tags.length * copies;
	return (
		<Stack>
			<PageHead
				title={count === 1 ? "1 label" : `${count} labels`}
				lead={stock.name}
				actions={
					<PrintButtons
						key={pdf.toString()}
						tags={tags}
						shown={pdf.toString()}
						deed={one(asked.now) ?? null}
						hasPrinter={isPrinterSet()}
						isAble={refused.length === 0}
					/>
				}
			/>
			{refused.length > 0 ? (
				<Notice means="stop" title="Not on this stock">
					{refused.join(" ")}
				</Notice>
			) : null}
			{shortened.length > 0 ? (
				<Notice means="wait" live="off" title="Shortened to fit">
					{shortened.join("; ")}
				</Notice>
			) : null}
			<Columns>
				<Card title="As it will be">
					<ul className="flex flex-wrap gap-4">
						{labels.map(({ content, laid, before }) => (
							<li key={content.tag} className="min-w-0 max-w-full">
								{laid.ok ? <LabelPaper drawing={laid.value} /> : null}
								<p className="af-sub">
									<Link href={`/t/${content.tag}`}>{content.tag}</Link>
									{before > 0 ? ` · this will be the ${ordinal(before + 1)} print` : ""}
								</p>
							</li>
						))}
					</ul>
				</Card>
				<Card title="On which stock">
					<PrintChoices action="/labels" stock={stock.id}>
						<input type="hidden" name="tags" value={tags.join(",")} />
						<SelectField
							label="In the printer"
							name="stock"
							defaultValue={stock.id}
							options={stocks.map((known) => ({ value: known.id, label: known.name }))}
						/>
						{perSheet > 1 ? (
							<StartAt key={stock.id} perSheet={perSheet} columns={stock.kind === "sheet" ? stock.columns : 1} start={start} />
						) : null}
						<StepperField
							label="Copies of each"
							hint="Two a bag: one inside facing out, one outside"
							name="copies"
							min={1}
							max={20}
							required
							defaultValue={copies}
						/>
						<label className="af-check">
							<input type="checkbox" name="outlines" value="yes" defaultChecked={outlines === "yes"} />
							<span>Draw the edges, for a trial on plain paper</span>
						</label>
						<Button type="submit">Show it so</Button>
					</PrintChoices>
					<p className="af-sub pt-3">
						Print at actual size, without fitting to the page. Prints on this stock go {nudgeInWords(nudge)}:{" "}
						<Link href={`/labels/stock/${stock.id}`}>nudge them</Link>. Other stock: <Link href="/labels/stock">measure your own</Link>.
					</p>
				</Card>
			</Columns>
			{address === null ? (
				<Notice live="off">
					The code on the label holds the tag alone: a phone reads it, and the tag is typed or scanned in Asfound. With the shop's address
					set under <Link href="/people">People</Link>, any phone's camera opens the page.
				</Notice>
			) : null}
		</Stack>
	);
}

/** Bags of a machine, or numbers that are still free, as a list of tags in the address: that is what is printed and recorded. */
async function addressOf(asked: Awaited<Search>): Promise<string> {
	const { read } = await shopStore();
	const ready = one(asked.ready);
	const number = Number(ready ?? one(asked.bags));
	if (!Number.isInteger(number)) return "/labels";
	if (ready !== undefined) {
		const count = Math.min(100, Math.max(1, Math.trunc(Number(one(asked.count)) || 1)));
		return `/labels?${new URLSearchParams({ tags: (await readyTags(read, number, count)).join(",") })}`;
	}
	const machine = number === 0 ? null : await read.machine.findUnique({ where: { number }, select: { id: true } });
	if (number !== 0 && !machine) return "/labels";
	const bags = await bagTagsOf(read, machine?.id ?? null);
	return `/labels?${new URLSearchParams({ tags: bags.map((bag) => bag.tag).join(",") })}`;
}

async function ChooseLabels() {
	const { read } = await shopStore();
	const machines = await machineChoices(read);
	const options = [
		...machines.map((machine) => ({ value: String(machine.number), label: `${machine.number} ${machine.name}` })),
		{ value: "0", label: "The shop's own bags" },
	];
	return (
		<Stack>
			<PageHead
				title="Labels"
				lead="A label is printed from the page of its part or bag. Here, many at once."
				actions={<ButtonLink href="/labels/stock">Label stock</ButtonLink>}
			/>
			<Columns even>
				<Card title="All bags of a machine">
					<form action="/labels" className="flex flex-col gap-2">
						<SelectField label="Which machine" name="bags" options={options} />
						<Button type="submit" kind="main">
							Show their labels
						</Button>
					</form>
				</Card>
				<Card title="Ready-made tags">
					<form action="/labels" className="flex flex-col gap-2">
						<p className="af-sub">
							Free numbers on a sheet, to stick on bags at the bench: scan or type the tag, and say what goes in. They are not given out
							otherwise once they are printed.
						</p>
						<SelectField label="For which machine" name="ready" options={options} />
						<StepperField label="How many" name="count" min={1} max={100} defaultValue={21} />
						<Button type="submit" kind="main">
							Show the tags
						</Button>
					</form>
				</Card>
				<Card title="What is in the bags">
					<form action="/labels/contents" className="flex flex-col gap-2">
						<p className="af-sub">A list to lie in each bag, or on the wall: parts, fixings with their counts, for which position.</p>
						<SelectField label="Bags of which machine" name="bags" options={options} />
						<Button type="submit">Show the lists</Button>
					</form>
				</Card>
				<Card title="Flags for wires">
					<form action="/labels/wires" className="flex flex-col gap-2">
						<p className="af-sub">A label folded round each end of a wire: terminal, device, colour, and where the other end goes.</p>
						<SelectField label="Wires of which machine" name="machine" options={options.filter(({ value }) => value !== "0")} />
						<Button type="submit">Show the flags</Button>
					</form>
				</Card>
				<Card title="Sheets for shelves">
					<p className="af-sub pb-3">The name of a place in letters as large as fit on a page, with its way, its tag and its code.</p>
					<ButtonLink href="/labels/shelves">Choose shelves</ButtonLink>
				</Card>
			</Columns>
		</Stack>
	);
}
