"use client";

import { useRouter } from "next/navigation";
import { type ReactNode, useEffect, useState } from "react";

const FORM = "print-choices";

/** What the form says, as an address has it. A first free label is one of the sheet shown, so none of another stock's. */
function chosenIn(form: HTMLFormElement): URLSearchParams {
	const chosen = new URLSearchParams([...new FormData(form)].map(([name, value]) => [name, String(value)]));
	if (chosen.get("stock") !== (form.dataset.stock ?? null)) chosen.delete("start");
	return chosen;
}

/** On which stock, from which label, how many: shown as soon as it is chosen. `stock` is the one that the page shows. */
export function PrintChoices({
	action,
	stock,
	children,
}: {
	readonly action: string;
	readonly stock: string;
	readonly children: ReactNode;
}) {
	const router = useRouter();
	return (
		<form
			id={FORM}
			action={action}
			data-stock={stock}
			autoComplete="off"
			className="flex flex-col gap-2"
			onChange={({ currentTarget }) => {
				if (currentTarget.checkValidity()) router.replace(`${action}?${chosenIn(currentTarget)}`, { scroll: false });
			}}
		>
			{children}
		</form>
	);
}

/** What is chosen and not shown yet: the print follows it at once. "unclear" while a figure is missing; null when all is shown. */
export function useChosen(): URLSearchParams | "unclear" | null {
	const [chosen, setChosen] = useState<URLSearchParams | "unclear" | null>(null);
	useEffect(() => {
		const onInput = ({ target }: Event) => {
			const form = target instanceof Element ? target.closest(`form#${FORM}`) : null;
			if (form instanceof HTMLFormElement) setChosen(form.checkValidity() ? chosenIn(form) : "unclear");
		};
		document.addEventListener("input", onInput);
		return () => document.removeEventListener("input", onInput);
	}, []);
	return chosen;
}

/** The link to a print-out as it is chosen. Key it by its address. */
export function PrintLink({ path, shown, children }: { readonly path: string; readonly shown: string; readonly children: ReactNode }) {
	const chosen = useChosen();
	if (chosen === "unclear") return null;
	return (
		<a className="af-button" data-kind="main" href={`${path}?${chosen ?? shown}`} target="_blank" rel="noopener">
			{children}
		</a>
	);
}
