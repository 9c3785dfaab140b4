import { Badge } from "@/app/ui/badge";
import { Card } from "@/app/ui/card";
import { Facts } from "@/app/ui/facts";
import { Buttons } from "@/app/ui/layouts";
import { Link } from "@/app/ui/link";
import { Table } from "@/app/ui/table";
import type { Said } from "./said";

const UNDO_WORDS = { clean: "undone clean", trace: "leaves a trace", never: "cannot be undone" } as const;

/** Alterations of the place and of its parts, and faults. */
export function Marks({ said: { page, base } }: { readonly said: Said }) {
	const alterations = [...page.alterations, ...page.partAlterations];
	if (alterations.length === 0 && page.faults.length === 0) return null;
	return (
		<Card title="Altered, faulty">
			{alterations.length === 0 ? null : (
				<Table
					caption="Alterations here"
					rows={alterations}
					rowKey={(alteration) => String(alteration.number)}
					columns={[
						{
							key: "what",
							head: "What",
							main: true,
							cell: (alteration) => <Link href={`${base}/changes/${alteration.number}`}>{alteration.what}</Link>,
						},
						{
							key: "undo",
							head: "Undoing",
							cell: (alteration) => (
								<Badge means={alteration.undo === "never" ? "stop" : "plain"}>
									{alteration.state === "undone" ? "undone" : UNDO_WORDS[alteration.undo]}
								</Badge>
							),
						},
					]}
				/>
			)}
			{page.faults.length === 0 ? null : (
				<Facts
					facts={page.faults.map((fault) => ({
						label: fault.state === "open" ? "Fault" : fault.state === "mended" ? "Mended" : "Left so",
						value: fault.words,
					}))}
				/>
			)}
			<Buttons>
				<Link href={base}>All faults</Link>
			</Buttons>
		</Card>
	);
}
