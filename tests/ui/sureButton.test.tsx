// @vitest-environment happy-dom
import { act } from "react";
import { afterEach, describe, expect, it, vi } from "vitest";
import { SureButton } from "@/app/ui/sureButton";
import { mount, one, press } from "./mount";

let leave = async () => {};
afterEach(async () => {
	await leave();
	vi.restoreAllMocks();
});

const QUESTION = "Scrap the original lamp? No reversal can put it back.";

async function open(onSure: () => void | Promise<void>) {
	const page = await mount(
		<SureButton question={QUESTION} yes="Scrap it" onSure={onSure}>
			Scrap
		</SureButton>,
	);
	leave = page.leave;
	return { root: page.root, button: one(page.root, "button"), question: one(page.root, "[role=alert]") };
}

/** Long enough after the first press that it is an answer and no bounce. */
const aMomentLater = () => new Promise((resolve) => setTimeout(resolve, 520));

describe("a button for what cannot be undone", () => {
	it("asks at the first press, with the reason, and does it at the second", async () => {
		const onSure = vi.fn();
		const page = await open(onSure);
		expect(page.question.textContent).toBe("");
		await press(page.button);
		expect(page.question.textContent).toBe(QUESTION);
		expect(page.button.textContent).toBe("Scrap it");
		expect(page.button.getAttribute("aria-describedby")).toBe(page.question.id);
		expect(onSure).not.toHaveBeenCalled();
		await aMomentLater();
		await press(page.button);
		expect(onSure).toHaveBeenCalledTimes(1);
		expect(page.button.textContent).toBe("Scrap");
	});

	it("does not take a double tap for an answer", async () => {
		const onSure = vi.fn();
		const page = await open(onSure);
		await press(page.button);
		await press(page.button);
		expect(onSure).not.toHaveBeenCalled();
		expect(page.question.textContent).toBe(QUESTION);
	});

	it.each([
		["Escape", () => document.dispatchEvent(new KeyboardEvent("keydown", { key: "Escape", bubbles: true }))],
		["a touch elsewhere", () => document.body.dispatchEvent(new Event("pointerdown", { bubbles: true }))],
		["the focus going elsewhere", () => document.body.dispatchEvent(new Event("focusin", { bubbles: true }))],
	])("takes the question back at %s", async (_, leaveIt) => {
		const onSure = vi.fn();
		const page = await open(onSure);
		await press(page.button);
		await act(async () => void leaveIt());
		expect(page.question.textContent).toBe("");
		await aMomentLater();
		await press(page.button);
		expect(onSure).not.toHaveBeenCalled();
	});

	it("takes the question back at its own way out", async () => {
		const page = await open(() => undefined);
		await press(page.button);
		const [, out] = page.root.querySelectorAll("button");
		expect(out?.textContent).toBe("Leave it");
		if (out) await press(out);
		expect(page.question.textContent).toBe("");
	});

	it("cannot be pressed again while its work goes on", async () => {
		let finish = () => {};
		const onSure = vi.fn(() => new Promise<void>((resolve) => (finish = resolve)));
		const page = await open(onSure);
		await press(page.button);
		await aMomentLater();
		await press(page.button);
		await press(page.button);
		expect(onSure).toHaveBeenCalledTimes(1);
		expect(page.button.getAttribute("aria-disabled")).toBe("true");
		await act(async () => finish());
		expect(page.button.getAttribute("aria-disabled")).toBe(null);
	});
});
