/** What a part is relative to its machine, as choices. */
export const ORIGIN_OPTIONS = [
	{ value: "original", label: "original to this machine" },
	{ value: "period", label: "period: same kind, from elsewhere" },
	{ value: "reproduction", label: "reproduction" },
	{ value: "modern", label: "modern substitute" },
	{ value: "unknown", label: "not known" },
] as const;
