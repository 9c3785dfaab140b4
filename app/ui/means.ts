/**
 * What a colour may say, always beside a word or a shape: "original" (verdigris: original, done, well),
 * "stop" (oxide: cannot be undone, must stop, is missing), "wait" (brass: waiting, due, unsure), "plain" (nothing).
 */
export type Means = "original" | "stop" | "wait" | "plain";
