import type { ReactNode } from "react";
import { Stack } from "@/app/ui/layouts";
import { capturesCounted } from "@/lib/captures/queries";
import { shopStore } from "@/lib/db/shopStore";
import { digitalItemsCounted } from "@/lib/digital/queries";
import { entriesCounted } from "@/lib/ledger/historyQueries";
import { thisMachine } from "../thisMachine";
import { PaperTabs } from "./paperTabs";

type Props = { readonly params: Promise<{ machine: string }>; readonly children: ReactNode };

export default async function PapersLayout({ params, children }: Props) {
	const machine = await thisMachine((await params).machine);
	const { read } = await shopStore();
	const [{ photos, papers }, programs, entries] = await Promise.all([
		capturesCounted(read, machine.id),
		digitalItemsCounted(read, machine.id),
		entriesCounted(read, machine.id),
	]);
	return (
		<Stack>
			<PaperTabs base={`/machines/${machine.number}/papers`} counts={{ photos, papers, programs, entries }} />
			{children}
		</Stack>
	);
}
