"use client";

import { type ComponentProps, type MouseEvent, useEffect, useRef, useState } from "react";
import { useFormStatus } from "react-dom";
import { useLate } from "./late";

/** main: the one deed of the page. plain: other deeds. quiet: small ways out. danger: takes something away. */
export type ButtonKind = "main" | "plain" | "quiet" | "danger";

export type ButtonProps = Omit<ComponentProps<"button">, "onClick"> & {
	readonly kind?: ButtonKind;
	readonly wide?: boolean;
	/** The work it started is still going on (`form.pending`). */
	readonly pending?: boolean | undefined;
	/** If it gives back a promise, the button is busy until that settles. */
	readonly onClick?: (event: MouseEvent<HTMLButtonElement>) => void | Promise<void>;
};

/** Says what it does ("Take out", never "OK"). While its work goes on it cannot be pressed again, and says so after a moment. */
export function Button({
	kind = "plain",
	wide,
	pending = false,
	onClick,
	type = "button",
	className = "",
	children,
	...button
}: ButtonProps) {
	const form = useFormStatus();
	const [busy, setBusy] = useState(false);
	const [pressed, setPressed] = useState(false);
	const lock = useRef(false);
	const working = pending || busy || (type === "submit" && form.pending);
	const late = useLate(working && (pending || pressed));

	useEffect(() => {
		if (!working) setPressed(false);
	}, [working]);

	return (
		<button
			{...button}
			type={type}
			className={`af-button ${className}`}
			data-kind={kind}
			data-wide={wide ? "" : undefined}
			aria-disabled={working || undefined}
			aria-busy={late || undefined}
			onClick={(event) => {
				if (working || lock.current) {
					event.preventDefault();
					return;
				}
				setPressed(true);
				const going = onClick?.(event);
				if (!going) return;
				lock.current = true;
				setBusy(true);
				void going.finally(() => {
					lock.current = false;
					setBusy(false);
				});
			}}
		>
			{late ? <span className="af-spinner" /> : null}
			{children}
			{late ? <span className="sr-only"> (working)</span> : null}
		</button>
	);
}
