import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

// Relative luminance and contrast ratio as WCAG 2.2 defines them (W3C Recommendation, section 6, "relative luminance", "contrast ratio").
const luminance = (hex: string) => {
	const [r = 0, g = 0, b = 0] = [1, 3, 5].map((at) => {
		const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
		return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
	});
	return 0.2126 * r + 0.7152 * g + 0.0722 * b;
};
const contrast = (a: string, b: string) => {
	const [dark = 0, light = 0] = [luminance(a), luminance(b)].sort((x, y) => x - y);
	return (light + 0.05) / (dark + 0.05);
};

const css = readFileSync(new URL("../../app/ui/tokens.css", import.meta.url), "utf8");
const tokensOf = (selector: string) => {
	const block = css.slice(css.indexOf(selector)).split("}")[0] ?? "";
	return Object.fromEntries([...block.matchAll(/--([\w-]+): (#[0-9a-f]{6});/g)].map(([, name = "", colour = ""]) => [name, colour]));
};
const schemes = {
	light: tokensOf(":root {"),
	"dark, by the system": tokensOf(':root:not([data-theme="light"])'),
	"dark, by choice": tokensOf(':root[data-theme="dark"]'),
};

const words: [string, string][] = ["ink", "ink-2", "verdigris-ink", "oxide-ink", "brass-ink"].flatMap((ink) =>
	["paper", "card", "well"].map((ground): [string, string] => [ink, ground]),
);
words.push(
	["verdigris-ink", "verdigris-wash"],
	["oxide-ink", "oxide-wash"],
	["brass-ink", "brass-wash"],
	["tag-ink", "tag"],
	["on-ink", "ink"],
);
const shapes: [string, string][] = ["verdigris", "oxide", "brass", "edge"].flatMap((ink) =>
	["paper", "card", "well"].map((ground): [string, string] => [ink, ground]),
);

describe.each(Object.entries(schemes))("in the %s colours", (_, tokens) => {
	const ratio = ([ink, ground]: [string, string]) => contrast(tokens[ink] ?? "missing", tokens[ground] ?? "missing");
	it.each(words)("words in %s on %s keep 7:1, as bench text must (WCAG 2.2, 1.4.6)", (...pair) => {
		expect(ratio(pair)).toBeGreaterThanOrEqual(7);
	});
	it.each(shapes)("a shape in %s on %s keeps 3:1 (WCAG 2.2, 1.4.11)", (...pair) => {
		expect(ratio(pair)).toBeGreaterThanOrEqual(3);
	});
	it("the words of a button that takes something away keep 4.5:1 (WCAG 2.2, 1.4.3)", () => {
		expect(ratio(["on-ink", "oxide"])).toBeGreaterThanOrEqual(4.5);
	});
});

it("the two dark lists are the same", () => {
	expect(schemes["dark, by choice"]).toEqual(schemes["dark, by the system"]);
	expect(Object.keys(schemes.light)).toEqual(expect.arrayContaining(Object.keys(schemes["dark, by choice"])));
});
