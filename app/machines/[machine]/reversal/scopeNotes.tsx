import { Notice } from "@/app/ui/notice";
import type { ScopeNote } from "@/lib/reversal/scopeSense";
import { type AskedHere, addressWith } from "./askedOfAddress";

/** What the choice drags in or leaves inconsistent, before the plan. */
export function ScopeNotes({ notes, asked }: { readonly notes: readonly ScopeNote[]; readonly asked: AskedHere }) {
	if (notes.length === 0) return null;
	const all = [...new Set(notes.flatMap(({ add }) => add))];
	return (
		<Notice means="wait" live="off" title="What this choice leaves">
			<ul className="af-cautions">
				{notes.map((note) => (
					<li key={`${note.kind} ${note.position} ${note.say}`}>{note.say}</li>
				))}
			</ul>
			{all.length === 0 ? null : (
				<p className="no-print">
					<a className="inline-block py-2" href={addressWith(asked, all)}>
						Choose {all.length === 1 ? "it" : `these ${all.length}`} as well: {all.join(", ")}
					</a>
				</p>
			)}
		</Notice>
	);
}
