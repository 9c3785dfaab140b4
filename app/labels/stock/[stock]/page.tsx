import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { Card } from "@/app/ui/card";
import { Buttons, Columns, Stack } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Notice } from "@/app/ui/notice";
import { PageHead } from "@/app/ui/pageHead";
import { shopStore } from "@/lib/db/shopStore";
import { asTyped, sizeInWords } from "@/lib/labels/ownStock";
import { nudgeOf, stockById } from "@/lib/labels/stockQueries";
import { requireShop } from "@/lib/shop/queries";
import "../../labels.css";
import { CorrectStockForm, NudgeForm, PutAwayStockForm } from "../stockForms";
import { StockPicture } from "../stockPicture";

export const metadata: Metadata = { title: "Label stock" };

/** One stock: how it is cut, how far prints on it are moved, and, if it is the shop's own, its measures. */
export default async function OneStockPage({ params }: { params: Promise<{ stock: string }> }) {
	const { read } = await shopStore();
	await requireShop(read);
	const known = await stockById(read, decodeURIComponent((await params).stock));
	if (!known) notFound();
	const { stock, own } = known;
	const { nudgeX, nudgeY } = await nudgeOf(read, stock.id);
	const grid = `/labels/pdf/grid?stock=${encodeURIComponent(stock.id)}`;
	return (
		<Stack>
			<PageHead title={stock.name} lead={sizeInWords(stock)} />
			{own?.stands === "no" ? (
				<Notice means="wait" live="off" title="Put away">
					It is in no list. What was printed on it stays on record.
				</Notice>
			) : null}
			<Columns even>
				<Stack>
					<Card title="Move its prints">
						<ol className="af-steps-list">
							<li>
								Print the test grid on this stock, at actual size: its lines should fall on the cuts.
								<Buttons>
									<a className="af-button" data-kind="plain" href={grid} target="_blank" rel="noopener">
										Test grid
									</a>
								</Buttons>
							</li>
							<li>
								Where does the cut cross each rule? From the long middle line, to the right and down are plus, to the left and up minus; a
								short line is half a millimetre. On a roll, a gap before the middle line is minus as much.
							</li>
							<li>Type the two figures here.</li>
						</ol>
						<NudgeForm stock={stock.id} right={Math.round(nudgeX * 10)} down={Math.round(nudgeY * 10)} />
						<p className="af-sub pt-3">
							Then look once more:{" "}
							<a href={`${grid}&moved=yes`} target="_blank" rel="noopener">
								the test grid as moved now
							</a>
							.
						</p>
					</Card>
					{own ? (
						<Card title="In the lists">
							<PutAwayStockForm key={own.stands} stockId={stock.id} name={stock.name} stands={own.stands} />
						</Card>
					) : null}
				</Stack>
				{own ? (
					<Card title="Its measures">
						<CorrectStockForm stockId={stock.id} defaults={asTyped(stock)} seen={own.entry} />
					</Card>
				) : (
					<Card title="To scale">
						<StockPicture stock={stock} />
						<p className="af-sub pt-3">
							Is yours cut otherwise? <Link href="/labels/stock">Measure it</Link> as stock of your own.
						</p>
					</Card>
				)}
			</Columns>
		</Stack>
	);
}
