"use client";

import { useId, useState } from "react";
import { Button } from "./button";
import { PhotoField } from "./photoField";
import { TextField } from "./textField";

/** What came of a scan: taken, or why not, with what may have been meant. */
export type ScanAnswer = { readonly ok: true } | { readonly ok: false; readonly say: string; readonly meant?: readonly string[] };

/**
 * One thing after the other by its tag: photograph the label, type the tag, or use a hand scanner, which types it and
 * presses Enter. `onScan` looks it up and says what came of it; a slip is answered with the tags that may be meant.
 */
export function ScanField({
	label,
	hint,
	onScan,
}: {
	readonly label: string;
	readonly hint?: string;
	readonly onScan: (text: string) => Promise<ScanAnswer>;
}) {
	const id = useId();
	const [typed, setTyped] = useState("");
	const [said, setSaid] = useState<{ say: string; meant: readonly string[] } | null>(null);
	const [busy, setBusy] = useState(false);
	const scan = async (text: string) => {
		if (text.trim() === "" || busy) return;
		setBusy(true);
		const answer = await onScan(text).catch((): ScanAnswer => ({ ok: false, say: "The shop did not answer. Try it once more." }));
		setBusy(false);
		setSaid(answer.ok ? null : { say: answer.say, meant: answer.meant ?? [] });
		if (answer.ok) setTyped("");
	};
	const photographed = async (files: readonly File[]) => {
		const [file] = files;
		if (!file) return;
		const { readCode } = await import("./readCode");
		const text = await readCode(file).catch(() => null);
		if (text === null) setSaid({ say: "No code was found in the photo. Take it closer and straight, or type the tag.", meant: [] });
		else await scan(text);
	};
	return (
		<section aria-label={label} className="flex flex-col gap-2">
			<PhotoField deed="Photograph the label" onPick={(files) => void photographed(files)} />
			<form
				className="af-count-line"
				onSubmit={(event) => {
					event.preventDefault();
					void scan(typed);
				}}
			>
				<TextField
					id={id}
					label={label}
					{...(hint === undefined ? {} : { hint })}
					mono
					autoCapitalize="characters"
					autoComplete="off"
					enterKeyHint="done"
					value={typed}
					onChange={(event) => setTyped(event.target.value)}
				/>
				<Button type="submit" pending={busy}>
					Take it
				</Button>
			</form>
			<div role="alert">
				{said ? (
					<>
						<p className="af-error">{said.say}</p>
						{said.meant.length > 0 ? (
							<p className="af-buttons">
								{said.meant.map((tag) => (
									<Button key={tag} onClick={() => void scan(tag)}>
										{tag}
									</Button>
								))}
							</p>
						) : null}
					</>
				) : null}
			</div>
		</section>
	);
}
