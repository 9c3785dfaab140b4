// Digests, signatures, ids and random numbers against published values; each source stands beside its check.
import { describe, expect, it } from "vitest";
import { uuidv7 } from "@/lib/core/ids";
import { xoshiro128 } from "@/lib/core/random";
import { sha256 } from "@/lib/ledger/hash";
import { importPublicKey, keyPairFromSecret, publicJwk, sign, thumbprint, verify } from "@/lib/ledger/signing";
import ed25519 from "./data/crypto/ed25519.json";
import digests from "./data/crypto/sha256.json";

const bytes = (hex: string) => new Uint8Array(Buffer.from(hex, "hex"));
const keyOf = (rawHex: string) => importPublicKey({ kty: "OKP", crv: "Ed25519", x: Buffer.from(rawHex, "hex").toString("base64url") });

describe("SHA-256", () => {
	// NIST CAVS ShortMsg (seen) and FIPS 180-4 (from memory, checked again); the lengths lie on both sides of the padding's edge.
	it.each(digests)("of $messageHex is as published", ({ messageHex, sha256: digest }) => {
		expect(sha256(bytes(messageHex))).toBe(digest);
	});

	it("of text is that of its UTF-8 bytes", () => {
		expect(sha256("abc")).toBe("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
		expect(sha256("\u00e9")).toBe(sha256(bytes("c3a9")));
	});
});

describe("Ed25519", () => {
	// RFC 8032, section 7.1 (seen).
	it.each(ed25519.rfc8032)("$name signs and verifies as printed", ({ secretKey, publicKey, message, signature }) => {
		const pair = keyPairFromSecret(bytes(secretKey));
		expect(publicJwk(pair.publicKey).x).toBe(Buffer.from(publicKey, "hex").toString("base64url"));
		expect(Buffer.from(sign(pair.privateKey, bytes(message))).toString("hex")).toBe(signature);
		expect(verify(pair.publicKey, bytes(message), bytes(signature))).toBe(true);
	});

	// C2SP/wycheproof, testvectors_v1/ed25519_test.json, commit dac1dd4 (seen): malleable, cut, padded and badly encoded signatures.
	it.each(ed25519.edgeCases)("edge case $tcId, $flags, is $result", ({ publicKey, message, signature, result }) => {
		const key = keyOf(publicKey);
		if (!key.ok) throw new Error(key.error.say);
		expect(verify(key.value, bytes(message), bytes(signature))).toBe(result === "valid");
	});

	it("has more than thirty edge cases, sixteen of them to refuse", () => {
		expect(ed25519.edgeCases.length).toBe(38);
		expect(ed25519.edgeCases.filter(({ result }) => result === "invalid").length).toBe(16);
	});

	it("a key's thumbprint is the one printed in RFC 8037, appendix A.3 (from memory)", () => {
		const key = importPublicKey({ kty: "OKP", crv: "Ed25519", x: "11qYAYKxCrfVS_7TyWQHOg7hcvPapiMlrwIaaPcHURo" });
		if (!key.ok) throw new Error(key.error.say);
		expect(thumbprint(key.value)).toBe("kPrK_qmxVWaYVA9wwBF6Iuo3vVzz7TxHCTwXBygrS4k");
	});
});

describe("ids and random numbers", () => {
	it("the UUID version 7 of RFC 9562, appendix A.6 (from memory), is made from its parts", () => {
		expect(uuidv7(0x017f22e279b0, bytes("0cc318c4dc0c0c07398f"))).toBe("017f22e2-79b0-7cc3-98c4-dc0c0c07398f");
	});

	it("xoshiro128** gives the numbers of its authors' own program, from the state 1, 2, 3, 4", () => {
		// Blackman and Vigna, xoshiro128starstar.c 1.1; values seen in the tests of the Rust crate rand_xoshiro.
		const next = xoshiro128([1, 2, 3, 4]);
		expect(Array.from({ length: 10 }, next)).toEqual([
			11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
		]);
	});
});
