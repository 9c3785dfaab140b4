import { generateKeyPairSync } from "node:crypto";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	exportPrivateKey,
	exportPublicKey,
	importPrivateKey,
	importPublicKey,
	keyPairFromSecret,
	makeKeyPair,
	publicJwk,
	sign,
	signHex,
	thumbprint,
	verify,
	verifyHex,
} from "@/lib/ledger/signing";

const shop = keyPairFromSecret(new Uint8Array(32).fill(7));
const other = keyPairFromSecret(new Uint8Array(32).fill(8));

describe("the shop's signature", () => {
	it("is made once and for all: the same head signed again gives the same bytes", () => {
		expect(signHex(shop.privateKey, "head")).toBe(signHex(shop.privateKey, "head"));
		expect(verifyHex(shop.publicKey, "head", signHex(shop.privateKey, "head"))).toBe(true);
	});

	it("fails for another text, another key, and when any one bit is turned", () => {
		const signature = sign(shop.privateKey, "head");
		expect(verify(shop.publicKey, "heed", signature)).toBe(false);
		expect(verify(other.publicKey, "head", signature)).toBe(false);
		fc.assert(
			fc.property(fc.nat(511), (bit) => {
				const turned = Uint8Array.from(signature);
				turned[bit >> 3] = (turned[bit >> 3] ?? 0) ^ (1 << (bit & 7));
				expect(verify(shop.publicKey, "head", turned)).toBe(false);
			}),
			{ seed: 31 },
		);
	});

	it("of a wrong length or in other letters is not valid, and no surprise", () => {
		const signature = sign(shop.privateKey, "head");
		for (const wrong of [new Uint8Array(0), signature.slice(0, 63), Uint8Array.from([...signature, 0])])
			expect(verify(shop.publicKey, "head", wrong)).toBe(false);
		for (const wrong of ["", "zz", signHex(shop.privateKey, "head").toUpperCase()])
			expect(verifyHex(shop.publicKey, "head", wrong)).toBe(false);
		const notEd25519 = generateKeyPairSync("ec", { namedCurve: "P-256" });
		expect(verify(notEd25519.publicKey, "head", signature)).toBe(false);
	});
});

describe("the shop's key", () => {
	it("comes back from its file and signs as before", () => {
		const { privateKey } = makeKeyPair();
		const again = importPrivateKey(exportPrivateKey(privateKey));
		expect(signHex(again, "head")).toBe(signHex(privateKey, "head"));
		expect(exportPublicKey(again)).toBe(exportPublicKey(privateKey));
	});

	it("travels as its public half only, as PEM or JWK", () => {
		for (const given of [exportPublicKey(shop.privateKey), publicJwk(shop.privateKey), JSON.stringify(publicJwk(shop.publicKey))]) {
			const key = importPublicKey(given);
			if (!key.ok) throw new Error(key.error.say);
			expect(thumbprint(key.value)).toBe(thumbprint(shop.publicKey));
			expect(verifyHex(key.value, "head", signHex(shop.privateKey, "head"))).toBe(true);
		}
		expect(exportPublicKey(shop.privateKey)).not.toContain("PRIVATE");
	});

	const jwk = publicJwk(shop.publicKey);
	const privateJwk = shop.privateKey.export({ format: "jwk" });
	const rsa = generateKeyPairSync("rsa", { modulusLength: 1024 }).publicKey.export({ type: "spki", format: "pem" }).toString();
	it.each<[string, unknown]>([
		["nothing", null],
		["empty text", ""],
		["junk", "-----BEGIN PUBLIC KEY-----\nAAAA\n-----END PUBLIC KEY-----\n"],
		["a private key", exportPrivateKey(shop.privateKey)],
		["a private JWK", privateJwk],
		["another kind of key", rsa],
		["another curve", { ...jwk, crv: "X25519" }],
		["another family", { ...jwk, kty: "EC" }],
		["a key cut short", { ...jwk, x: jwk.x.slice(1) }],
		["a key in other letters", { ...jwk, x: jwk.x.replace(/^./, "=") }],
		["a number", 5],
	])("%s is refused with a sentence", (_what, given) => {
		const key = importPublicKey(given);
		expect(key.ok === false && key.error.code).toBe("key-unreadable");
	});

	it("of another kind in the shop's own file is a bug", () => {
		const pem = generateKeyPairSync("ec", { namedCurve: "P-256" }).privateKey.export({ type: "pkcs8", format: "pem" }).toString();
		expect(() => importPrivateKey(pem)).toThrow("no Ed25519 key");
		expect(() => keyPairFromSecret(new Uint8Array(31))).toThrow("32 bytes");
	});
});
