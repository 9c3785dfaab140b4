// Every page that can be reached from the shop's first one by following links: one or two of each kind.

import type { Page } from "playwright-core";

/** Ways of seeing the same page that are worth a look of their own. */
const VIEWS = ["state", "strip"];
/** Not pages: files, papers to print, and what a download leads to. */
const NO_PAGE = /^\/(files|api|labels\/pdf|_next)\b|\.(pdf|zip|json|csv|svg)$/;

/** The kind of page: machine 12's build and machine 13's are one kind. */
export function kindOf(url: URL): string {
	const path = url.pathname
		.split("/")
		.map((piece, at, all) => {
			const under = all[at - 1] ?? "";
			if (/^\d+$/.test(piece)) return "N";
			if (/^[0-9a-f]{8}-[0-9a-f-]{27}$/.test(piece)) return "ID";
			if (under === "t" || under === "T") return "TAG";
			if (under === "stock" && all[at - 2] === "labels") return "N";
			return ["build", "take-out", "put-in", "reach"].includes(under) ? "MARK" : piece;
		})
		.join("/");
	const views = VIEWS.flatMap((name) => url.searchParams.get(name) ?? []);
	return [path, ...views].join(" ");
}

/** Pages still to be seen. `most` is how many of one kind are enough; `seeds` come first. */
export class Frontier {
	private readonly waiting: string[];
	private readonly met = new Set<string>();
	private readonly counted = new Map<string, number>();

	constructor(
		private readonly base: string,
		private readonly most: (kind: string) => number,
		seeds: readonly string[] = ["/"],
	) {
		this.waiting = [...seeds];
	}

	/** The next address (a path with its query) and its kind; null when all have been seen. */
	next(): { readonly address: string; readonly kind: string } | null {
		for (let address = this.waiting.shift(); address !== undefined; address = this.waiting.shift()) {
			const url = new URL(address, this.base);
			const kind = kindOf(url);
			if (url.origin !== this.base || NO_PAGE.test(url.pathname)) continue;
			const plain = url.pathname + url.search;
			const count = this.counted.get(kind) ?? 0;
			if (this.met.has(plain) || count >= this.most(kind)) continue;
			this.met.add(plain);
			this.counted.set(kind, count + 1);
			return { address: plain, kind };
		}
		return null;
	}

	/** Adds what the page leads to. */
	async follow(page: Page): Promise<void> {
		const links = await page
			.locator("a[href]")
			.evaluateAll((all) => all.map((link) => (link instanceof HTMLAnchorElement ? link.href : "")));
		this.waiting.push(...links.filter((href) => href.startsWith(this.base)));
	}
}
