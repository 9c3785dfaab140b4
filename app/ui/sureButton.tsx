"use client";

import { useEffect, useId, useRef, useState } from "react";
import { Button, type ButtonProps } from "./button";

const SAME_TAP_MS = 500; // a second tap sooner than this is the same tap bouncing, not an answer

/**
 * For what leaves the shop or can never be undone. The first press turns the button into the question with its reason;
 * the second does it; Escape, "Leave it", or going elsewhere takes the question back.
 * With `type="submit"` the second press sends the form.
 *
 * @example <SureButton question="Scrap the original lamp? No reversal can put it back." yes="Scrap it" onSure={scrap}>Scrap</SureButton>
 */
export function SureButton({
	question,
	yes,
	no = "Leave it",
	onSure,
	kind = "danger",
	type = "button",
	children,
	...button
}: Omit<ButtonProps, "onClick"> & {
	/** What will be done, and what is lost by it. */
	readonly question: string;
	/** The deed once more: "Scrap it". */
	readonly yes: string;
	readonly no?: string;
	readonly onSure?: () => void | Promise<void>;
}) {
	const [armedAt, setArmedAt] = useState<number | null>(null);
	const group = useRef<HTMLFieldSetElement>(null);
	const id = useId();
	const armed = armedAt !== null;

	useEffect(() => {
		if (!armed) return;
		const elsewhere = (event: Event) => {
			if (event.target instanceof Node && !group.current?.contains(event.target)) setArmedAt(null);
		};
		const takeBack = (event: KeyboardEvent) => {
			if (event.key === "Escape") setArmedAt(null);
		};
		// A touch moves no focus on some phones, so leaving is heard by pointer as well.
		document.addEventListener("pointerdown", elsewhere);
		document.addEventListener("focusin", elsewhere);
		document.addEventListener("keydown", takeBack);
		return () => {
			document.removeEventListener("pointerdown", elsewhere);
			document.removeEventListener("focusin", elsewhere);
			document.removeEventListener("keydown", takeBack);
		};
	}, [armed]);

	return (
		<fieldset ref={group} className="af-sure" data-armed={armed ? "" : undefined}>
			<p className="af-sure-question" id={id} role="alert">
				{armed ? question : null}
			</p>
			<span className="af-buttons">
				<Button
					{...button}
					kind={armed ? "danger" : kind}
					type={type}
					data-armed={armed ? "" : undefined}
					aria-describedby={armed ? id : undefined}
					onClick={(event) => {
						if (armedAt === null || event.timeStamp - armedAt < SAME_TAP_MS) {
							event.preventDefault();
							if (armedAt === null) setArmedAt(event.timeStamp);
							return;
						}
						const going = onSure?.();
						if (going) return going.finally(() => setArmedAt(null));
						if (type !== "submit") setArmedAt(null);
					}}
				>
					{armed ? yes : children}
				</Button>
				{armed ? (
					<Button kind="quiet" onClick={() => setArmedAt(null)}>
						{no}
					</Button>
				) : null}
			</span>
		</fieldset>
	);
}
