/** One answer to choose: what is sent, what is read, and a line that explains it where there is room. */
export type Option = { readonly value: string; readonly label: string; readonly hint?: string };
