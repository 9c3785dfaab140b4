import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { decoded } from "@/app/decoded";
import { Bench } from "@/app/ui/layouts";
import { Notice } from "@/app/ui/notice";
import { TagChip } from "@/app/ui/tagChip";
import { shopStore } from "@/lib/db/shopStore";
import { tagsMeant } from "@/lib/store/scanned";
import { readTag } from "@/lib/tags/readTag";
import { BagPage } from "./bagPage";
import { FreeTag } from "./freeTag";
import { PartPage } from "./partPage";

type Params = Promise<{ tag: string }>;

export async function generateMetadata({ params }: { params: Params }): Promise<Metadata> {
	return { title: decoded((await params).tag).toUpperCase() };
}

/** Where a scanned or typed tag leads: to its part, its bag, or to what it may be tied to. */
export default async function TagPage({ params }: { params: Params }) {
	const typed = decoded((await params).tag);
	const { read } = await shopStore();
	const tag = readTag(typed);
	if (!tag.ok) {
		const meant = await tagsMeant(read, typed);
		return (
			<Bench>
				<h1>No such tag</h1>
				<Notice means="stop">{tag.error.say}</Notice>
				{meant.length > 0 ? (
					<section aria-labelledby="meant">
						<h2 id="meant">Did you mean</h2>
						<ul className="flex flex-wrap gap-3 pt-2">
							{meant.map((id) => (
								<li key={id}>
									<TagChip tag={id} href={`/t/${id}`} size="large" />
								</li>
							))}
						</ul>
					</section>
				) : null}
			</Bench>
		);
	}
	const written = tag.value.tag;
	if (typed !== written) redirect(`/t/${written}`);
	const known = await read.tag.findUnique({ where: { id: written }, select: { partId: true, bagId: true } });
	if (known?.partId) return <PartPage partId={known.partId} />;
	if (known?.bagId) return <BagPage bagId={known.bagId} />;
	const place = await read.placeTag.findUnique({ where: { id: written }, select: { locationId: true } });
	if (place) redirect(`/store/${place.locationId}`);
	const machine = await read.machine.findUnique({
		where: { number: tag.value.machine },
		select: { id: true, number: true, name: true },
	});
	return <FreeTag tag={written} machine={machine} isOfTheShop={tag.value.machine === 0} />;
}
