// Ed25519 signatures (RFC 8032), by Node's own cryptography. The shop signs the head of a machine's chain; whoever gets
// the dossier checks it with the public key. Keys travel as PEM (RFC 8410) or JWK (RFC 8037).
import {
	createHash,
	createPrivateKey,
	createPublicKey,
	generateKeyPairSync,
	type KeyObject,
	sign as signBytes,
	verify as verifyBytes,
} from "node:crypto";
import { ok, type Result, refuse } from "@/lib/core/result";

/** A new key pair from the system's random source. */
export const makeKeyPair = (): { readonly privateKey: KeyObject; readonly publicKey: KeyObject } => generateKeyPairSync("ed25519");

/** The private key as PEM text (PKCS #8). It lies in the data folder and is never printed. */
export const exportPrivateKey = (key: KeyObject): string => pem(key.export({ type: "pkcs8", format: "pem" }));

/** The public half of a key, private or public, as PEM text (SubjectPublicKeyInfo). */
export const exportPublicKey = (key: KeyObject): string => pem(publicHalf(key).export({ type: "spki", format: "pem" }));

/** A private key from the shop's own file. Anything else there is a broken installation and throws. */
export function importPrivateKey(pemText: string): KeyObject {
	const key = createPrivateKey(pemText);
	if (key.asymmetricKeyType !== "ed25519") throw new Error("the shop's key file holds no Ed25519 key");
	return key;
}

/** The public key, 32 bytes, as JWK fields in their canonical order (RFC 8037): what a dossier carries. */
export function publicJwk(key: KeyObject): { readonly crv: "Ed25519"; readonly kty: "OKP"; readonly x: string } {
	const { x } = publicHalf(key).export({ format: "jwk" });
	if (typeof x !== "string") throw new Error("not an Ed25519 key");
	return { crv: "Ed25519", kty: "OKP", x };
}

/** Reads a public key that came with a dossier: PEM text, or a JWK as text or object. */
export function importPublicKey(given: unknown): Result<KeyObject> {
	const unreadable = refuse("key-unreadable", "This is not a public Ed25519 key: ask the sender for the key file of their shop.");
	try {
		const key =
			typeof given === "string" && given.trimStart().startsWith("-----BEGIN PUBLIC KEY-----")
				? createPublicKey(given)
				: keyFromJwk(typeof given === "string" ? JSON.parse(given) : given);
		return key !== null && key.asymmetricKeyType === "ed25519" ? ok(key) : unreadable;
	} catch {
		return unreadable; // OpenSSL and JSON.parse refuse by throwing; to the reader all of it is one thing
	}
}

/** The key pair of a 32-byte secret (RFC 8032, section 5.1.5), for fixed keys in tests and in the demo shop. */
export function keyPairFromSecret(secret: Uint8Array): { readonly privateKey: KeyObject; readonly publicKey: KeyObject } {
	if (secret.length !== 32) throw new Error(`an Ed25519 secret has 32 bytes, not ${secret.length}`);
	const privateKey = createPrivateKey({ key: Buffer.concat([PKCS8_ED25519, secret]), format: "der", type: "pkcs8" });
	return { privateKey, publicKey: createPublicKey(privateKey) };
}

/** The 64-byte signature of a message. Signing the same message again gives the same signature. */
export const sign = (privateKey: KeyObject, message: string | Uint8Array): Uint8Array => signBytes(null, bytesOf(message), privateKey);

/** Whether the signature of the message is that of the key's owner. A signature of a wrong length is simply not valid. */
export function verify(publicKey: KeyObject, message: string | Uint8Array, signature: Uint8Array): boolean {
	if (publicKey.asymmetricKeyType !== "ed25519" || signature.length !== 64) return false;
	return verifyBytes(null, bytesOf(message), publicKey, signature);
}

/** `sign` as lower-case hex text, for files. */
export const signHex = (privateKey: KeyObject, message: string | Uint8Array): string =>
	Buffer.from(sign(privateKey, message)).toString("hex");

/** `verify` of a signature in lower-case hex text; other text is simply not valid. */
export function verifyHex(publicKey: KeyObject, message: string | Uint8Array, signature: string): boolean {
	return /^[0-9a-f]{128}$/.test(signature) && verify(publicKey, message, Buffer.from(signature, "hex"));
}

/** The name of a key that two people can compare by voice: its JWK thumbprint (RFC 7638), SHA-256 as base64url. */
export function thumbprint(key: KeyObject): string {
	// The fields of publicJwk stand in the order that the RFC asks for.
	return createHash("sha256")
		.update(JSON.stringify(publicJwk(key)))
		.digest("base64url");
}

// The fixed head of a PKCS #8 file for an Ed25519 secret (RFC 8410, section 7); the 32 bytes follow.
const PKCS8_ED25519 = Buffer.from("302e020100300506032b657004220420", "hex");

function keyFromJwk(given: unknown): KeyObject | null {
	if (typeof given !== "object" || given === null) return null;
	const { kty, crv, x, d } = given as Readonly<Record<string, unknown>>;
	// A private key must not travel: reading one as if it were public would hide that it does.
	if (kty !== "OKP" || crv !== "Ed25519" || typeof x !== "string" || d !== undefined) return null;
	if (!/^[A-Za-z0-9_-]{43}$/.test(x)) return null;
	return createPublicKey({ key: { kty, crv, x }, format: "jwk" });
}

function publicHalf(key: KeyObject): KeyObject {
	return key.type === "private" ? createPublicKey(key) : key;
}

const bytesOf = (message: string | Uint8Array): Uint8Array => (typeof message === "string" ? Buffer.from(message, "utf8") : message);

function pem(text: string | Buffer): string {
	return text.toString();
}
