import { Notice } from "@/app/ui/notice";
import { CODES_COME_FIRST } from "@/lib/steps/cautions";

/** Stands over every page of tests, on screen and on paper. */
export function TestCaution() {
	return (
		<Notice means="stop" live="off" title={CODES_COME_FIRST}>
			<p>
				Tests after repair are for an electrically skilled person. Before any of them: unplug, tag the plug, prove dead, discharge
				capacitors through a resistor and measure. Limits differ by country and edition: each stands here with its source.
			</p>
			<p>This page says what was measured against which limit, by whom and with what. It says nothing beyond that.</p>
		</Notice>
	);
}
