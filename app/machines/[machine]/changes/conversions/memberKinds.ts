/** What may belong to a conversion, as its page calls it. */
export const MEMBER_KINDS = {
	fittingsOut: "Parts that it took out",
	fittingsIn: "Parts that it put in",
	alterations: "Alterations",
	connections: "Connections",
	steps: "Steps",
	tests: "Tests",
} as const;
export type MemberKind = keyof typeof MEMBER_KINDS;
