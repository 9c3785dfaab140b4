// Two ways to work the screens, behind one set of verbs: with fingers on a phone, and with nothing but a keyboard.
// Both find things by what they are called, as people do, and neither can do what a person could not.

import type { ElementHandle, Locator, Page } from "playwright-core";

export type Where = Page | Locator;
export type Picked = { readonly name: string; readonly mimeType: string; readonly buffer: Buffer };

export type Hands = {
	readonly page: Page;
	/** Presses a button. */
	readonly press: (name: string | RegExp, where?: Where) => Promise<void>;
	/** Follows a link. */
	readonly follow: (name: string | RegExp, where?: Where) => Promise<void>;
	/** Writes into a field, over what stood in it. */
	readonly write: (label: string | RegExp, text: string, where?: Where) => Promise<void>;
	/** Chooses from a long list, by the words shown. */
	readonly choose: (label: string | RegExp, option: string | RegExp, where?: Where) => Promise<void>;
	/** Takes one of a few answers. */
	readonly pick: (option: string | RegExp, where?: Where) => Promise<void>;
	/** Ticks a box. */
	readonly tick: (label: string | RegExp, where?: Where) => Promise<void>;
	/** Opens what is folded away. */
	readonly unfold: (words: string | RegExp, where?: Where) => Promise<void>;
	/** Hands over files through the button of these words. */
	readonly attach: (words: string | RegExp, files: readonly Picked[], where?: Where) => Promise<void>;
};

/** Exactly these words, whatever the field says of itself behind them. */
const exactly = (words: string | RegExp): RegExp =>
	typeof words === "string" ? new RegExp(`^\\s*${words.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&")}(?: \\(may stay empty\\))?\\s*$`) : words;

/** These words and then, perhaps, a hint: an answer carries its hint in its name. */
const beginning = (words: string | RegExp): RegExp =>
	typeof words === "string" ? new RegExp(`^\\s*${words.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&")}(?!\\w)`) : words;

/** One subject on the page, by its heading. */
export const card = (page: Page, title: string | RegExp): Locator =>
	page.locator("section", { has: page.getByRole("heading", { name: exactly(title) }) }).last();

type Found = {
	readonly button: Locator;
	readonly link: Locator;
	readonly field: Locator;
	readonly radio: Locator;
	readonly box: Locator;
	readonly fold: Locator;
	readonly file: Locator;
};
const find = (words: string | RegExp, where: Where): Found => ({
	button: where.getByRole("button", { name: exactly(words) }),
	link: where.getByRole("link", { name: exactly(words) }),
	field: where.getByLabel(exactly(words)).and(where.locator("input:not([type=radio]):not([type=checkbox]), textarea, select")),
	radio: where.getByRole("radio", { name: beginning(words) }),
	box: where.getByRole("checkbox", { name: beginning(words) }),
	fold: where.locator("summary", { hasText: words }),
	file: where.getByLabel(exactly(words)).and(where.locator("input[type=file]")),
});

const AWAKE_MS = 15_000;

/** Before the script has taken over a page, a press on it is an old-fashioned one; a person is slower than that. */
async function awake(target: Locator): Promise<ElementHandle<HTMLElement | SVGElement>> {
	const until = Date.now() + AWAKE_MS;
	for (;;) {
		await target.waitFor({ state: "attached", timeout: AWAKE_MS });
		const handle = (await target.elementHandle()) as ElementHandle<HTMLElement | SVGElement>;
		// What stood in for a page that was still coming may be gone by now: then the one that came in its place counts.
		const isAwake = await handle.evaluate(
			(element) => element.isConnected && Object.keys(element).some((key) => key.startsWith("__react")),
		);
		if (isAwake) return handle;
		if (Date.now() > until) throw new Error(`The page's script never took over ${target}.`);
		await target.page().waitForTimeout(30);
	}
}

/** Says, on the page made for it, that this browser is the first of the shop's people. */
export async function sayWho(page: Page, base: string): Promise<void> {
	await page.goto(`${base}/people/me`);
	const somebody = page.getByRole("main").getByRole("button").first();
	await awake(somebody);
	await somebody.click();
	await page.waitForURL(`${base}/`);
}

/** The index, in its list, of the one option with these words. */
const optionAt = (
	list: Locator,
	option: string | RegExp,
): Promise<{ readonly value: string; readonly from: number; readonly to: number }> =>
	list.evaluate(
		(select, { source, plain }) => {
			if (!(select instanceof HTMLSelectElement)) throw new Error("not a list");
			const options = [...select.options];
			const wanted = new RegExp(source);
			const fits = options.filter(({ label }) => (plain === null ? wanted.test(label) : label === plain));
			const [first] = fits;
			if (!first || fits.length > 1)
				throw new Error(`${fits.length} of these are ${plain ?? source}: ${options.map(({ label }) => label).join(" | ")}`);
			return { value: first.value, from: select.selectedIndex, to: first.index };
		},
		typeof option === "string" ? { source: "", plain: option } : { source: option.source, plain: null },
	);

/** Fingers: taps, and the phone's own keyboard. */
export function fingers(page: Page): Hands {
	const tap = async (target: Locator) => {
		await awake(target);
		await target.tap();
	};
	return {
		page,
		press: (name, where = page) => tap(find(name, where).button),
		follow: (name, where = page) => tap(find(name, where).link),
		write: async (label, text, where = page) => {
			const { field } = find(label, where);
			await tap(field);
			await field.fill(text);
		},
		choose: async (label, option, where = page) => {
			const { field } = find(label, where);
			await awake(field);
			await field.selectOption((await optionAt(field, option)).value);
		},
		pick: (option, where = page) => tap(find(option, where).radio),
		tick: (label, where = page) => tap(find(label, where).box),
		unfold: (words, where = page) => tap(find(words, where).fold),
		attach: async (words, files, where = page) => {
			const { file } = find(words, where);
			await awake(file);
			await chosen(page, () => file.tap(), files);
		},
	};
}

async function chosen(page: Page, ask: () => Promise<void>, files: readonly Picked[]): Promise<void> {
	const [chooser] = await Promise.all([page.waitForEvent("filechooser", { timeout: 10_000 }), ask()]);
	await chooser.setFiles([...files]);
}

/** More stops than this on one page, and a person would have given up. */
const MOST_TABS = 400;

type Stop = {
	readonly there: boolean;
	readonly sameGroup: boolean;
	readonly before: boolean;
	readonly gone: boolean;
	/** What has the focus, in words. */
	readonly at: string;
	/** Why the focus cannot be seen; null when it can. */
	readonly hidden: string | null;
};

/** What has the focus now, seen from the element that is wanted. Runs in the page. */
function lookAtFocus(wanted: HTMLElement | SVGElement): Stop {
	const at = document.activeElement;
	const gone = !wanted.isConnected;
	if (!(at instanceof HTMLElement || at instanceof SVGElement) || at === document.body || at === document.documentElement)
		return { there: false, sameGroup: false, before: false, gone, at: "nothing", hidden: null };
	const words = (at.getAttribute("aria-label") ?? at.textContent ?? "").trim().slice(0, 40);
	const named = `${at.tagName.toLowerCase()} "${words || at.getAttribute("name") || ""}"`;
	const labels = "labels" in at && at.labels instanceof NodeList ? [...at.labels] : [];
	// The calendar's own button inside a day field is marked by the browser, and the field around it has no focus then.
	const inside = at.matches(":focus-within") && !at.matches(":focus");
	const drawn =
		inside ||
		[at, at.parentElement, ...labels].some((each) => {
			if (!(each instanceof Element)) return false;
			const style = getComputedStyle(each);
			return style.outlineStyle !== "none" && Number.parseFloat(style.outlineWidth) >= 1 && style.outlineColor !== "rgba(0, 0, 0, 0)";
		});
	const shown = labels.find((label): label is HTMLElement => label instanceof HTMLElement && at.getBoundingClientRect().width < 4) ?? at;
	const box = shown.getBoundingClientRect();
	const inView = box.bottom > 0 && box.right > 0 && box.top < innerHeight && box.left < innerWidth && box.width > 0 && box.height > 0;
	const left = Math.max(box.left, 0);
	const top = Math.max(box.top, 0);
	const right = Math.min(box.right, innerWidth);
	const bottom = Math.min(box.bottom, innerHeight);
	// Hidden under a bar that stays in place: every point of it belongs to something else.
	const points = [0.1, 0.5, 0.9].map((part) => document.elementFromPoint(left + (right - left) * 0.5, top + (bottom - top) * part));
	const uncovered = points.some(
		(top1) => top1 !== null && (shown.contains(top1) || top1.contains(shown) || labels.some((label) => label.contains(top1))),
	);
	// The page itself may take the focus when it is entered; it needs no ring.
	const isPage = at.tagName === "MAIN";
	const hidden = isPage ? null : !drawn ? "it is not marked" : !inView ? "it is out of sight" : !uncovered ? "it is covered" : null;
	return {
		there: at === wanted,
		sameGroup:
			at instanceof HTMLInputElement &&
			wanted instanceof HTMLInputElement &&
			at.type === "radio" &&
			at.name === wanted.name &&
			at.form === wanted.form,
		before: (at.compareDocumentPosition(wanted) & Node.DOCUMENT_POSITION_PRECEDING) !== 0,
		gone,
		at: named,
		hidden,
	};
}

/** The keyboard alone: Tab, Enter, Space, arrows and letters. Every stop on the way must be visible. */
export function keys(page: Page): Hands {
	const { keyboard } = page;

	/** Tabs until the wanted element has the focus, or, of a group of radio buttons, any of them. */
	const reach = async (target: Locator, group = false): Promise<void> => {
		let wanted = await awake(target);
		const way: string[] = [];
		let key: "Tab" | "Shift+Tab" | null = null;
		for (let tabs = 0; tabs <= MOST_TABS; tabs++) {
			const stop: Stop = await wanted.evaluate(lookAtFocus);
			if (stop.gone) {
				wanted = await awake(target);
				continue;
			}
			if (stop.hidden !== null && tabs > 0) throw new Error(`The focus is on ${stop.at} of ${page.url()} and ${stop.hidden}.`);
			if (stop.there || (group && stop.sameGroup)) return;
			way.push(stop.at);
			key ??= stop.before ? "Shift+Tab" : "Tab";
			await keyboard.press(key);
		}
		throw new Error(`${target} on ${page.url()} was not reached in ${MOST_TABS} tabs. On the way: ${[...new Set(way)].join(", ")}`);
	};

	/** A field may begin a new line as deep as the one before; a person sees that, and goes on from there. */
	const typeLines = async (field: Locator, text: string): Promise<void> => {
		for (const [at, line] of text.split("\n").entries()) {
			if (at === 0) {
				await keyboard.type(line);
				continue;
			}
			await keyboard.press("Enter");
			const indent = await field.evaluate((box) => {
				if (!(box instanceof HTMLTextAreaElement)) return 0;
				return box.selectionStart - box.value.lastIndexOf("\n", box.selectionStart - 1) - 1;
			});
			const wanted = /^ */.exec(line)?.[0].length ?? 0;
			for (let spaces = indent; spaces > wanted; spaces--) await keyboard.press("Backspace");
			await keyboard.type(line.slice(Math.min(indent, wanted)));
		}
	};

	/** A day is typed in the order that the browser shows, which is its own business: the first that comes out right. */
	const typeDay = async (field: Locator, day: string): Promise<void> => {
		const [year = "", month = "", date = ""] = day.split("-");
		for (const digits of [date + month + year, month + date + year, year + month + date]) {
			for (let left = 0; left < 3; left++) await keyboard.press("ArrowLeft");
			await keyboard.type(digits);
			if ((await field.inputValue()) === day) return;
		}
		throw new Error(`${day} could not be typed: ${await field.inputValue()} stands there.`);
	};

	const enabled = (target: Locator) => target.and(page.locator(":not([aria-disabled=true]):not(:disabled)"));
	const strike = async (target: Locator, key: "Enter" | "Space") => {
		await reach(target);
		await keyboard.press(key);
	};
	return {
		page,
		press: (name, where = page) => strike(enabled(find(name, where).button), "Enter"),
		follow: (name, where = page) => strike(find(name, where).link, "Enter"),
		write: async (label, text, where = page) => {
			const { field } = find(label, where);
			await reach(field);
			if ((await field.getAttribute("type")) === "date") return typeDay(field, text);
			await keyboard.press("Control+A");
			if (text === "") await keyboard.press("Delete");
			else await typeLines(field, text);
			const stands = await field.inputValue();
			if (stands !== text) throw new Error(`Typed ${JSON.stringify(text)}, and ${JSON.stringify(stands)} stands in ${label}.`);
		},
		choose: async (label, option, where = page) => {
			const { field } = find(label, where);
			await reach(field);
			const { from, to, value } = await optionAt(field, option);
			for (let at = from; at !== to; at += Math.sign(to - from)) await keyboard.press(to > at ? "ArrowDown" : "ArrowUp");
			const stands = await field.inputValue();
			if (stands !== value) throw new Error(`The arrows did not lead to ${option} in ${label}: ${stands} instead of ${value}.`);
		},
		pick: async (option, where = page) => {
			const { radio } = find(option, where);
			await reach(radio, true);
			if (!(await radio.isChecked())) await keyboard.press("Space");
			for (let moves = 0; !(await radio.isChecked()); moves++) {
				if (moves > 12) throw new Error(`The arrows did not lead to ${option}.`);
				await keyboard.press("ArrowDown");
			}
		},
		tick: (label, where = page) => strike(find(label, where).box, "Space"),
		unfold: (words, where = page) => strike(find(words, where).fold, "Enter"),
		attach: async (words, files, where = page) => {
			await reach(find(words, where).file);
			await chosen(page, () => keyboard.press("Enter"), files);
		},
	};
}
