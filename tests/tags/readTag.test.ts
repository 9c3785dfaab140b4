import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CHECK_CHARACTERS } from "@/lib/tags/checkCharacter";
import { readTag } from "@/lib/tags/readTag";
import { tagSchema } from "@/lib/tags/schema";
import { formatTag, usableNumber } from "@/lib/tags/tag";

const tagged = fc
	.tuple(fc.integer({ min: 0, max: 9999 }), fc.integer({ min: 1, max: 9999 }))
	.filter(([machine, number]) => usableNumber(machine, number))
	.map(([machine, number]) => ({ machine, number, tag: formatTag(machine, number) }));

const codeOf = (text: string): string => {
	const read = readTag(text);
	return read.ok ? `read as ${read.value.tag}` : read.error.code;
};
const swapped = (text: string, at: number): string => text.slice(0, at) + text.charAt(at + 1) + text.charAt(at) + text.slice(at + 2);

describe("reading a tag", () => {
	it.each([
		"12-0147-K",
		"12-0147-k",
		" 12-0147-K\n",
		"12 0147 K",
		"12 - 0147 - k",
		"12\t0147  K",
		"12.0147.K",
		"12–0147—K",
		"12\u20110147\u2011K",
		"120147K",
		"120147k",
		"12-0147K",
		"120147-K",
		"012-0147-K",
		"１２-０１４７-Ｋ",
		"HTTP://HOST/T/12-0147-K",
		"http://192.168.1.5:3443/t/12-0147-k",
		"https://shop.example/T/12-0147-K/",
		"https://shop.example/T/12-0147-K?from=scan#now",
		"shop.example/T/12-0147-K",
	])("%j is 12-0147-K", (text) => {
		expect(readTag(text)).toEqual({ ok: true, value: { machine: 12, number: 147, tag: "12-0147-K" } });
	});

	it.each([
		["", "tag-empty"],
		["   ", "tag-empty"],
		["12-147-K", "tag-form"],
		["12-00147-K", "tag-form"],
		["120-147-K", "tag-form"],
		["1-20147-K", "tag-form"],
		["0147-K", "tag-form"],
		["0147K", "tag-form"],
		["12-0147", "tag-form"],
		["12-0147-", "tag-form"],
		["12-0147K-", "tag-form"],
		["12-01-47-K", "tag-form"],
		["12--0147-K", "tag-form"],
		["12345-0147-K", "tag-form"],
		["drive motor", "tag-form"],
		["http://host/T/", "tag-empty"],
		["http://host/machines/12", "tag-form"],
		["12-0147-L", "tag-check"],
		["12-0203-*", "tag-never-printed"],
		["0-0001-*", "tag-never-printed"],
		["12-0000-X", "tag-check"],
	])("%j is refused as %s", (text, code) => {
		expect(codeOf(text)).toBe(code);
	});

	it("says what to do in every refusal", () => {
		for (const text of ["", "12-147-K", "0147K", "http://host/elsewhere", "12-0147-L", "12-0203-*", "x".repeat(500)]) {
			const read = readTag(text);
			expect(!read.ok && read.error.say).toMatch(/(Type|Scan|Compare|write) /i);
			expect(!read.ok && read.error.say.length).toBeLessThan(200);
		}
	});

	it("refuses every single wrong character of 12-0208-Q", () => {
		const tag = "12-0208-Q";
		let tried = 0;
		for (let at = 0; at < tag.length; at++) {
			for (const wrong of CHECK_CHARACTERS) {
				if (wrong === tag.charAt(at)) continue;
				expect(codeOf(tag.slice(0, at) + wrong + tag.slice(at + 1))).toMatch(/^tag-/);
				tried++;
			}
		}
		expect(tried).toBe(7 * 36 + 2 * 37);
	});

	it("refuses every swap of two neighbours in 12-0208-Q, dashes included", () => {
		const swaps = [...Array(8).keys()].map((at) => swapped("12-0208-Q", at));
		expect(swaps.map(codeOf)).toEqual(swaps.map(() => expect.stringMatching(/^tag-/)));
	});

	it("refuses every single wrong character and every swap of two neighbours in the same tag without separators", () => {
		const bare = "120208Q";
		for (let at = 0; at < bare.length; at++) {
			for (const wrong of CHECK_CHARACTERS) {
				if (wrong !== bare.charAt(at)) expect(codeOf(bare.slice(0, at) + wrong + bare.slice(at + 1))).toMatch(/^tag-/);
			}
			const other = swapped(bare, at);
			if (at + 1 < bare.length && other !== bare) expect(codeOf(other)).toMatch(/^tag-/);
		}
	});

	it("reads back every tag it prints, with separators and without, in either case", () => {
		fc.assert(
			fc.property(tagged, ({ machine, number, tag }) => {
				const read = { ok: true, value: { machine, number, tag } };
				expect(readTag(tag)).toEqual(read);
				expect(readTag(tag.replaceAll("-", "").toLowerCase())).toEqual(read);
				expect(readTag(`HTTP://192.168.178.20:3443/T/${tag}`)).toEqual(read);
			}),
			{ seed: 20260302, numRuns: 2000 },
		);
	});

	it("never takes a tag with one wrong character for another tag, whatever the character", () => {
		const characters = fc.constantFrom(...CHECK_CHARACTERS, "-", " ", ".", "/", ":", "é", "😀");
		fc.assert(
			fc.property(tagged, fc.nat(), characters, ({ tag }, place, wrong) => {
				const at = place % tag.length;
				const read = readTag(tag.slice(0, at) + wrong + tag.slice(at + 1));
				if (read.ok) expect(read.value.tag).toBe(tag);
			}),
			{ seed: 20260302, numRuns: 20_000 },
		);
	});

	it("never takes a tag with two swapped neighbours for another tag", () => {
		fc.assert(
			fc.property(tagged, fc.nat(), ({ tag }, place) => {
				const read = readTag(swapped(tag, place % (tag.length - 1)));
				if (read.ok) expect(read.value.tag).toBe(tag);
			}),
			{ seed: 20260302, numRuns: 20_000 },
		);
	});

	it("catches a digit typed for the first dash of a three-digit machine, which the check character alone would let through", () => {
		// 900-0147 and 9001-0147 have the same check character.
		expect(formatTag(900, 147).at(-1)).toBe(formatTag(9001, 147).at(-1));
		expect(codeOf(formatTag(900, 147).replace("-", "1"))).toBe("tag-form");
	});

	it("answers any text at all, and never by an exception", () => {
		fc.assert(
			fc.property(fc.string({ unit: "binary" }), (text) => {
				const read = readTag(text);
				if (!read.ok) expect(read.error.say).not.toBe("");
			}),
			{ seed: 20260302, numRuns: 2000 },
		);
	});
});

describe("a tag in a form", () => {
	it("comes out in its printed form", () => {
		expect(tagSchema.parse(" 120147k ")).toBe("12-0147-K");
	});
	it("is refused with the reader's own sentence", () => {
		const refused = tagSchema.safeParse("12-0147-L");
		const read = readTag("12-0147-L");
		expect(refused.error?.issues[0]?.message).toBe(!read.ok && read.error.say);
	});
});
