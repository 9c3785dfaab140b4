// How much script pages bring beyond what the framework brings to any page, as a phone fetches it.

import { readFileSync } from "node:fs";
import path from "node:path";
import { gzipSync } from "node:zlib";
import type { BrowserContext } from "playwright-core";
import { openPage } from "@/tests/support/browserPage";

const BUILT = path.resolve(".next");

const kilobytes = (files: readonly Buffer[]): number => files.reduce((sum, file) => sum + gzipSync(file, { level: 9 }).length, 0) / 1024;

/** What every page of this framework brings, by the build's own list; the polyfills, which no browser of today fetches, not counted. */
export function barePage(): number {
	const manifest: unknown = JSON.parse(readFileSync(path.join(BUILT, "build-manifest.json"), "utf8"));
	if (typeof manifest !== "object" || manifest === null || !("rootMainFiles" in manifest) || !Array.isArray(manifest.rootMainFiles))
		throw new Error("the build has no list of its main files");
	const files = manifest.rootMainFiles.filter((name): name is string => typeof name === "string");
	return kilobytes(files.map((name) => readFileSync(path.join(BUILT, name))));
}

/** Compressed kilobytes of script that a page fetches until it rests. */
export async function scriptOf(context: BrowserContext, address: string): Promise<number> {
	const { page } = await openPage(context);
	const scripts: Promise<Buffer>[] = [];
	page.on("response", (answer) => {
		if (answer.request().resourceType() === "script") scripts.push(answer.body());
	});
	await page.goto(address, { waitUntil: "networkidle" });
	const weight = kilobytes(await Promise.all(scripts));
	await page.close();
	return weight;
}
