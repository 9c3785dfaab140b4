"use client";

import { type KeyboardEvent, type ReactNode, type SyntheticEvent, useRef, useState } from "react";
import { Link } from "./link";

/** Names the mark under finger, pointer or focus, and lets arrows walk over all marks as one stop. */
export function StripReader({ label, children }: { label: string; children: ReactNode }) {
	const [named, setNamed] = useState<{ says: string; href: string | undefined } | null>(null);
	const root = useRef<HTMLFieldSetElement>(null);

	const name = (event: SyntheticEvent) => {
		const mark = event.target instanceof Element ? event.target.closest<HTMLElement>("[data-says]") : null;
		if (!mark) return;
		root.current?.querySelector("[data-named]")?.removeAttribute("data-named");
		mark.setAttribute("data-named", "");
		setNamed({ says: mark.dataset.says ?? "", href: mark.dataset.href });
	};

	const walk = (event: KeyboardEvent) => {
		const marks = [...(root.current?.querySelectorAll<HTMLElement>("[data-says]") ?? [])];
		const at = marks.findIndex((mark) => mark.contains(document.activeElement));
		const to = { ArrowRight: at + 1, ArrowDown: at + 1, ArrowLeft: at - 1, ArrowUp: at - 1, Home: 0, End: marks.length - 1 }[event.key];
		const next = to === undefined ? undefined : marks[to];
		if (at < 0 || !next) return;
		event.preventDefault();
		for (const mark of marks) mark.tabIndex = -1;
		next.tabIndex = 0;
		next.focus();
	};

	return (
		<fieldset ref={root} aria-label={label} onFocus={name} onMouseOver={name} onClick={name} onKeyDown={walk}>
			{children}
			<span className="af-strip-name">
				{named ? <b>{named.says}</b> : "Touch a mark to read its name."}
				{named?.href ? (
					<>
						{" "}
						<Link href={named.href}>Open it</Link>
					</>
				) : null}
			</span>
		</fieldset>
	);
}
