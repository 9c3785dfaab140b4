"use client";

import { useEffect, useRef, useState } from "react";
import { phone } from "./outbox";

/** A pause in typing after which the draft is written. */
const PAUSE_MS = 250;

export type DraftFound = {
	/** When it was typed, by the phone's clock; null while there is none, or it was thrown away. */
	readonly at: string | null;
	/** It was recorded, or is to be forgotten. */
	readonly forget: () => void;
};

/**
 * Keeps what is typed on the phone until it is recorded, and hands back what was typed before the page was loaded anew.
 * `value` is what is to be kept, plain data; `takeUp` lays a found one into the form. Nothing is kept while `value` is as
 * it was at first.
 */
export function useDraft<T>(key: string, value: T, takeUp: (value: T) => void): DraftFound {
	const [at, setAt] = useState<string | null>(null);
	const text = JSON.stringify(value);
	const first = useRef(text);
	/** Null until the phone was asked: a form that is still empty must not write over its own draft. */
	const written = useRef<string | null>(null);
	const late = useRef(takeUp);
	late.current = takeUp;

	useEffect(() => {
		let here = true;
		void phone()
			.then((store) => store.draft(key))
			.then((draft) => {
				if (!here) return;
				written.current = draft ? JSON.stringify(draft.value) : first.current;
				if (!draft) return;
				setAt(draft.at);
				// Written by this very form, in this shape.
				late.current(draft.value as T);
			});
		return () => {
			here = false;
		};
	}, [key]);

	useEffect(() => {
		if (written.current === null || written.current === text) return;
		const write = () => {
			if (written.current === null || written.current === text) return;
			written.current = text;
			void phone().then((store) => store.keepDraft({ key, at: new Date().toISOString(), value: JSON.parse(text) }));
		};
		const later = setTimeout(write, PAUSE_MS);
		// A phone that is put away or falls asleep may never come back to this page.
		window.addEventListener("pagehide", write);
		document.addEventListener("visibilitychange", write);
		return () => {
			clearTimeout(later);
			window.removeEventListener("pagehide", write);
			document.removeEventListener("visibilitychange", write);
		};
	}, [key, text]);

	return {
		at,
		forget: () => {
			setAt(null);
			written.current = text;
			void phone().then((store) => store.dropDraft(key));
		},
	};
}
