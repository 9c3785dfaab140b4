"use client";

import { useEffect, useRef, useState } from "react";
import { Button } from "./button";
import { PhotoField } from "./photoField";
import { TextField } from "./textField";

/** What came of a scan: taken, with what it was, or why not, with what may have been meant. */
export type ScanAnswer =
	| { readonly ok: true; readonly say?: string }
	| { readonly ok: false; readonly say: string; readonly meant?: readonly string[] };

type Said = { readonly ok: boolean; readonly say: string; readonly meant: readonly string[] };

const takesText = (at: EventTarget | null) =>
	at instanceof HTMLElement && (at.isContentEditable || at.matches("input:not([type=checkbox], [type=radio]), textarea, select"));

/**
 * One thing after the other by its tag: photograph the label, type the tag, or use a hand scanner, which types it and
 * presses Enter, wherever on the page. `onScan` looks it up and says what came of it; a slip is answered with the tags that
 * may be meant. Scans are looked up in their order, also where the next one comes before the answer.
 */
export function ScanField({
	label,
	hint,
	deed = "Take it",
	onScan,
}: {
	readonly label: string;
	readonly hint?: string;
	/** The words of the button beside the field. */
	readonly deed?: string;
	readonly onScan: (text: string) => Promise<ScanAnswer>;
}) {
	const field = useRef<HTMLInputElement>(null);
	const turn = useRef<Promise<void>>(Promise.resolve());
	const latest = useRef(onScan);
	latest.current = onScan;
	const [typed, setTyped] = useState("");
	const [said, setSaid] = useState<Said | null>(null);
	const [waiting, setWaiting] = useState(0);

	useEffect(() => {
		// Before the search of the frame takes what is typed where nothing else does.
		const onKey = (event: KeyboardEvent) => {
			if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing) return;
			if (!/^[0-9A-Za-z]$/.test(event.key) || takesText(event.target)) return;
			event.stopPropagation();
			field.current?.focus();
		};
		window.addEventListener("keydown", onKey, true);
		return () => window.removeEventListener("keydown", onKey, true);
	}, []);

	const scan = (text: string): void => {
		const asked = text.trim();
		if (asked === "") {
			setSaid({ ok: false, say: "Photograph the label, or type the tag.", meant: [] });
			field.current?.focus();
			return;
		}
		setTyped("");
		setWaiting((count) => count + 1);
		turn.current = turn.current.then(async () => {
			const answer = await latest
				.current(asked)
				.catch((): ScanAnswer => ({ ok: false, say: "The shop did not answer. Try it once more." }));
			setSaid({ ok: answer.ok, say: answer.say ?? "", meant: answer.ok ? [] : (answer.meant ?? []) });
			// What was not taken stays to be corrected, unless the next one is being typed.
			if (!answer.ok) {
				setTyped((now) => (now === "" ? asked : now));
				field.current?.focus();
			}
			setWaiting((count) => count - 1);
		});
	};
	const photographed = async (files: readonly File[]) => {
		const [file] = files;
		if (!file) return;
		setWaiting((count) => count + 1);
		const text = await import("./readCode").then(({ readCode }) => readCode(file)).catch(() => null);
		setWaiting((count) => count - 1);
		if (text === null) {
			setSaid({ ok: false, say: "No code was found in the photo. Take it closer and straight, or type the tag.", meant: [] });
		} else scan(text);
	};
	return (
		<section aria-label={label} className="flex flex-col gap-2">
			<PhotoField deed="Photograph the label" onPick={(files) => void photographed(files)} />
			<form
				className="flex flex-col gap-2"
				onSubmit={(event) => {
					event.preventDefault();
					scan(field.current?.value ?? typed);
				}}
			>
				<div className="af-count-line">
					<TextField
						ref={field}
						label={label}
						{...(hint === undefined ? {} : { hint })}
						mono
						autoCapitalize="characters"
						spellCheck={false}
						enterKeyHint="done"
						error={said && !said.ok && waiting === 0 ? said.say : undefined}
						value={typed}
						onChange={(event) => setTyped(event.target.value)}
					/>
					<Button type="submit">{deed}</Button>
				</div>
				<div role="status">
					{waiting > 0 ? (
						<p className="af-sub">Looking…</p>
					) : said?.ok && said.say !== "" ? (
						<p>
							<strong>{said.say}</strong>
						</p>
					) : null}
				</div>
				<div role="alert">
					{said && !said.ok && waiting === 0 ? (
						<>
							<p className="sr-only">{said.say}</p>
							{said.meant.length > 0 ? (
								<>
									<p className="af-sub">Did you mean</p>
									<p className="af-buttons">
										{said.meant.map((tag) => (
											<Button
												key={tag}
												onClick={() => {
													setTyped("");
													scan(tag);
												}}
											>
												{tag}
											</Button>
										))}
									</p>
								</>
							) : null}
						</>
					) : null}
				</div>
			</form>
		</section>
	);
}
