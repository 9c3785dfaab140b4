import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CHECK_CHARACTERS } from "@/lib/tags/checkCharacter";
import { readTag } from "@/lib/tags/readTag";
import { suggestTags, tagCandidates } from "@/lib/tags/suggestTags";
import { formatTag, type Tag, usableNumber } from "@/lib/tags/tag";

const shop = new Set<Tag>([201, 202, 204, 205, 206, 207, 208, 210].map((number) => formatTag(12, number)));
const inShop = (tag: Tag): boolean => shop.has(tag);

const tagged = fc
	.tuple(fc.integer({ min: 0, max: 999 }), fc.integer({ min: 1, max: 9999 }))
	.filter(([machine, number]) => usableNumber(machine, number))
	.map(([machine, number]) => formatTag(machine, number));

describe("a slip in a tag", () => {
	it.each([
		["two digits swapped", "12-0280-Q"],
		["number and check character swapped", "12-020Q8"],
		["one wrong digit", "12-0207-Q"],
		["a wrong check character", "12-0208-O"],
		["the letter O for a zero", "12-02O8-Q"],
		["a zero left out", "12-208-Q"],
		["a digit typed twice", "12-02208-Q"],
		["the dash one place too late", "120-208-Q"],
		["a scanned address with a wrong digit", "HTTP://HOST/T/12-0209-Q"],
	])("%s is answered with the tag that was meant", (_slip, text) => {
		expect(readTag(text).ok).toBe(false);
		expect(suggestTags(text, inShop)).toContain("12-0208-Q");
	});

	it("is answered only with tags that exist", () => {
		expect(suggestTags("12-0280-Q", () => false)).toEqual([]);
		expect(suggestTags("12-0280-Q", inShop)).toEqual(["12-0208-Q"]);
	});

	it("puts a letter that looks like the digit before any other wrong character", () => {
		expect(tagCandidates("12-02O8-Q")[0]).toBe("12-0208-Q");
	});

	it("is answered with at most five tags, each of which reads", () => {
		fc.assert(
			fc.property(fc.stringMatching(/^[0-9]{0,4}-?[0-9A-Z]{0,5}-?[0-9A-Z]?$/), (text) => {
				const suggested = suggestTags(text, () => true);
				expect(suggested.length).toBeLessThanOrEqual(5);
				for (const tag of suggested) expect(readTag(tag)).toMatchObject({ ok: true, value: { tag } });
			}),
			{ seed: 20260302, numRuns: 500 },
		);
	});

	it("always has the tag that was meant among its candidates: one wrong character, or one swap", () => {
		fc.assert(
			fc.property(tagged, fc.nat(), fc.constantFrom(...CHECK_CHARACTERS), (tag, place, wrong) => {
				const bare = tag.replaceAll("-", "");
				const at = place % bare.length;
				expect(tagCandidates(bare.slice(0, at) + wrong + bare.slice(at + 1))).toContain(tag);
				const next = at % (bare.length - 1);
				expect(tagCandidates(bare.slice(0, next) + bare.charAt(next + 1) + bare.charAt(next) + bare.slice(next + 2))).toContain(tag);
			}),
			{ seed: 20260302, numRuns: 500 },
		);
	});

	it("is not looked for in text that is no tag at all", () => {
		expect(tagCandidates("")).toEqual([]);
		expect(tagCandidates("the big grey gearmotor from the drive plate")).toEqual([]);
	});
});
