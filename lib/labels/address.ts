// The address in a label's QR code, in the few characters that keep the code small.

import { ok, type Refusal, type Result, refuse } from "@/lib/core/result";
import type { Tag } from "@/lib/tags/tag";

declare const addressBrand: unique symbol;

/** Scheme, host and port in capitals, `HTTP://192.168.1.5:3443`, all in the QR code's alphanumeric characters. */
export type LabelAddress = string & { readonly [addressBrand]: "LabelAddress" };

// ISO/IEC 18004 alphanumeric mode, less the characters that no host has. Capitals are the same host.
const ALPHANUMERIC_HOST = /^[A-Z0-9.-]+(?::[0-9]{1,5})?$/;

/**
 * Reads the shop's address for labels as typed: host and port, with or without `http://` or `https://`.
 * Refuses a path, since the code writes everything in capitals and only a host does not mind, and hosts that only the
 * computer itself can reach, since a phone scans the label.
 *
 * @example labelAddress("http://192.168.1.5:3443/") // "HTTP://192.168.1.5:3443"
 */
export function labelAddress(text: string): Result<LabelAddress, Refusal> {
	const typed = text.trim();
	const withScheme = /^[a-z][a-z0-9+.-]*:\/\//i.test(typed) ? typed : `http://${typed}`;
	const url = URL.canParse(withScheme) ? new URL(withScheme) : null;
	if (typed === "" || url === null || (url.protocol !== "http:" && url.protocol !== "https:")) {
		return refuse("address-unreadable", "Write the address that phones in the shop use, such as 192.168.1.5:3443 or shop.local.");
	}
	if (url.pathname !== "/" || url.search !== "" || url.hash !== "" || url.username !== "" || url.password !== "") {
		return refuse("address-has-path", "Write only the host and port of the address, without anything after it.");
	}
	const host = url.host.toUpperCase();
	if (!ALPHANUMERIC_HOST.test(host)) {
		return refuse(
			"address-characters",
			"A label's code can hold letters, digits, dots and dashes in an address. Use the shop computer's name or its IPv4 address.",
		);
	}
	if (/^(LOCALHOST|127\.[0-9.]+|0\.0\.0\.0)(:|$)/.test(host)) {
		return refuse(
			"address-is-local",
			"This address leads every phone to itself. Use the shop computer's name or address in the network, such as 192.168.1.5:3443.",
		);
	}
	return ok(`${url.protocol.toUpperCase()}//${host}` as LabelAddress);
}

/** What a label's QR code holds: the tag, or the shop's address with the tag. All in alphanumeric mode. */
export const codeText = (tag: Tag, address: LabelAddress | null): string => (address === null ? tag : `${address}/T/${tag}`);
