"use client";

import { Button } from "./ui/button";
import { ButtonLink } from "./ui/buttonLink";
import { Notice } from "./ui/notice";
import { PageHead } from "./ui/pageHead";

export default function PageError({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
	return (
		<>
			<PageHead title="This page could not be shown" />
			<Notice means="stop">
				A mistake in the program stopped it. What was recorded before is kept; a change that you had just sent is either in the ledger whole
				or not at all.
				{error.digest ? ` The server's log has it under ${error.digest}.` : ""}
			</Notice>
			<div className="af-buttons mt-4">
				<Button kind="main" onClick={reset}>
					Show it again
				</Button>
				<ButtonLink href="/">To the shop</ButtonLink>
			</div>
		</>
	);
}
