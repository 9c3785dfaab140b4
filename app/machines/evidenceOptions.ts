/** How something is known, strongest first, as choices. */
export const EVIDENCE_OPTIONS = [
	{ value: "seen", label: "Seen by us" },
	{ value: "documented", label: "Documented" },
	{ value: "told", label: "Told" },
	{ value: "assumed", label: "Assumed" },
] as const;
