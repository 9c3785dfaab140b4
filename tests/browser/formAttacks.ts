// What people do to forms without meaning to, and whether a form takes it well: it says beside each field what to do, and it
// keeps what was typed.

import Database from "better-sqlite3";
import type { Locator, Page } from "playwright-core";
import { databaseFile } from "@/lib/db/store";

/** What is put into every field of a form that takes text. */
export type Attack = {
	readonly name: string;
	readonly text: string;
	/** For fields that only take figures. */
	readonly figure: string;
	/** Nothing that may be recorded. */
	readonly mustRefuse: boolean;
};

export const TOO_LONG: Attack = { name: "10,000 characters", text: "x".repeat(10_000), figure: "99999999999", mustRefuse: true };
export const NONSENSE: Attack = {
	name: "a negative number of a wrong unit, and a bird",
	text: "-5 parsecs 🦩",
	figure: "-5",
	mustRefuse: false,
};
export const EMPTY: Attack = { name: "nothing", text: "", figure: "", mustRefuse: false };

/** How many entries the book has, read beside the running server. */
export class Book {
	private readonly book: Database.Database;
	constructor(folder: string) {
		this.book = new Database(databaseFile(folder), { readonly: true });
	}
	entries(): number {
		const row = this.book.prepare("SELECT count(*) AS count FROM Entry").get();
		return row !== null && typeof row === "object" && "count" in row ? Number(row.count) : 0;
	}
	close(): void {
		this.book.close();
	}
}

const TEXT_FIELDS =
	"input:not([type=hidden]):not([type=radio]):not([type=checkbox]):not([type=file]):not([type=date]):not([type=datetime-local]), textarea";
const WAIT_MS = 10_000;
/** A second press that comes sooner is the same press bouncing. */
const SURE_MS = 600;

/** Unfolds the page, and shows the forms that a button brings out. */
export async function unfolded(page: Page, address: string): Promise<void> {
	await page.goto(address, { waitUntil: "load" });
	const ready = () =>
		[...document.querySelectorAll("main form")].every((form) => Object.keys(form).some((key) => key.startsWith("__react")));
	await page.waitForFunction(ready, undefined, { timeout: WAIT_MS });
	for (const button of await page
		.getByRole("main")
		.getByRole("button", { name: /^(Correct|Take back|Change|Withdraw|It is bought|Not needed)\b/ })
		.all())
		if (await button.isVisible()) await button.click();
	await page.evaluate(() => {
		for (const fold of document.querySelectorAll("details")) fold.open = true;
	});
}

/** The forms on the page that record something, by what their fields and their button are called. The same form twice counts once. */
export function formsOn(page: Page): Promise<string[]> {
	return page.locator("main form").evaluateAll((forms, fields) => {
		const found = forms.map((form) => {
			if (
				!(form instanceof HTMLFormElement) ||
				form.hasAttribute("action") ||
				form.getAttribute("method") === "get" ||
				form.closest("search")
			)
				return "";
			const names = [...form.querySelectorAll(fields)].map((field) => field.getAttribute("name") ?? "");
			const button = form.querySelector("button[type=submit]") ?? document.querySelector(`button[type=submit][form="${form.id}"]`);
			const key =
				names.length === 0 || button === null ? "" : `${button.textContent} (${names.join(", ")})`.replace(/[\d-]{4,}[A-Z]?/g, "…");
			form.dataset.key = key;
			return key;
		});
		return [...new Set(found.filter(Boolean))];
	}, TEXT_FIELDS);
}

export type Outcome = { readonly recorded: boolean; readonly problems: readonly string[] };

/** As a paste into each field would: the browser's own setter, and the event that follows. Runs in the page. */
function fillAll(form: Element, { fields, text, figure }: { readonly fields: string; readonly text: string; readonly figure: string }) {
	for (const field of form.querySelectorAll(fields)) {
		if (!(field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement) || field.readOnly || field.disabled) continue;
		const of = field instanceof HTMLInputElement ? HTMLInputElement.prototype : HTMLTextAreaElement.prototype;
		Object.getOwnPropertyDescriptor(of, "value")?.set?.call(field, field.type === "number" ? figure : text);
		field.dispatchEvent(new Event("input", { bubbles: true }));
		field.dispatchEvent(new FocusEvent("focusout", { bubbles: true }));
	}
}

/** Fills every field of the form, sends it, and says what was wrong with how it took that. */
export async function attackForm(page: Page, key: string, attack: Attack, book: Book): Promise<Outcome> {
	await formsOn(page);
	const form = page.locator(`main form[data-key=${JSON.stringify(key)}]`).first();
	await form.evaluate(fillAll, { fields: TEXT_FIELDS, text: attack.text, figure: attack.figure });
	await form.evaluate((element) => {
		for (const old of element.querySelectorAll("[role=alert] > *")) old.setAttribute("data-old", "");
	});
	const before = book.entries();
	const id = await form.getAttribute("id");
	const button = form
		.locator("button[type=submit]")
		.or(page.locator(`button[type=submit][form="${id}"]`))
		.first();
	if (await button.isDisabled()) return { recorded: false, problems: await saidBeside(form, attack, true) };
	await button.click();
	if ((await button.getAttribute("data-armed")) !== null) {
		await page.waitForTimeout(SURE_MS);
		await button.click();
	}
	const refusal = form.locator("[role=alert] > :not([data-old])").first();
	for (const since = Date.now(); Date.now() - since < WAIT_MS; await page.waitForTimeout(20)) {
		if (book.entries() > before) return { recorded: true, problems: attack.mustRefuse ? ["it was recorded"] : [] };
		if (await refusal.isVisible()) return { recorded: false, problems: await saidBeside(form, attack, false) };
	}
	return { recorded: false, problems: ["nothing happened"] };
}

/** What a refused form owes: sentences at its fields, the focus on the first of them, and everything as it was typed. */
function saidBeside(form: Locator, attack: Attack, silent: boolean): Promise<string[]> {
	return form.evaluate(
		(element, { fields, text, figure, mustRefuse, quiet }) => {
			const problems: string[] = [];
			const isSentence = (words: string) => /\S \S/.test(words) && /[.?!:]["”)]*$/.test(words.trim());
			const alert = [...element.querySelectorAll("[role=alert] > :not([data-old])")].map((each) => each.textContent ?? "").join(" ");
			if (!quiet && !isSentence(alert)) problems.push(`it says no sentence: "${alert.slice(0, 80)}"`);
			const wrong = [...element.querySelectorAll("[aria-invalid=true]")];
			for (const field of wrong) {
				const ids = (field.getAttribute("aria-describedby") ?? "").split(" ");
				const words = ids.filter((each) => each.endsWith("-error")).map((each) => document.getElementById(each)?.textContent ?? "");
				const name = field.getAttribute("name") ?? field.querySelector("legend")?.textContent ?? "a field";
				if (!words.some(isSentence))
					problems.push(`${name} is marked wrong without a sentence beside it: "${words.join(" ").slice(0, 80)}"`);
			}
			if (mustRefuse && !quiet && wrong.length === 0 && element.querySelectorAll("[role=alert] li").length === 0)
				problems.push(`no field is marked, only: "${alert.slice(0, 120)}"`);
			const at = document.activeElement;
			const first = wrong.find((field) => field.matches("input, select, textarea")) ?? null;
			if (
				!quiet &&
				first !== null &&
				!(at !== null && element.contains(at) && (at.getAttribute("aria-invalid") === "true" || at.closest("fieldset") !== null))
			)
				problems.push(`the focus is not on a wrong field but on ${at?.tagName.toLowerCase()} ${at?.getAttribute("name") ?? ""}`);
			for (const field of element.querySelectorAll(fields)) {
				if (!(field instanceof HTMLInputElement || field instanceof HTMLTextAreaElement) || field.readOnly || field.disabled) continue;
				const typed = field.type === "number" ? figure : text;
				if (field.value !== typed && field.value.trim() !== typed.trim())
					problems.push(`${field.name} does not keep what was typed: "${field.value.slice(0, 40)}"`);
			}
			return problems;
		},
		{ fields: TEXT_FIELDS, text: attack.text, figure: attack.figure, mustRefuse: attack.mustRefuse, quiet: silent },
	);
}
