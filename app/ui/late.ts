"use client";

import { useEffect, useRef, useState } from "react";

const AFTER_MS = 400; // sooner, a spinner only flickers
const STAY_MS = 350; // long enough to be seen

/** True from a moment after `on` becomes true, and then for long enough to be seen. */
export function useLate(on: boolean): boolean {
	const [shown, setShown] = useState(false);
	const since = useRef(0);
	useEffect(() => {
		if (on === shown) return;
		const wait = on ? AFTER_MS : Math.max(0, STAY_MS - (performance.now() - since.current));
		const timer = setTimeout(() => {
			if (on) since.current = performance.now();
			setShown(on);
		}, wait);
		return () => clearTimeout(timer);
	}, [on, shown]);
	return shown;
}
