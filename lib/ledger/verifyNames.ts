// How the verifier names a row: by what a person calls it, never by its id alone where there is something better. Pure.

type Image = Readonly<Record<string, unknown>>;

/** "DigitalItem" as people say it: "digital item". */
export const tableInWords = (table: string): string =>
	table.replace(/(?<=[a-z])[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`).replace(/^[A-Z]/, (letter) => letter.toLowerCase());

const text = (value: unknown): string | null => (typeof value === "string" && value !== "" ? value : null);
const cut = (words: string): string => (words.length > 60 ? `${words.slice(0, 59)}…` : words);
const quoted = (value: unknown): string | null => {
	const words = text(value);
	return words === null ? null : `"${cut(words)}"`;
};

/** `part 12-0147-K "Lens carriage"`; `position k05 "Lamp, left"`; `work 0193...` where nothing better is known. */
export function rowInWords(table: string, id: string, image: Image, tag: string | null): string {
	const number = typeof image.number === "number" && table !== "Tag" ? String(image.number) : null;
	const mark = tag ?? text(image.mark) ?? number;
	const name = quoted(image.name) ?? quoted(image.title) ?? quoted(image.question) ?? quoted(image.what) ?? quoted(image.words);
	const called = [mark, name].filter((part) => part !== null).join(" ");
	return `${tableInWords(table)} ${called || id}`;
}

/** A value as it stands in a sentence. */
export const valueInWords = (value: unknown): string => (value === null || value === undefined ? "nothing" : JSON.stringify(value));
