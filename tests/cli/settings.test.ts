import path from "node:path";
import { describe, expect, it } from "vitest";
import { readConfig } from "@/lib/config";

const mistakes = (env: Record<string, string>) => {
	const read = readConfig(env);
	return read.ok ? [] : read.error;
};

describe("the settings", () => {
	it("are all optional, and an empty one is none", () => {
		const standing = {
			ok: true,
			value: { dataFolder: path.resolve("data"), host: "127.0.0.1", port: 3200, address: null, print: null, tls: null },
		};
		expect(readConfig({})).toEqual(standing);
		expect(readConfig({ ASFOUND_DATA: "", ASFOUND_PORT: "", ASFOUND_TLS_KEY: "", HOME: "/somewhere" })).toEqual(standing);
	});

	it("take a certificate with its key, by their files", () => {
		const pem = path.resolve("package.json");
		expect(readConfig({ ASFOUND_TLS_KEY: "package.json", ASFOUND_TLS_CERT: pem })).toMatchObject({
			ok: true,
			value: { tls: { key: pem, cert: pem } },
		});
	});

	it.each([
		["lp", ["lp"]],
		["lp -d labels -o fit-to-page=false", ["lp", "-d", "labels", "-o", "fit-to-page=false"]],
		[`lp -d "Front desk" -t 'two words'`, ["lp", "-d", "Front desk", "-t", "two words"]],
		[`lp -o job="a b"`, ["lp", "-o", "job=a b"]],
		// No shell reads it, so what a shell would run or open is a word like any other.
		["lp; rm -rf $HOME > x | `y`", ["lp;", "rm", "-rf", "$HOME", ">", "x", "|", "`y`"]],
	])("take the printer's command %s as a program with its words", (command, print) => {
		expect(readConfig({ ASFOUND_PRINT: command })).toMatchObject({ ok: true, value: { print } });
	});

	it.each(['lp -d "labels', "lp 'x", '"'])("refuse the printer's command %s, in which a quote is left open", (command) => {
		expect(mistakes({ ASFOUND_PRINT: command }).join()).toMatch(/ASFOUND_PRINT is a program with its words.*close every quote/);
	});

	it("that are wrong are all named at once, each with what to do", () => {
		const said = mistakes({
			ASFOUND_PORT: "70000",
			ASFOUND_ADDRESS: "http://shop.local/",
			ASFOUND_HOSTS: "shop,",
			ASFOUND_TLS_KEY: "nowhere.pem",
			ASFOUND_PROT: "1",
		});
		expect(said).toHaveLength(6);
		expect(said.join("\n")).toMatch(/ASFOUND_PORT is a number between 1 and 65535/);
		expect(said.join("\n")).toMatch(/ASFOUND_ADDRESS is the name by which phones reach this computer/);
		expect(said.join("\n")).toMatch(/ASFOUND_HOSTS lists further names/);
		expect(said.join("\n")).toMatch(/ASFOUND_TLS_KEY names a file that is not there/);
		expect(said.join("\n")).toMatch(/ASFOUND_TLS_KEY and ASFOUND_TLS_CERT go together/);
		expect(said.join("\n")).toMatch(/ASFOUND_PROT is no setting of Asfound\. The settings are ASFOUND_DATA, /);
	});

	it("of the tests are not taken for slips of the finger", () => {
		expect(mistakes({ ASFOUND_CHROMIUM: "/usr/bin/chromium", ASFOUND_KILLS: "200" })).toEqual([]);
	});
});
