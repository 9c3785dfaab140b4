import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { serveFile } from "@/lib/http/serveFile";

let folder: string;
let file: string;
beforeAll(() => {
	folder = mkdtempSync(path.join(tmpdir(), "asfound-serve-"));
	file = path.join(folder, "bytes");
	writeFileSync(file, "<script>alert(1)</script>");
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const serve = (mediaType: string, name = "x", headers: Record<string, string> = {}) =>
	serveFile(new Request("http://shop.local/files/x", { headers }), { file, mediaType, name, tag: "abc" });

describe("a stored file that is handed out", () => {
	it.each([
		["image/jpeg", "inline", "image/jpeg"],
		["application/pdf", "inline", "application/pdf"],
		["text/plain", "attachment", "text/plain; charset=utf-8"],
		["application/octet-stream", "attachment", "application/octet-stream"],
	])("as %s is shown or saved, never run", async (mediaType, how, type) => {
		const answer = await serve(mediaType);
		expect(answer.headers.get("content-type")).toBe(type);
		expect(answer.headers.get("content-disposition")).toMatch(new RegExp(`^${how};`));
		expect(answer.headers.get("x-content-type-options")).toBe("nosniff");
		expect(answer.headers.get("content-security-policy")).toMatch(/^default-src 'none'/);
		expect(answer.headers.get("content-length")).toBe("25");
		expect(await answer.text()).toBe("<script>alert(1)</script>");
	});

	it("is kept by the browser for ever, and asked for again is not sent again", async () => {
		expect((await serve("image/png")).headers.get("cache-control")).toBe("private, max-age=31536000, immutable");
		const again = await serve("image/png", "x", { "if-none-match": '"abc"' });
		expect(again.status).toBe(304);
		expect(await again.text()).toBe("");
	});

	it("has a name that cannot break out of its header", async () => {
		const answer = await serve("image/png", 'a"\r\nb; ü(1)*.png');
		expect(answer.headers.get("content-disposition")).toBe("inline; filename*=UTF-8''a%22%0D%0Ab%3B%20%C3%BC%281%29%2A.png");
	});
});
