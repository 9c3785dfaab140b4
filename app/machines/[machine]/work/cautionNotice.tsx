import { Notice } from "@/app/ui/notice";
import { CODES_COME_FIRST, cautionsIn } from "@/lib/steps/cautions";

/** What a hand must know before it begins: the step's own caution first, then what its words call for. Nothing when there is nothing. */
export function CautionNotice({ title, caution }: { readonly title: string; readonly caution: string }) {
	const usual = cautionsIn(`${title} ${caution}`);
	if (caution === "" && usual.length === 0) return null;
	const electrical = usual.some(({ about }) => about === "mains" || about === "a capacitor");
	return (
		<Notice means="stop" live="off" title={caution === "" ? "Before you begin" : caution}>
			{usual.length > 0 ? (
				<ul className="list-disc pl-5">
					{usual.map(({ about, say }) => (
						<li key={about}>{say}</li>
					))}
				</ul>
			) : null}
			{electrical ? <p className="font-semibold">{CODES_COME_FIRST}</p> : null}
		</Notice>
	);
}
