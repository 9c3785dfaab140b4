import { describe, expect, it } from "vitest";
import { refusalOf } from "@/lib/http/guard";

const request = (method: string, headers: Record<string, string>) => ({ method, headers: new Headers(headers) });
const write = (headers: Record<string, string>) => refusalOf(request("POST", headers));

describe("the guard at the door", () => {
	it.each([
		"localhost:3000",
		"192.168.1.20:3000",
		"[fd00::1]:3000",
		"[fe80::1]:3000",
		"shop-pc:3000",
		"bench",
		"shop.local",
		"SHOP.local:3000",
	])("answers under %s", (host) => {
		expect(refusalOf(request("GET", { host }))).toBeUndefined();
	});

	// A stranger's name that leads to this computer (DNS rebinding), and what only looks like one of ours.
	it.each(["evil.example", "evil.example:3000", "192.168.1.20.evil.example", "evil.local.example", "", "a b"])(
		"does not answer under %j, and says what to do",
		(host) => {
			expect(refusalOf(request("GET", { host }))).toContain("ASFOUND_HOSTS");
		},
	);

	it("lets the shop's own pages write", () => {
		expect(write({ host: "192.168.1.20:3000", origin: "http://192.168.1.20:3000", "sec-fetch-site": "same-origin" })).toBeUndefined();
		expect(write({ host: "192.168.1.20:3000", origin: "http://192.168.1.20:3000" })).toBeUndefined();
	});

	it.each([
		["no page at all", {}],
		["a page without an address", { origin: "null" }],
		["a page elsewhere", { origin: "http://evil.example" }],
		["a page elsewhere, whose browser says so", { origin: "http://evil.example", "sec-fetch-site": "cross-site" }],
		["another port of the same machine", { origin: "http://192.168.1.20:8080" }],
		["another port, whose browser says so", { origin: "http://192.168.1.20:8080", "sec-fetch-site": "same-site" }],
		["nonsense", { origin: "::::" }],
		["a page elsewhere that claims ours", { origin: "http://192.168.1.20:3000", "sec-fetch-site": "cross-site" }],
	])("refuses a write from %s", (_, headers) => {
		expect(write({ host: "192.168.1.20:3000", ...headers })).toContain("Only the shop's own pages");
	});
});
