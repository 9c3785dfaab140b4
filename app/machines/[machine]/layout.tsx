import type { Metadata } from "next";
import type { ReactNode } from "react";
import { Badge } from "@/app/ui/badge";
import { ButtonLink } from "@/app/ui/buttonLink";
import { Picture } from "@/app/ui/photoGrid";
import { TagChip } from "@/app/ui/tagChip";
import { systemClock } from "@/lib/core/clock";
import { type Day, formatDayShort } from "@/lib/core/days";
import { edtfInWords } from "@/lib/core/edtf";
import { shopStore } from "@/lib/db/shopStore";
import { OWNERSHIP_WORDS, stateWords } from "@/lib/machines/bench";
import { benches } from "@/lib/machines/queries";
import { requireShop } from "@/lib/shop/queries";
import { MachineTabs } from "./machineTabs";
import { OnItsOwnPage } from "./onItsOwnPage";
import { thisMachine } from "./thisMachine";

type Params = { readonly params: Promise<{ machine: string }> };

export async function generateMetadata({ params }: Params): Promise<Metadata> {
	const machine = await thisMachine((await params).machine);
	const name = `${machine.number} ${machine.name}`;
	return { title: { default: name, template: `%s · ${name} · Asfound` } };
}

export default async function MachineLayout({ params, children }: Params & { readonly children: ReactNode }) {
	const machine = await thisMachine((await params).machine);
	const { read } = await shopStore();
	const { timeZone } = await requireShop(read);
	const now = systemClock();
	const bench = (await benches(read, [machine.id], now)).get(machine.id);
	const state = stateWords(
		machine,
		{
			clockRuns: bench?.next.some((step) => step.clockRuns) ?? false,
			anyReady: bench?.next.some((step) => step.hindered.length === 0) ?? false,
			firstWait: bench?.waits[0] ?? null,
			begun: bench?.begun ?? false,
		},
		now,
		timeZone,
	);
	const about = [
		machine.kind,
		machine.made === null ? "" : `made ${edtfInWords(machine.made)}`,
		OWNERSHIP_WORDS[machine.ownership],
		`came in ${formatDayShort(machine.receivedDay as Day)}`,
	].filter(Boolean);
	return (
		<>
			<div className="af-pagehead">
				{machine.portraitSha === null ? null : (
					<OnItsOwnPage>
						<div className="af-pagehead-photo">
							<Picture src={`/files/${machine.portraitSha}/small`} alt={`${machine.name}, the whole machine`} eager />
						</div>
					</OnItsOwnPage>
				)}
				<div className="af-pagehead-words">
					<div className="af-pagehead-above">
						<TagChip tag={String(machine.number)} says="the machine's number" />
						<Badge means={state.means}>{state.words}</Badge>
					</div>
					<h1>{machine.name}</h1>
					<OnItsOwnPage>
						<p className="af-lead">{about.join(" · ")}</p>
						{machine.state === "left" ? null : (
							<p className="no-print pt-2">
								<ButtonLink href={`/machines/${machine.number}/bench`}>At the bench</ButtonLink>
							</p>
						)}
					</OnItsOwnPage>
				</div>
			</div>
			<MachineTabs number={machine.number} name={machine.name} />
			{children}
		</>
	);
}
