// What of a machine's work is shown, kept in the address so that a view can be shared. Pure.

import type { StepRow } from "@/lib/steps/queries";

export const SHOWN = { open: "Open", now: "Can be done now", waiting: "Waiting", done: "Done", all: "All" } as const;
export type Shown = keyof typeof SHOWN;
export type View = { readonly shown: Shown; readonly who: string; readonly byNumber: boolean };

type Params = Readonly<Record<string, string | string[] | undefined>>;
const one = (value: string | string[] | undefined): string => (typeof value === "string" ? value : "");

/** The view that an address asks for; what it cannot mean is left at the usual view. */
export function viewOf(params: Params): View {
	const shown = one(params.show);
	return {
		shown: Object.hasOwn(SHOWN, shown) ? (shown as Shown) : "all",
		who: one(params.who).slice(0, 20),
		byNumber: one(params.order) === "number",
	};
}

/** The address of a view. */
export function viewHref(base: string, view: View): string {
	const query = new URLSearchParams({
		...(view.shown === "all" ? {} : { show: view.shown }),
		...(view.who === "" ? {} : { who: view.who }),
		...(view.byNumber ? { order: "number" } : {}),
	}).toString();
	return query === "" ? base : `${base}?${query}`;
}

const STANDINGS_SHOWN: Readonly<Record<Shown, (step: StepRow) => boolean>> = {
	all: () => true,
	open: ({ state }) => state === "planned" || state === "doing",
	now: ({ standing }) => standing === "running" || standing === "begun" || standing === "ready",
	waiting: ({ standing, waitsUntil }) => standing === "waits" || waitsUntil !== null,
	done: ({ state }) => state === "done" || state === "dropped",
};

/** The steps of a view. `who` is a person's initials; "-" is nobody yet. */
export function stepsInView(steps: readonly StepRow[], view: View): StepRow[] {
	const shown = steps.filter(
		(step) =>
			STANDINGS_SHOWN[view.shown](step) &&
			(view.who === "" || (view.who === "-" ? step.crew.length === 0 : step.crew.some(({ initials }) => initials === view.who))),
	);
	return view.byNumber ? [...shown].sort((a, b) => a.number - b.number) : shown;
}
