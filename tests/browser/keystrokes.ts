// The keystroke-level model: how long a practised person needs for a task, from what is pressed, typed and thought.
//
// Operators of Card, Moran and Newell, "The keystroke-level model for user performance time with interactive systems",
// Communications of the ACM 23 (1980), with their values (from memory): a key of an average typist 0.28 s, pointing 1.10 s,
// the mental preparation before a step 1.35 s. A tap is pointing with a finger, at the same value; typing on a phone is
// slower than on a keyboard, and counts as much here. Writing by hand: 31 words a minute of text known by heart (a figure of
// handbooks of human factors, from memory), 5 characters a word: 0.39 s a character. The same for both ways, and the M before
// every step of either, so that only what is asked of the hand differs. Carrying, tying and sticking count for neither.

export const SECONDS = { tap: 1.1, key: 0.28, mind: 1.35, hand: 0.39, photo: 2.0 } as const;

/** What one task asks of a person. */
export type Effort = {
	readonly taps: number;
	/** Characters typed on a keyboard or a phone. */
	readonly typed: number;
	/** Characters written by hand. */
	readonly written: number;
	/** Photos: aimed and taken; what is pressed for it counts as taps. */
	readonly photos: number;
	/** Steps that must be thought of: one before each tap, each field, each photo. */
	readonly minds: number;
};

export const NOTHING: Effort = { taps: 0, typed: 0, written: 0, photos: 0, minds: 0 };

export const and = (a: Effort, b: Partial<Effort>): Effort => ({
	taps: a.taps + (b.taps ?? 0),
	typed: a.typed + (b.typed ?? 0),
	written: a.written + (b.written ?? 0),
	photos: a.photos + (b.photos ?? 0),
	minds: a.minds + (b.minds ?? 0),
});

export const secondsOf = ({ taps, typed, written, photos, minds }: Effort): number =>
	taps * SECONDS.tap + typed * SECONDS.key + written * SECONDS.hand + photos * SECONDS.photo + minds * SECONDS.mind;

// ---- the way by paper tag, phone photo and spreadsheet, a line a step

/** A tap, a click, a key that is pressed once. */
export const press = (what: string): Step => ({ what, effort: { ...NOTHING, taps: 1, minds: 1 } });
/** Typed into a cell or a field that was chosen: the choosing, then the characters, then the key that ends it. */
export const type = (text: string): Step => ({
	what: `type ${text}`,
	effort: { ...NOTHING, taps: 1, typed: text.length + 1, minds: 1 },
});
/** Written on a paper tag. */
export const pen = (text: string): Step => ({ what: `write ${text}`, effort: { ...NOTHING, written: text.length, minds: 1 } });
/** The phone's camera is opened, aimed and pressed. */
export const shoot = (what: string): Step => ({ what: `photograph ${what}`, effort: { ...NOTHING, taps: 2, photos: 1, minds: 1 } });

export type Step = { readonly what: string; readonly effort: Effort };
export const sumOf = (steps: readonly Step[]): Effort => steps.reduce((sum, { effort }) => and(sum, effort), NOTHING);
