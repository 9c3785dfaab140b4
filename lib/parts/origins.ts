// What a part is to its machine. In a file of its own: pages at the bench need the words and not the schemas.

export const ORIGINS = ["original", "period", "reproduction", "modern", "unknown"] as const;
