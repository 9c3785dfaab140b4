/**
 * What waits for its words: a photo, paper or scanned tag without any, that shows no part and no bag either. One that was
 * taken with a take-out says by its part what it is, and would only fill the evening's list.
 */
export const WAITS_FOR_WORDS = { wordsAt: null, stands: "yes", partId: null, bagId: null } as const;
