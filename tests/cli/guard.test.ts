import { describe, expect, it } from "vitest";
import { refusalOf } from "@/lib/http/guard";

const ask = (method: string, headers: Record<string, string>) =>
	refusalOf({ method, headers: new Headers({ host: "192.168.1.5:3200", ...headers }) });
const own = { origin: "http://192.168.1.5:3200" };

describe("the guard at the door", () => {
	it.each([
		["by its address in the shop's network", {}],
		["on this computer", { host: "localhost:3200" }],
		["by an address of the newer kind", { host: "[fe80::1]:3200" }],
		["by its name in the shop's network", { host: "bench.local:3200" }],
		["by a bare name", { host: "bench" }],
	])("lets a page be read %s", (_, headers) => {
		expect(ask("GET", headers)).toBeUndefined();
	});

	it.each([
		["under a stranger's name (DNS rebinding)", "GET", { host: "evil.example" }],
		["under a name that only begins like an address", "GET", { host: "192.168.1.5.evil.example" }],
		["without any name", "GET", { host: "" }],
		["a write from a page elsewhere", "POST", { origin: "http://evil.example", "sec-fetch-site": "cross-site" }],
		["a write from another port of this computer", "POST", { origin: "http://192.168.1.5:8080", "sec-fetch-site": "same-site" }],
		["a write that does not say where it comes from", "POST", {}],
		["a write from nowhere", "POST", { origin: "null" }],
		["a write whose browser says that it came from elsewhere", "POST", { ...own, "sec-fetch-site": "cross-site" }],
	])("refuses %s", (_, method, headers) => {
		expect(ask(method, headers as Record<string, string>)).toEqual(expect.any(String));
	});

	it("lets the shop's own pages write", () => {
		expect(ask("POST", own)).toBeUndefined();
		expect(ask("POST", { ...own, "sec-fetch-site": "same-origin" })).toBeUndefined();
	});
});
