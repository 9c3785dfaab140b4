import { createHash } from "node:crypto";
import canonicalize from "canonicalize";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { seededBytes } from "@/lib/core/random";
import { canonical } from "@/lib/ledger/canonical";
import { type EntryBody, entryHash, matchesSeal, newSalt, sealOf, sha256 } from "@/lib/ledger/hash";

const text = fc.string({ unit: "grapheme", maxLength: 20 });
const digest = fc.string({ unit: fc.constantFrom(..."0123456789abcdef"), minLength: 64, maxLength: 64 });
const open = fc.dictionary(text, fc.oneof(text, fc.integer(), fc.boolean(), fc.constant(null), fc.array(fc.integer())));
const entry: fc.Arbitrary<Omit<EntryBody, "open"> & { open: unknown }> = fc.record({
	seq: fc.nat(),
	machine: fc.option(text),
	machineSeq: fc.option(fc.nat()),
	at: fc.constant("2026-03-02T08:00:00.000Z"),
	actor: text,
	action: text,
	subject: text,
	open,
	seal: fc.option(digest),
	prev: digest,
	prevOfMachine: fc.option(digest),
});

const FIRST: EntryBody = {
	seq: 1,
	machine: null,
	machineSeq: null,
	at: "2026-03-02T08:00:00.000Z",
	actor: "00000000-0000-7000-8000-000000000000",
	action: "shop.opened",
	subject: "Shop/shop",
	open: `{"facts":{"say":"Opened the shop."},"rows":{}}`,
	seal: null,
	prev: "0".repeat(64),
	prevOfMachine: null,
};

describe("the hash of an entry", () => {
	it("is SHA-256 of the canonical text of its eleven fields, as any other program would compute it", () => {
		fc.assert(
			fc.property(entry, (drawn) => {
				const elsewhere = createHash("sha256")
					.update(canonicalize(drawn) ?? "")
					.digest("hex");
				expect(entryHash({ ...drawn, open: canonical(drawn.open) })).toBe(elsewhere);
			}),
			{ seed: 29, numRuns: 300 },
		);
	});

	it("changes when any field changes, and only then", () => {
		const changed: Partial<EntryBody>[] = [
			{ seq: 2 },
			{ machine: "m" },
			{ machineSeq: 1 },
			{ at: "2026-03-02T08:00:00.001Z" },
			{ actor: "someone" },
			{ action: "shop.closed" },
			{ subject: "Shop/other" },
			{ open: `{"facts":{"say":"Opened the shop!"},"rows":{}}` },
			{ seal: "0".repeat(64) },
			{ prev: `1${"0".repeat(63)}` },
			{ prevOfMachine: "0".repeat(64) },
		];
		const hashes = changed.map((change) => entryHash({ ...FIRST, ...change }));
		expect(new Set([entryHash(FIRST), ...hashes]).size).toBe(12);
		const withMore = { ...FIRST, hash: "whatever", note: "a column that a later version adds" };
		expect(entryHash(withMore)).toBe(entryHash(FIRST));
	});

	it("of this entry stays this one for ever", () => {
		// Pinned, and computed once by another program (Python's json and hashlib): a change here would make every ledger that was ever written fail its check.
		expect(entryHash(FIRST)).toBe("f262a92c041aefaeb6f81dc6b01bf433d20ce626a4fab1144612010b24597ec0");
	});
});

describe("a seal", () => {
	const salt = newSalt(seededBytes(1));

	it("hides what was withheld, and matches only that with that salt", () => {
		const withheld = { price: 62000, seller: "A. Nobody" };
		const seal = sealOf(salt, withheld);
		expect(seal).toBe(sha256(Buffer.concat([Buffer.from(salt, "hex"), Buffer.from(canonical(withheld), "utf8")])));
		expect(matchesSeal(seal, salt, { seller: "A. Nobody", price: 62000 })).toBe(true);
		expect(matchesSeal(seal, salt, { ...withheld, price: 62001 })).toBe(false);
		expect(matchesSeal(seal, newSalt(seededBytes(2)), withheld)).toBe(false);
		expect(sealOf(newSalt(seededBytes(3)), withheld)).not.toBe(seal);
	});

	it.each(["", "00", "G".repeat(32), salt.toUpperCase().replace(/^./, "A"), `${salt}0`])("of the salt %s is none", (wrong) => {
		expect(() => sealOf(wrong, {})).toThrow("a salt is 32 lower-case hex digits");
		expect(matchesSeal("0".repeat(64), wrong, {})).toBe(false);
	});

	it("has a salt of 128 bits from the source that is handed in", () => {
		expect(salt).toMatch(/^[0-9a-f]{32}$/);
		expect(newSalt(seededBytes(1))).toBe(salt);
		expect(newSalt(seededBytes(2))).not.toBe(salt);
	});
});
