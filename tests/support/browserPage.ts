// Chromium, and a page in it that listens for everything that must not happen.

import { existsSync } from "node:fs";
import path from "node:path";
import { type Browser, type BrowserContext, chromium, type Page } from "playwright-core";

const NAMES = ["chromium-headless-shell", "chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

/** Chromium's file: the one named, the system's, or Playwright's own. */
function chromiumFile(): string {
	const named = process.env.ASFOUND_CHROMIUM;
	if (named) return named;
	const folders = (process.env.PATH ?? "").split(path.delimiter).filter(Boolean);
	const there = NAMES.flatMap((name) => folders.map((folder) => path.join(folder, name))).find(existsSync);
	return there ?? chromium.executablePath();
}

/** The name by which phones would reach the shop. A label cannot carry 127.0.0.1: to a phone that is the phone itself. */
export const SHOP_NAME = "quaylane.local";

const launching = () => ({
	executablePath: chromiumFile(),
	args: [
		"--no-sandbox",
		"--disable-gpu",
		"--disable-quic",
		"--no-first-run",
		"--disable-background-networking",
		"--disable-component-update",
		"--disable-sync",
		// In a shop's network a name such as this leads to the shop's computer; here that is this one.
		`--host-resolver-rules=MAP ${SHOP_NAME} 127.0.0.1`,
	],
});

export const openBrowser = (): Promise<Browser> => chromium.launch(launching());

/** A phone that keeps what it keeps in `folder`: opened on the same folder it remembers, also when it was killed. */
export const openPhone = (folder: string): Promise<BrowserContext> =>
	chromium.launchPersistentContext(folder, { ...launching(), ...lookingLike({ size: PHONE, touch: true }) });

/** At the bench: a phone in one hand. */
export const PHONE = { width: 360, height: 740 } as const;
/** At the desk. */
export const DESK = { width: 1440, height: 900 } as const;

export type Look = {
	readonly size: { readonly width: number; readonly height: number };
	readonly scheme?: "light" | "dark";
	/** Fingers instead of a mouse. */
	readonly touch?: boolean;
};

const lookingLike = ({ size, scheme = "light", touch = false }: Look) =>
	({
		viewport: { ...size },
		colorScheme: scheme,
		hasTouch: touch,
		isMobile: touch,
		deviceScaleFactor: 1,
		locale: "en-GB",
		timezoneId: "Europe/Amsterdam",
		reducedMotion: "reduce",
	}) as const;

export const openContext = (browser: Browser, look: Look): Promise<BrowserContext> => browser.newContext(lookingLike(look));

/** A page, and what went wrong on it so far: errors in the console, broken policies, scripts that failed. */
export type WatchedPage = { readonly page: Page; readonly wrongs: string[] };

/** What the browser broke off itself, when a page was left before it came; and what it asks for of its own accord. */
const HARMLESS = /net::ERR_ABORTED|favicon\.ico$/;

export function watched(page: Page): WatchedPage {
	const wrongs: string[] = [];
	// From now on the browser asks us for files, instead of a window that nobody can answer.
	page.on("filechooser", () => undefined);
	page.on("console", (message) => {
		const text = `${message.text().slice(0, 400)} ${message.location().url}`;
		if (message.type() !== "error" && !/content security/i.test(text)) return;
		if (!HARMLESS.test(text)) wrongs.push(`${page.url()}: ${text}`);
	});
	page.on("pageerror", (error) => wrongs.push(`${page.url()}: ${error.message}`));
	return { page, wrongs };
}

export async function openPage(context: BrowserContext): Promise<WatchedPage> {
	// Enough for a slow machine, and short enough that a test which waits in vain says what for.
	context.setDefaultTimeout(15_000);
	return watched(await context.newPage());
}
