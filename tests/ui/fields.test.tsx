// @vitest-environment happy-dom
import type { ReactNode } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, it } from "vitest";
import { CheckField } from "@/app/ui/checkField";
import { ChoiceField } from "@/app/ui/choiceField";
import { DayField } from "@/app/ui/dayField";
import { MinutesField } from "@/app/ui/minutesField";
import { MoneyField } from "@/app/ui/moneyField";
import { SelectField } from "@/app/ui/selectField";
import { StepperField } from "@/app/ui/stepperField";
import { TextArea } from "@/app/ui/textArea";
import { TextField } from "@/app/ui/textField";
import { mount, one, press } from "./mount";

function pageOf(node: ReactNode): HTMLElement {
	const root = document.createElement("div");
	root.innerHTML = renderToStaticMarkup(node);
	return root;
}
const wordsOf = (root: HTMLElement, ids: string | null) =>
	(ids ?? "")
		.split(" ")
		.filter(Boolean)
		.map((id) => root.querySelector(`[id="${id}"]`)?.textContent);

const words = { label: "Bag", hint: "The tag on it", error: "No bag has this tag." };
const single: [string, (words: { label: string; hint?: string; error?: string }) => ReactNode][] = [
	["text", (props) => <TextField {...props} name="bag" />],
	["long text", (props) => <TextArea {...props} name="bag" />],
	["a list", (props) => <SelectField {...props} name="bag" options={[{ value: "1", label: "One" }]} />],
	["a count", (props) => <StepperField {...props} name="bag" />],
	["money", (props) => <MoneyField {...props} name="bag" currency="EUR" />],
	["a day", (props) => <DayField {...props} name="bag" />],
	["a tick", (props) => <CheckField {...props} name="bag" />],
];

describe("a field", () => {
	it.each(single)("for %s is tied to its label, its hint and its error", (_, field) => {
		const root = pageOf(field(words));
		const control = one(root, "[name=bag]");
		const label = control.closest("label") ?? one(root, `label[for="${control.id}"]`);
		expect(label.textContent).toContain("Bag");
		expect(wordsOf(root, control.getAttribute("aria-describedby"))).toEqual(["The tag on it", "No bag has this tag."]);
		expect(control.getAttribute("aria-invalid")).toBe("true");
	});

	it.each(single)("for %s without hint and error points at nothing, and is not called wrong", (_, field) => {
		const control = one(pageOf(field({ label: "Bag" })), "[name=bag]");
		expect(control.getAttribute("aria-describedby")).toBe(null);
		expect(control.getAttribute("aria-invalid")).toBe(null);
	});

	it("keeps room for its error, so that the form does not jump", () => {
		expect(one(pageOf(<TextField label="Bag" />), ".af-error").textContent).toBe("");
	});

	it("that may stay empty says so", () => {
		expect(one(pageOf(<TextField label="Bag" optional />), "label").textContent).toBe("Bag (may stay empty)");
	});

	it("offers the words it is given", () => {
		const root = pageOf(<TextField label="Name" suggest={["Lamp", "Lamp house"]} />);
		const list = one(root, "input").getAttribute("list");
		expect([...one(root, `[id="${list}"]`).children].map((option) => option.getAttribute("value"))).toEqual(["Lamp", "Lamp house"]);
	});
});

describe("several controls under one question", () => {
	it("are named by it, and called wrong as one", () => {
		const options = [
			{ value: "original", label: "Original" },
			{ value: "unknown", label: "Unknown" },
		];
		const root = pageOf(
			<ChoiceField label="Origin" error="Choose one; unknown is an answer." name="origin" options={options} defaultValue="unknown" />,
		);
		const group = one(root, "[role=radiogroup]");
		expect(one(group, "legend").textContent).toBe("Origin");
		expect(wordsOf(root, group.getAttribute("aria-describedby"))).toEqual(["Choose one; unknown is an answer."]);
		expect([...root.querySelectorAll("input")].map((radio) => [radio.value, radio.checked])).toEqual([
			["original", false],
			["unknown", true],
		]);
	});

	it("mark only the point of a time that is wrong", () => {
		const root = pageOf(
			<MinutesField
				label="How long"
				low={{ name: "low" }}
				likely={{ name: "likely", error: "Likely lies between low and high." }}
				high={{ name: "high" }}
			/>,
		);
		expect([...root.querySelectorAll("input")].map((input) => [input.name, input.getAttribute("aria-invalid")])).toEqual([
			["low", null],
			["likely", "true"],
			["high", null],
		]);
		expect(wordsOf(root, one(root, "[name=likely]").getAttribute("aria-describedby"))).toContain("Likely lies between low and high.");
	});
});

describe("a count", () => {
	it("goes up and down by its buttons, never below its least, and the form hears of it", async () => {
		const heard: string[] = [];
		const page = await mount(<StepperField label="Screws" name="count" defaultValue={1} />);
		page.root.addEventListener("input", (event) => heard.push(event.target instanceof HTMLInputElement ? event.target.value : ""));
		const [less, more] = page.root.querySelectorAll("button");
		if (!less || !more) throw new Error("no buttons");
		await press(more);
		await press(less);
		await press(less);
		await press(less);
		expect(one<HTMLInputElement>(page.root, "input").value).toBe("0");
		expect(heard).toEqual(["2", "1", "0"]);
		expect([less, more].map((button) => button.getAttribute("aria-label"))).toEqual(["One less: Screws", "One more: Screws"]);
		await page.leave();
	});
});
