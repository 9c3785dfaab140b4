"use client";

import type { ReactNode } from "react";
import { Button, type ButtonKind } from "@/app/ui/button";

/** A button that opens a part of the page and goes there. */
export function Opens({ id, kind = "plain", children }: { id: string; kind?: ButtonKind; children: ReactNode }) {
	return (
		<Button
			kind={kind}
			aria-controls={id}
			onClick={() => {
				const there = document.getElementById(id);
				if (!(there instanceof HTMLDetailsElement)) return;
				there.open = true;
				there.scrollIntoView({ block: "start" });
				there.querySelector<HTMLElement>("input, select, textarea")?.focus({ preventScroll: true });
			}}
		>
			{children}
		</Button>
	);
}
