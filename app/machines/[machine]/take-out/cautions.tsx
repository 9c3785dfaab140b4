import { Notice } from "@/app/ui/notice";
import { CODES_COME_FIRST, cautionsIn } from "@/lib/steps/cautions";

/** What a hand must know before a part with these words, or with wires, is touched. Common practice; local codes come first. */
export function TakeOutCautions({ words, hasWires }: { readonly words: string; readonly hasWires: boolean }) {
	const cautions = cautionsIn(hasWires ? `${words} wiring` : words);
	if (cautions.length === 0) return null;
	return (
		<Notice means="stop" live="off" title={CODES_COME_FIRST}>
			<ul>
				{cautions.map(({ about, say }) => (
					<li key={about}>{say}</li>
				))}
			</ul>
			<p className="af-sub">Common practice, no source.</p>
		</Notice>
	);
}
