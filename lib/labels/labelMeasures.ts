// The measures that every part of a label shares, in mm.

/** A dot of a 203 dpi label printer; modules and rules are whole dots, so that none comes out a dot too wide. */
export const DOT = 25.4 / 203;
/** No text on a label is smaller: the height of its capitals. */
export const SMALLEST_CAP = 2;
/** What is kept free along the edges, for printers and cutters that are a little off. */
export const INSET = 1.5;
export const RULE = 3 * DOT;
