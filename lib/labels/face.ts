// The three faces a label is set in, and what the layout must know about them.

/** Regular, bold, and the fixed-width bold of tags. */
export type Face = "sans" | "bold" | "mono";

/** Height of a capital, in ems: the same in all three faces. Set sizes by it, since "2 mm high" means a capital. */
export const CAP_HEIGHT = 0.668;
/** How far g and y reach below the line, in ems. */
export const DESCENDER = 0.22;

/** What the layout asks of the fonts; handed in, so that paper and screen agree and the layout stays pure. */
export type TypeCase = {
	/** Width of a text in ems. */
	readonly widthOf: (text: string, face: Face) => number;
	/** Whether some font can draw this character (with its accents). */
	readonly covers: (cluster: string) => boolean;
};
