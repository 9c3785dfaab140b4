"use client";

import { useEffect, useRef } from "react";

const takesText = (at: EventTarget | null) =>
	at instanceof HTMLElement && (at.isContentEditable || at.matches("input, textarea, select, [role=textbox]"));

/** The one search of the program. Letters and figures typed where nothing else takes them (a hand scanner, too) land here. */
export function FindField() {
	const field = useRef<HTMLInputElement>(null);
	useEffect(() => {
		const onKey = (event: KeyboardEvent) => {
			if (event.ctrlKey || event.metaKey || event.altKey || event.isComposing || event.defaultPrevented) return;
			if (event.key.length !== 1 || event.key === " " || takesText(event.target)) return;
			if (event.key === "/") event.preventDefault();
			field.current?.focus();
		};
		document.addEventListener("keydown", onKey);
		return () => document.removeEventListener("keydown", onKey);
	}, []);
	return (
		<search>
			<form action="/find">
				<input
					ref={field}
					className="af-input"
					type="search"
					name="q"
					aria-label="Find"
					placeholder="Tag, name or word"
					autoComplete="off"
					autoCapitalize="off"
					spellCheck={false}
					enterKeyHint="search"
				/>
			</form>
		</search>
	);
}
